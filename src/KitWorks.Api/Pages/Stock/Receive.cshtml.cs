using System.Globalization;
using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Stock;

/// <summary>A delivery of several items at once.</summary>
sealed class ReceiveModel(IMediator mediator) : BenchPage(mediator)
{
    const string Prefix = "came.";

    public IReadOnlyList<StockItemAnswer> Items { get; private set; } = [];
    public string? Reference { get; private set; }

    public string? Given(string sku) => HttpMethods.IsPost(Request.Method) ? Request.Form[Prefix + sku].ToString() : null;

    public async Task OnGet() => Items = (await Ask(new ListStock(200, null)))?.Items ?? [];

    public async Task<IActionResult> OnPost(string? reference)
    {
        Reference = reference;
        var lines = Request.Form.Where(f => f.Key.StartsWith(Prefix, StringComparison.Ordinal) && f.Value.ToString().Length > 0)
            .Select(f => new StockLine(f.Key[Prefix.Length..], int.TryParse(f.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0)).ToList();
        if (await Did(new ReceiveStock(lines, reference ?? ""))) return Next($"{Parts.Say.Count(lines.Count, "item")} received by {reference}.", "/stock");
        var refused = Refused!;
        await OnGet();
        Refuse(refused);
        return Page();
    }
}
