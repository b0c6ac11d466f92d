using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Orders;

/// <summary>How many kits of a design the shelf covers now.</summary>
public sealed record FindBuildable(Design Design) : IQuery<Buildable>;

/// <summary>How many kits can be built, and what ends first.</summary>
/// <param name="Kits">How many kits what is available covers.</param>
/// <param name="RunsOutFirst">The item that ends first; of several, the one of which the least is left over.</param>
/// <param name="Items">Each item: what one kit takes, what is available, and for how many kits that is.</param>
public sealed record Buildable(int Kits, string RunsOutFirst, IReadOnlyList<BuildableItem> Items);

/// <summary>One item of a buildable kit.</summary>
public sealed record BuildableItem(string Sku, int PerKit, int Available, int Kits);

sealed class FindBuildableHandler(IMediator mediator) : IRequestHandler<FindBuildable, Outcome<Buildable>>
{
    public async Task<Outcome<Buildable>> Handle(FindBuildable query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        if (!Kit.Make(query.Design, catalog).Under("design").Succeeds(out var kit, out refusal)) return refusal;
        var available = (await mediator.Send(new FindAvailable([.. kit.Parts.Select(p => p.Sku)]), cancellationToken)).Value;
        var items = kit.Parts
            .Select(p => (Part: p, Available: available.GetValueOrDefault(p.Sku)))
            .Select(x => new BuildableItem(x.Part.Sku, x.Part.Quantity, x.Available, x.Available / x.Part.Quantity)).ToList();
        var first = items.OrderBy(i => i.Kits).ThenBy(i => i.Available - i.Kits * i.PerKit).First();
        return new Buildable(first.Kits, first.Sku, items);
    }
}
