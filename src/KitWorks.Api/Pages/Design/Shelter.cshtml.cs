using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Quotes;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Design;

/// <summary>One shelter, changed and seen at once: its picture, what it takes, what it costs, whether the shelf covers it; and made an order.</summary>
sealed class ShelterModel(IMediator mediator) : BenchPage(mediator)
{
    public override bool PlacesRefusals => true;
    public DesignInQuery Query { get; private set; } = new();
    public ShopCatalog? Catalog { get; private set; }
    public TriedDesign? Tried { get; private set; }

    public async Task OnGet([FromQuery] DesignInQuery query)
    {
        Query = query;
        Catalog = await Ask(new GetCatalog());
        if (Design() is not { } design) return;
        Tried = await Ask(new TryDesign(design, query.Kits));
        // A question is answered with a page, also where the answer is no.
        if (Refused is not null) Response.StatusCode = StatusCodes.Status200OK;
    }

    public async Task<IActionResult> OnPost([FromQuery] DesignInQuery query, string? name, string? reference, string? email, string? address, bool wait)
    {
        await OnGet(query);
        if (Tried is null) return Page();
        var order = await Ask(new PlaceOrder
        {
            Design = Design(),
            Quantity = query.Kits,
            Customer = new((name ?? "").Trim(), Given(email), Given(address)?.Replace("\r\n", "\n", StringComparison.Ordinal)),
            Reference = Given(reference),
            WhenShort = wait ? WhenShort.Wait : WhenShort.Refuse,
        });
        return order is null ? Page() : Next($"Order {order.Number} is placed.", $"/orders/{order.Number}");
    }

    Kits.Design? Design()
    {
        if (Catalog is not { HubSystems: [var first, ..] }) return null;
        if (Query.ToDesign(first.Code).Succeeds(out var design, out var refusal)) return design;
        Refuse(refusal);
        Response.StatusCode = StatusCodes.Status200OK;
        return null;
    }

    static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
