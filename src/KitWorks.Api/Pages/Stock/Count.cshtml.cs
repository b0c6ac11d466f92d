using System.Globalization;
using KitWorks.Shop.Inventory;
using MediatR;

namespace KitWorks.Api.Pages.Stock;

/// <summary>Counting, by bin; blind unless the counter wants to see what should be there.</summary>
sealed class CountModel(IMediator mediator) : BenchPage(mediator)
{
    const string Prefix = "counted.";

    public IReadOnlyList<StockItemAnswer> Items { get; private set; } = [];
    public IReadOnlyList<CountDifference>? Counted { get; private set; }
    public string? Text { get; private set; }
    public string? Reason { get; private set; }
    public bool Blind { get; private set; } = true;

    public string? Given(string sku) => HttpMethods.IsPost(Request.Method) ? Request.Form[Prefix + sku].ToString() : null;

    /// <summary>A box that is not ticked is not sent; <paramref name="asked"/> tells it from a page that nobody asked anything yet.</summary>
    public async Task OnGet(string? text, bool blind, bool asked)
    {
        (Text, Blind) = (text?.Trim(), blind || !asked);
        var items = string.IsNullOrEmpty(Text) ? (await Ask(new ListStock(200, null)))?.Items : await Ask(new FindStock(Text));
        Items = [.. (items ?? []).OrderBy(i => i.Bin, StringComparer.Ordinal)];
    }

    public async Task OnPost(string? text, string? reason)
    {
        Reason = reason;
        var lines = Request.Form.Where(f => f.Key.StartsWith(Prefix, StringComparison.Ordinal) && f.Value.ToString().Length > 0)
            .Select(f => new CountedLine(f.Key[Prefix.Length..], int.TryParse(f.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : -1)).ToList();
        Counted = (await Ask(new CountStock(lines, reason ?? "")))?.Lines;
        if (Counted is not null) return;
        var refused = Refused!;
        await OnGet(text, true, true);
        Refuse(refused);
    }
}
