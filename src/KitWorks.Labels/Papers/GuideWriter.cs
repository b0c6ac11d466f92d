using System.Globalization;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;

namespace KitWorks.Labels;

/// <summary>Finds what the pages of a build guide say.</summary>
sealed class GuideWriter(Kit kit, string order, string shelter, string shop, Units units)
{
    /// <summary>
    /// The width that a picture of so many struts is drawn at before it is fitted into its page: text keeps its size on a
    /// drawing, so few struts on a narrow one read from further away, and many on a wide one leave room for their codes.
    /// </summary>
    public static Length PictureWidth(int struts) => Length.FromMillimetres(struts switch { < 40 => 130, < 100 => 150, _ => 184 });

    /// <summary>The width of the stake-out drawing; fitted into its page, its figures are 9 points and more.</summary>
    public static Length RingWidth { get; } = Length.FromMillimetres(120);

    // A difference in height that soft ground takes up; common practice, no source.
    const double TolerableBaseSpreadMm = 10;

    readonly Dictionary<(int, int), Strut> struts = kit.Frame.Struts.ToDictionary(s => (s.From, s.To));

    public GuideCover Cover(string picture) => new(shelter, order, shop)
    {
        Picture = picture,
        Length = Measure.Whole(kit.Frame.Dimensions.LengthMm, units),
        Width = Measure.Whole(kit.Frame.Dimensions.WidthMm, units),
        Height = Measure.Whole(kit.Frame.Dimensions.HeightMm, units),
        FloorArea = Measure.Area(kit.Frame.Dimensions.FloorAreaM2, units),
        Mass = MassWords(kit.Totals.MassGrams),
        Tiers = kit.Tiers.Length,
        TopTier = kit.Tiers.Max(t => t.Number),
        Bundles = kit.Bundles.Length,
        Struts = [.. kit.StrutTypes.Select(t => Row(t, t.Count))],
        Hubs = Merged(kit.HubTypes, _ => []),
        HubCount = kit.Totals.Hubs,
        StrutCount = kit.Totals.Struts,
        Ties = kit.Totals.Ties,
        SpareTies = kit.Totals.TiesWithSpares - kit.Totals.Ties,
        StakeCount = kit.Totals.Stakes,
        HasCover = kit.Design.Cover is not null,
        Warnings = [.. Cautions.For(kit.Warnings)],
    };

    public GuideStakes Stakes(string picture) => new(shelter, order, shop) 
    {
        Picture = picture,
        Count = kit.Frame.Base.Length,
        Second = StakeOutDrawing.Places(kit.Frame)[0].Second,
        HasHeights = kit.Frame.BaseSpreadMm > TolerableBaseSpreadMm,
        Pegs =
        [
            .. StakeOutDrawing.Places(kit.Frame).Select(p => new GuidePeg(
                p.Number, p.Number == 1 ? "–" : Measure.Tape(p.FromFirstMm, units), p.Number == p.Second ? "–" : Measure.Tape(p.FromSecondMm, units),
                Measure.Tape(p.FromMiddleMm, units), Measure.Tape(p.ToNextMm, units), Measure.Tape(p.HeightMm, units))),
        ],
    };

    public GuideTier Tier(Tier tier, string picture) => new(shelter, order, shop)
    {
        Number = tier.Number,
        Name = tier.Name,
        IsTop = tier.Number == kit.Tiers.Max(t => t.Number),
        Bundles = Ranges(kit.Bundles.Where(b => b.Tier == tier.Number).Select(b => b.Number)),
        Struts = [.. tier.Struts.Select(s => Row(kit.StrutTypes.First(t => t.Code == s.Code), s.Count))],
        Hubs = Merged(tier.Hubs, tier.Number == 0 ? StakesOfDegree : _ => []),
        StrutCount = tier.Struts.Sum(s => s.Count),
        HubCount = tier.Hubs.Sum(h => h.Count),
        Ties = tier.Ties,
        TiesPerEnd = kit.Totals.Struts == 0 ? 0 : kit.Totals.Ties / (2 * kit.Totals.Struts),
        Stakes = tier.Stakes,
        Ring = tier.Number == 0 ? Ring() : "",
        BaseSpread = kit.Frame.BaseSpreadMm > TolerableBaseSpreadMm ? Measure.Part(kit.Frame.BaseSpreadMm, units) : "",
        Picture = picture,
    };

    public GuideEnd End() => new(shelter, order, shop)
    {
        Stakes = kit.Totals.Stakes,
        BaseHubs = kit.Frame.Base.Length,
        StakesWhere = StakesWhere(),
        IsLong = kit.Frame.Dimensions.LengthMm > kit.Frame.Dimensions.WidthMm * 1.1,
        HasCover = kit.Design.Cover is not null,
        Panels = kit.Totals.Panels,
        Checks = [.. Checks()],
    };

    /// <summary>Grams in words: kilograms to a tenth.</summary>
    public static string MassWords(int grams) => (grams / 1000.0).ToString("0.0", CultureInfo.InvariantCulture) + " kg";

    /// <summary>Numbers as they are said: 3 to 6 and 9.</summary>
    public static string Ranges(IEnumerable<int> numbers)
    {
        var runs = new List<(int From, int To)>();
        foreach (var n in numbers.Order())
            if (runs.Count > 0 && runs[^1].To + 1 >= n) runs[^1] = (runs[^1].From, n);
            else runs.Add((n, n));
        var words = runs.SelectMany(r => (r.To - r.From) switch { 0 => new[] { $"{r.From}" }, 1 => [$"{r.From}", $"{r.To}"], _ => [$"{r.From} to {r.To}"] }).ToList();
        return words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";
    }

    GuideStruts Row(StrutType type, int count) => new(type.Code, new(type.Tag.Colour, type.Tag.Hex, type.Tag.Bands), Measure.Part(type.CutLength.Millimetres, units), count);

    /// <summary>One row for each sort of hub, at however many kinds of node it stands.</summary>
    static IReadOnlyList<GuideHubs> Merged(IEnumerable<HubType> hubs, Func<int, IEnumerable<int>> where) =>
    [
        .. hubs.GroupBy(h => (h.Sku, h.Ways)).Select(g => new GuideHubs(g.Key.Sku, g.Key.Ways, g.Max(h => h.Degree), g.Sum(h => h.Count), Ranges(g.SelectMany(h => where(h.Degree))))
        {
            Degrees = Ranges(g.Select(h => h.Degree)).Replace(" and ", " or ", StringComparison.Ordinal),
        }),
    ];

    IEnumerable<int> StakesOfDegree(int degree) => kit.Frame.Base.Select((id, i) => (Stake: i + 1, kit.Frame.Nodes[id].Degree)).Where(b => b.Degree == degree).Select(b => b.Stake);

    public GuideOpenings Openings() => new(shelter, order, shop) { Openings = [.. kit.Openings.Select(o => new OpeningWords(kit, o, units).Write())] };

    string StakesWhere()
    {
        var at = kit.StakesAt.IsEmpty ? [.. kit.Frame.Base.Select(_ => 1)] : kit.StakesAt;
        if (at.All(n => n == 1)) return $"one through each of the {at.Length} base hubs";
        return string.Join("; ", at.Index().GroupBy(s => s.Item).OrderBy(g => g.Key)
            .Select(g => $"{(g.Key == 0 ? "none" : g.Key)} at {(g.Count() == 1 ? "stake" : "stakes")} {Ranges(g.Select(s => s.Index + 1))}")) + " of the stake-out";
    }

    string Ring()
    {
        var ring = kit.Frame.Base;
        return string.Join(", ", ring.Select((id, i) =>
        {
            var (next, number) = (ring[(i + 1) % ring.Length], (i + 1) % ring.Length + 1);
            return struts.TryGetValue((Math.Min(id, next), Math.Max(id, next)), out var strut) ? $"{i + 1}–{number}\u00a0{kit.TypeOfFamily(strut.Family).Code}" : $"{i + 1}–{number}\u00a0door";
        }));
    }

    IEnumerable<GuideCheck> Checks()
    {
        var (frame, ring) = (kit.Frame, kit.Frame.Base);
        var isRound = frame.RadiusMm is not null;
        if (!isRound)
        {
            yield return new("Length, at the ends of the long axis", Measure.Part(frame.Dimensions.LengthMm, units));
            yield return new("Width, at mid-length", Measure.Part(frame.Dimensions.WidthMm, units));
        }
        yield return new("Height, lowest base hub to the top", Measure.Part(frame.Dimensions.HeightMm, units));
        foreach (var first in new[] { 0, ring.Length / 4, ring.Length / 3 }.Distinct())
        {
            var across = (first + ring.Length / 2) % ring.Length;
            var (a, b) = (frame.Nodes[ring[first]].Position, frame.Nodes[ring[across]].Position);
            yield return new($"Across, stake {first + 1} to stake {across + 1}", Measure.Part(a.DistanceTo(b), units));
        }
    }
}
