using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages;

/// <summary>What was scanned or typed, wherever it leads: straight to the one thing that it names, or a list.</summary>
sealed class FindModel(IMediator mediator) : BenchPage(mediator)
{
    readonly IMediator mediator = mediator;

    public string Text { get; private set; } = "";
    public IReadOnlyList<OrderSummary> Orders { get; private set; } = [];
    public IReadOnlyList<StockItemAnswer> Items { get; private set; } = [];

    public async Task<IActionResult> OnGet(string? q)
    {
        Text = (q ?? "").Trim();
        if (Text.Length is 0 or > 200) return Page();
        var code = Text.LastIndexOf("/b/", StringComparison.Ordinal) is >= 0 and var at ? Text[(at + 3)..] : Text;
        if ((await mediator.Send(new GetBundle(code.ToUpperInvariant()), Aborted)).Succeeds(out var bundle, out _))
            return LocalRedirect($"/pack/{bundle.OrderNumber}#{bundle.Code}");
        Orders = await Ask(new FindOrders(Text)) ?? [];
        Items = await Ask(new FindStock(Text)) ?? [];
        return (Orders, Items) switch
        {
            ([var order], []) => LocalRedirect($"/orders/{order.Number}"),
            ([], [var item]) => LocalRedirect($"/stock/{Uri.EscapeDataString(item.Sku)}"),
            _ => Page(),
        };
    }
}
