using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Planning;
using MediatR;

namespace KitWorks.Shop.Quotes;

/// <summary>What a design would be, cost and wait for, with nothing kept.</summary>
public sealed record TryDesign(Design Design, int Quantity = 1) : IQuery<TriedDesign>;

/// <summary>A design as it would be made now.</summary>
/// <param name="Kit">Its kit.</param>
/// <param name="Quantity">How many were asked for.</param>
/// <param name="Price">What they cost.</param>
/// <param name="Buildable">How many the shelf covers now.</param>
/// <param name="RunsOutFirst">The part that ends first.</param>
/// <param name="Shortages">What is missing for as many as were asked for.</param>
/// <param name="ShipBy">When they could leave.</param>
public sealed record TriedDesign(Kit Kit, int Quantity, Price Price, int Buildable, Part RunsOutFirst, IReadOnlyList<Shortage> Shortages, DateOnly ShipBy);

sealed class TryDesignHandler(IMediator mediator) : IRequestHandler<TryDesign, Outcome<TriedDesign>>
{
    public async Task<Outcome<TriedDesign>> Handle(TryDesign query, CancellationToken cancellationToken)
    {
        if (query.Quantity is < 1 or > 100) return Refusal.OfField("request.invalid", "quantity", $"{query.Quantity} kits cannot be quoted; it is 1 to 100.");
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        if (!Kit.Make(query.Design, catalog).Succeeds(out var kit, out refusal)) return refusal;
        var available = (await mediator.Send(new FindAvailable([.. kit.Parts.Select(p => p.Sku)]), cancellationToken)).Value;
        return await Of(kit, query.Quantity, catalog, available, mediator, cancellationToken);
    }

    public static async Task<Outcome<TriedDesign>> Of(
        Kit kit, int quantity, ShopCatalog catalog, IReadOnlyDictionary<string, int> available, IMediator mediator, CancellationToken cancellationToken)
    {
        if (!Price.Of(kit, quantity, catalog).Succeeds(out var price, out var refusal)) return refusal;
        if (!(await mediator.Send(FindShipDate.Of(kit, quantity), cancellationToken)).Succeeds(out var promise, out refusal)) return refusal;
        var first = kit.Parts.MinBy(p => available.GetValueOrDefault(p.Sku) / (double)p.Quantity)!;
        return new TriedDesign(kit, quantity, price, available.GetValueOrDefault(first.Sku) / first.Quantity, first, promise.Shortages, promise.Date.ShipBy);
    }
}
