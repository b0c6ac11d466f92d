using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Quotes;

/// <summary>Which shelters would do for somebody who has this much ground and wants to stand this high.</summary>
public sealed record SuggestDesigns : IQuery<Suggestions>
{
    /// <summary>The ground's length; null where it does not matter.</summary>
    public Length? Long { get; init; }

    /// <summary>The ground's width; null where it does not matter.</summary>
    public Length? Wide { get; init; }

    /// <summary>How high it must be in the middle; null for any height.</summary>
    public Length? Headroom { get; init; }

    /// <summary>The cover; null for a bare frame.</summary>
    public CoverChoice? Cover { get; init; }

    /// <summary>How many of it.</summary>
    public int Quantity { get; init; } = 1;
}

/// <summary>The shelters that would do, and how many were tried and would not.</summary>
/// <param name="Offers">Those that would do: what the shelf covers first, then the cheapest for its floor.</param>
/// <param name="TooLow">How many fit the ground but are lower than asked.</param>
/// <param name="NotMade">How many cannot be made at that size: their struts would be longer than the pipe, or too short for the hubs.</param>
public sealed record Suggestions(IReadOnlyList<TriedDesign> Offers, int TooLow, int NotMade);

sealed class SuggestDesignsHandler(IMediator mediator) : IRequestHandler<SuggestDesigns, Outcome<Suggestions>>
{
    /// <summary>Our own choice of forms, from few long struts to many short ones; each is made as large as the ground allows.</summary>
    static readonly ImmutableArray<Func<Size, Shelter>> Forms =
    [
        Dome(2, 1, 2), Dome(3, 3, 8), Dome(3, 5, 8), Dome(4, 1, 2), Oblong(6, 1, -1), Oblong(6, 1, 0), Oblong(6, 1, 2), Oblong(8, 1, 0),
    ];

    /// <summary>Finer ones, for ground on which the struts of the others would be longer than the pipe. They take many times as long to plan.</summary>
    static readonly ImmutableArray<Func<Size, Shelter>> Finer = [Dome(5, 8, 15), Dome(6, 1, 2), Oblong(6, 2, 0)];

    const int Enough = 4;

    public async Task<Outcome<Suggestions>> Handle(SuggestDesigns query, CancellationToken cancellationToken)
    {
        if (query.Quantity is < 1 or > 100) return Refusal.OfField("request.invalid", "quantity", $"{query.Quantity} kits cannot be quoted; it is 1 to 100.");
        if (query.Long is null && query.Wide is null) return Refusal.OfField("request.invalid", "long", "Say how long or how wide the ground is.");
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        if (catalog.HubSystems.IsEmpty || catalog.StrutStocks.IsEmpty) return new Refusal(RefusalKind.Conflict, "catalog.empty", "The catalog has no hubs or no pipe yet.");

        var size = new Size.Fits(query.Long, query.Wide, null);
        var made = new List<Kit>();
        var notMade = 0;
        foreach (var form in Forms.Concat(Finer))
        {
            if (made.Count >= Enough && Finer.Contains(form)) break;
            cancellationToken.ThrowIfCancellationRequested();
            if (Make(form(size), query.Cover, catalog) is { } kit) made.Add(kit);
            else notMade++;
        }
        var highEnough = made.Where(k => query.Headroom is not { } headroom || k.Frame.Dimensions.HeightMm >= headroom.Millimetres).ToList();
        var available = (await mediator.Send(new FindAvailable([.. made.SelectMany(k => k.Parts).Select(p => p.Sku).Distinct()]), cancellationToken)).Value;
        var offers = new List<TriedDesign>();
        foreach (var kit in highEnough)
        {
            if (!(await TryDesignHandler.Of(kit, query.Quantity, catalog, available, mediator, cancellationToken)).Succeeds(out var offer, out refusal)) return refusal;
            offers.Add(offer);
        }
        return new Suggestions(
            [.. offers.OrderByDescending(o => o.Buildable >= query.Quantity).ThenBy(o => (double)o.Price.Total.Amount / o.Kit.Frame.Dimensions.FloorAreaM2)],
            made.Count - highEnough.Count, notMade);
    }

    /// <summary>With the pipe that the screening recommends; where none passes, with the strongest, and the kit's warnings say so.</summary>
    static Kit? Make(Shelter shelter, CoverChoice? cover, ShopCatalog catalog)
    {
        var design = new Design { Shelter = shelter, HubSystem = catalog.HubSystems[0].Code, Cover = cover };
        if (Kit.Make(design, catalog).Succeeds(out var kit, out _)) return kit;
        var strongest = catalog.StrutStocks.MaxBy(s => s.OutsideDiameter.Tenths)!;
        return Kit.Make(design with { StrutStock = strongest.Code }, catalog).Succeeds(out kit, out _) ? kit : null;
    }

    static Func<Size, Shelter> Dome(int frequency, int rows, int of) =>
        size => new Dome { Lattice = Lattice.Class1(frequency), Cut = Cut.Fraction(rows, of), Size = size };

    static Func<Size, Shelter> Oblong(int fold, int frequency, int bays) => size => new Oblong { Fold = fold, Frequency = frequency, Bays = bays, Size = size };
}
