using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Stock;

/// <summary>One stock item: its balance, what moved it, and what can be done with it.</summary>
sealed class ItemModel(IMediator mediator) : BenchPage(mediator)
{
    public StockItemAnswer? Item { get; private set; }
    public IReadOnlyList<MovementAnswer> Movements { get; private set; } = [];
    public string? Older { get; private set; }

    public async Task OnGet(string sku, string? after)
    {
        Item = await Ask(new GetStockItem(sku));
        if (Item is not null && await Ask(new ListMovements(sku, 50, after)) is { } page) (Movements, Older) = (page.Items, page.Next);
    }

    public Task<IActionResult> OnPostReceive(string sku, int? quantity, string? reference) =>
        Change(sku, new ReceiveStock([new(sku, quantity ?? 0)], reference ?? ""), $"{quantity:N0} received.");

    public Task<IActionResult> OnPostAdjust(string sku, int? quantity, string? reason) =>
        Change(sku, new AdjustStock(sku, quantity ?? 0, reason ?? ""), $"Put right by {Parts.Say.Change(quantity ?? 0)}.");

    async Task<IActionResult> Change<T>(string sku, IRequest<Geometry.Outcome<T>> command, string done)
    {
        if (await Did(command)) return Next(done, $"/stock/{Uri.EscapeDataString(sku)}");
        var refused = Refused!;
        await OnGet(sku, null);
        Refuse(refused);
        return Page();
    }
}
