using System.Collections.Immutable;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;

namespace KitWorks.Labels;

/// <summary>What a customer builds by: the kit's parts, the stake-out, then tier by tier what to lay out, where it goes and what to do.</summary>
public sealed record BuildGuide : Paper
{
    ImmutableArray<PaperSection> sections = [];

    internal override IEnumerable<PaperSection> Sections => sections;

    /// <summary>Writes the guide of a kit.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="order">The order's number.</param>
    /// <param name="shelter">What the shelter is called.</param>
    /// <param name="shop">The shop's name.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="tierPicture">The picture of a tier, an SVG document; null for the drawing with its walls folded outwards.</param>
    public static Outcome<BuildGuide> Of(
        Kit kit, string order, string shelter, string shop = "", Units units = Units.Metric, Func<int, Outcome<string>>? tierPicture = null)
    {
        var write = new GuideWriter(kit, order, shelter, shop, units);
        tierPicture ??= tier => FrameDrawing.Draw(kit.Frame, new() { View = View.Spread, Tier = tier, Units = units, Width = GuideWriter.PictureWidth(kit.Frame.Struts.Count(s => s.Tier == tier)), Openings = kit.Openings }, kit.StrutTypes);
        if (!FrameDrawing.Draw(kit.Frame, new() { View = View.Isometric, Units = units, Title = shelter, IsPlain = true, Openings = kit.Openings }, kit.StrutTypes).Succeeds(out var whole, out var refusal)) return refusal;
        if (!StakeOutDrawing.Draw(kit.Frame, units, GuideWriter.RingWidth, shelter, withTable: false).Succeeds(out var ring, out refusal)) return refusal;
        var sections = ImmutableArray.CreateBuilder<PaperSection>();
        var cover = write.Cover(whole);
        sections.Add(new("guide-cover", cover));
        sections.Add(new("guide-parts", cover));
        if (cover.Warnings.Count > 0) sections.Add(new("guide-notes", cover));
        var stakes = write.Stakes(ring);
        sections.Add(new("guide-stakes", stakes));
        sections.Add(new("guide-pegs", stakes));
        if (!kit.Openings.IsEmpty) sections.Add(new("guide-openings", write.Openings()));
        foreach (var tier in kit.Tiers)
        {
            if (!tierPicture(tier.Number).Succeeds(out var picture, out refusal)) return refusal;
            var page = write.Tier(tier, picture);
            sections.Add(new(tier.Number == 0 ? "guide-foundation" : "guide-tier", page));
            sections.Add(new("guide-picture", page));
        }
        var end = write.End();
        sections.Add(new("guide-end", end));
        sections.Add(new("guide-care", end));
        return new BuildGuide { Order = order, Shop = shop, sections = sections.ToImmutable() };
    }
}

/// <summary>What every page of a guide says at its foot.</summary>
/// <param name="Shelter">What the shelter is called.</param>
/// <param name="Order">The order's number.</param>
/// <param name="Shop">The shop's name.</param>
abstract record GuidePage(string Shelter, string Order, string Shop);

/// <summary>The first pages: what it will be, and what is in the kit.</summary>
sealed record GuideCover(string Shelter, string Order, string Shop) : GuidePage(Shelter, Order, Shop)
{
    public required string Picture { get; init; }
    public required string Length { get; init; }
    public required string Width { get; init; }
    public required string Height { get; init; }
    public required string FloorArea { get; init; }
    public required string Mass { get; init; }
    public required int Tiers { get; init; }
    public required int TopTier { get; init; }
    public required int Bundles { get; init; }
    public required IReadOnlyList<GuideStruts> Struts { get; init; }
    public required IReadOnlyList<GuideHubs> Hubs { get; init; }
    public required int HubCount { get; init; }
    public required int StrutCount { get; init; }
    public required int Ties { get; init; }
    public required int SpareTies { get; init; }
    public required int StakeCount { get; init; }
    public required bool HasCover { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
}

/// <summary>The stake-out page.</summary>
sealed record GuideStakes(string Shelter, string Order, string Shop) : GuidePage(Shelter, Order, Shop)
{
    public required string Picture { get; init; }
    public required int Count { get; init; }

    /// <summary>The peg that the second tape is hooked to.</summary>
    public required int Second { get; init; }
    public required IReadOnlyList<GuidePeg> Pegs { get; init; }

    /// <summary>Whether the pegs' hubs lie at different heights.</summary>
    public required bool HasHeights { get; init; }
}

/// <summary>One peg in the table of tape lengths.</summary>
sealed record GuidePeg(int Number, string FromFirst, string FromSecond, string Middle, string Next, string Height);

/// <summary>The page of doors and vents.</summary>
sealed record GuideOpenings(string Shelter, string Order, string Shop) : GuidePage(Shelter, Order, Shop)
{
    public required IReadOnlyList<GuideOpening> Openings { get; init; }
}

/// <summary>A door or a vent in a guide.</summary>
/// <param name="Title">What and where.</param>
/// <param name="Missing">What is left out.</param>
/// <param name="Steps">What to do, and when.</param>
sealed record GuideOpening(string Title, string Missing, string Steps);

/// <summary>The two pages of one tier.</summary>
sealed record GuideTier(string Shelter, string Order, string Shop) : GuidePage(Shelter, Order, Shop)
{
    public required int Number { get; init; }
    public required string Name { get; init; }
    public required bool IsTop { get; init; }
    public required string Bundles { get; init; }
    public required IReadOnlyList<GuideStruts> Struts { get; init; }
    public required IReadOnlyList<GuideHubs> Hubs { get; init; }
    public required int StrutCount { get; init; }
    public required int HubCount { get; init; }
    public required int Ties { get; init; }
    public required int TiesPerEnd { get; init; }
    public required int Stakes { get; init; }
    public required string Ring { get; init; }

    /// <summary>How far the base hubs differ in height; empty where the ground takes it up.</summary>
    public string BaseSpread { get; init; } = "";
    public required string Picture { get; init; }
}

/// <summary>The last pages: checks, stakes, cover, care.</summary>
sealed record GuideEnd(string Shelter, string Order, string Shop) : GuidePage(Shelter, Order, Shop)
{
    public required int Stakes { get; init; }
    public required int BaseHubs { get; init; }

    /// <summary>How many go to which base hub, in words.</summary>
    public required string StakesWhere { get; init; }
    public required bool IsLong { get; init; }
    public required bool HasCover { get; init; }
    public required int Panels { get; init; }
    public required IReadOnlyList<GuideCheck> Checks { get; init; }
}

/// <summary>Struts of one type in a guide.</summary>
sealed record GuideStruts(string Code, TagMark Tag, string Length, int Count);

/// <summary>Hubs of one kind in a guide.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Ways">How many struts it can take.</param>
/// <param name="Degree">How many meet there.</param>
/// <param name="Count">How many hubs.</param>
/// <param name="Where">The pegs they go to, in the foundation.</param>
sealed record GuideHubs(string Sku, int Ways, int Degree, int Count, string Where)
{
    public int Free => Ways - Degree;

    /// <summary>How many struts meet there, in words, where hubs of one sort stand at different nodes.</summary>
    public string Degrees { get; init; } = $"{Degree}";
}

/// <summary>A length to check at the end.</summary>
sealed record GuideCheck(string What, string Planned);
