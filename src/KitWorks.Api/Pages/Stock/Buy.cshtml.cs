using KitWorks.Kits.Planning;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Planning;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Stock;

/// <summary>What to buy, and the goods that are due.</summary>
sealed class BuyModel(IMediator mediator) : BenchPage(mediator)
{
    IReadOnlyDictionary<string, string> names = new Dictionary<string, string>();

    public IReadOnlyList<ReorderLine> Lines { get; private set; } = [];
    public IReadOnlyList<ExpectedReceipt> Due { get; private set; } = [];
    public string? After { get; private set; }

    public string NameOf(string sku) => names.GetValueOrDefault(sku, sku);

    public async Task OnGet(string? after)
    {
        Lines = (await Ask(new ListReorders()))?.Items ?? [];
        if (await Ask(new ListExpected(50, after)) is { } page) (Due, After) = (page.Items, page.Next);
        if (await Ask(new ListStock(200, null)) is { } stock) names = stock.Items.ToDictionary(i => i.Sku, i => i.Description);
    }

    public async Task<IActionResult> OnPostReceive(Guid id)
    {
        if (await Ask(new ReceiveExpected(id, null)) is { } came) return Next($"All of {came.Reference} is received.", "/stock/buy");
        await OnGet(null);
        return Page();
    }
}
