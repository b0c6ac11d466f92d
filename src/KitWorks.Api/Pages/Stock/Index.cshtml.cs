using KitWorks.Shop.Inventory;
using MediatR;

namespace KitWorks.Api.Pages.Stock;

/// <summary>What is in stock: on hand, promised, free.</summary>
sealed class StockModel(IMediator mediator) : BenchPage(mediator)
{
    public IReadOnlyList<StockItemAnswer> Items { get; private set; } = [];
    public string? Text { get; private set; }
    public bool Low { get; private set; }
    public string? After { get; private set; }

    public async Task OnGet(string? text, bool low, string? after)
    {
        (Text, Low) = (text?.Trim(), low);
        if (!string.IsNullOrEmpty(Text)) Items = await Ask(new FindStock(Text)) ?? [];
        else if (await Ask(new ListStock(200, after)) is { } page) (Items, After) = (page.Items, page.Next);
        if (Low) Items = [.. Items.Where(i => i.Available < i.ReorderAt)];
    }
}
