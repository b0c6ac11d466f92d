using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Parcels;

/// <summary>Bundles that are alike for packing: as long, as thick, as bulky and as heavy.</summary>
/// <param name="Length">How long; zero for a bag.</param>
/// <param name="SectionMm2">What its pieces take of a parcel's section, lying lengthwise.</param>
/// <param name="VolumeMm3">What a bag takes of a parcel's room.</param>
/// <param name="Grams">Its mass.</param>
readonly record struct ParcelItem(Length Length, long SectionMm2, long VolumeMm3, int Grams);

/// <summary>A kind of parcel made so long inside, as wide as the carrier then allows.</summary>
sealed record ParcelShape(ParcelKind Kind, int Rank, Length Inside, long RoomCm3)
{
    public int MostGrams => Kind.MaxGrams - Kind.TareGrams;
}

/// <summary>What is in one parcel: how many of each item, and the shape that it fits.</summary>
sealed record ParcelLoad(int[] Counts, int Shape);

/// <summary>A packing job in whole numbers.</summary>
sealed class ParcelInstance
{
    readonly ParcelRules rules;
    readonly List<List<ParcelBundle>> bundles;

    ParcelInstance(ParcelRules rules, List<(ParcelItem Item, List<ParcelBundle> Bundles)> alike, List<ParcelShape> shapes)
    {
        this.rules = rules;
        Items = [.. alike.Select(a => a.Item)];
        bundles = alike.ConvertAll(a => a.Bundles);
        Shapes = shapes;
        Room = [.. shapes.Select(s => Items.Select(i => RoomOf(i, s)).ToArray())];
    }

    /// <summary>The items, the longest first.</summary>
    public ParcelItem[] Items { get; }

    public IReadOnlyList<ParcelShape> Shapes { get; }

    /// <summary>What each item takes of each shape's room, by shape and item, in cm³; null where it is too long for it.</summary>
    public long?[][] Room { get; }

    public int Count(int item) => bundles[item].Count;

    /// <summary>No plan has fewer parcels: their masses, and the least room that each takes, add up to more than fewer hold.</summary>
    public int LowerBound
    {
        get
        {
            var grams = Items.Select((item, i) => (long)item.Grams * Count(i)).Sum();
            var room = Items.Select((item, i) => (item.SectionMm2 * item.Length.Tenths / 10 + item.VolumeMm3) * Count(i)).Sum() / 1000;
            return (int)Math.Max(Math.Max(1, Up(grams, Shapes.Max(s => s.MostGrams))), Up(room, Shapes.Max(s => s.RoomCm3)));
        }
    }

    static long Up(long amount, long each) => (amount + each - 1) / each;

    public static Outcome<ParcelInstance> Of(List<ParcelBundle> bundles, ParcelRules rules)
    {
        var alike = bundles.GroupBy(b => ItemOf(b.Bundle, rules)).OrderByDescending(g => g.Key.Length).ThenByDescending(g => g.Key.Grams)
            .ThenByDescending(g => g.Key.SectionMm2).Select(g => (g.Key, g.ToList())).ToList();
        var lengths = alike.Select(a => a.Key.Length).Where(l => l > Length.Zero).Distinct().ToList();
        var instance = new ParcelInstance(rules, alike, [.. rules.Kinds.SelectMany((kind, rank) => ShapesOf(kind, rank, lengths, rules.Wrapping))]);
        for (var i = 0; i < instance.Items.Length; i++)
            if (!instance.Fits(i)) return TooLarge(instance.bundles[i][0].Bundle, rules);
        return instance;
    }

    static ParcelItem ItemOf(Bundle bundle, ParcelRules rules)
    {
        // A bundle of a kit that was made before pieces had a width is taken as a bag.
        if (bundle.Kind == BundleKind.Struts && bundle.PieceWidth > Length.Zero)
            return new(bundle.Length, bundle.Contents.Sum(c => c.Count) * (long)Math.Ceiling(bundle.PieceWidth.Millimetres * bundle.PieceWidth.Millimetres), 0, bundle.MassGrams);
        var gramsPerLitre = bundle.Kind == BundleKind.Cover ? rules.CoverGramsPerLitre : rules.BagGramsPerLitre;
        return new(bundle.Length, 0, bundle.MassGrams * 1_000_000L / gramsPerLitre, bundle.MassGrams);
    }

    /// <summary>A parcel as long as some strut, and one of the length at which it holds most: a third of length and girth.</summary>
    static IEnumerable<ParcelShape> ShapesOf(ParcelKind kind, int rank, List<Length> lengths, Length wrapping)
    {
        var roomiest = Math.Min(kind.MaxLength.Tenths, kind.MaxLengthAndGirth.Tenths / 3);
        foreach (var outside in lengths.Select(l => l.Tenths + wrapping.Tenths).Append(roomiest).Distinct())
        {
            var side = (kind.MaxLengthAndGirth.Tenths - outside) / 4 - wrapping.Tenths;
            var inside = outside - wrapping.Tenths;
            if (outside > kind.MaxLength.Tenths || side <= 0 || inside <= 0) continue;
            yield return new(kind, rank, Length.FromTenths(inside), (long)side * side * inside / 1_000_000);
        }
    }

    static long? RoomOf(ParcelItem item, ParcelShape shape) =>
        item.Length > shape.Inside ? null : Up(item.SectionMm2 * shape.Inside.Tenths / 10 + item.VolumeMm3, 1000);

    bool Fits(int item) => Enumerable.Range(0, Shapes.Count).Any(s => Room[s][item] <= Shapes[s].RoomCm3 && Items[item].Grams <= Shapes[s].MostGrams);

    static Refusal TooLarge(Bundle bundle, ParcelRules rules) => new(RefusalKind.Impossible, "parcel.too-large",
        $"Bundle {bundle.Number} ({bundle.Contents[0].Count} × {bundle.Contents[0].Description}, {bundle.MassGrams / 1000m:0.0} kg) fits none of the shop's parcels: "
        + string.Join("; ", rules.Kinds.Select(k => $"{k.Name} takes {k.MaxLength}, {k.MaxLengthAndGirth} with girth, {k.MaxGrams / 1000m:0.0} kg"))
        + ". Pack smaller bundles (PUT /api/catalog/workshop), choose shorter struts, or add a parcel to the table.");

    /// <summary>The parcels, with their bundles by name.</summary>
    public ImmutableArray<Parcel> Write(IReadOnlyList<ParcelLoad> loads)
    {
        var next = new int[Items.Length];
        var parcels = loads.Select(load =>
        {
            var inside = load.Counts.SelectMany((count, i) => bundles[i].GetRange((next[i] += count) - count, count)).ToList();
            var kind = Shapes[load.Shape].Kind;
            var (length, side) = MeasuresOf(load, kind);
            return new Parcel(
                0, kind, [.. inside.OrderByDescending(b => b.Bundle.MassGrams).ThenByDescending(b => b.Bundle.Length).ThenBy(b => b.Number)],
                inside.Sum(b => b.Bundle.MassGrams) + kind.TareGrams, length, side);
        });
        return [.. parcels.OrderBy(p => p.Bundles.Min(b => b.Number)).Select((p, i) => p with { Number = i + 1 })];
    }

    /// <summary>The smallest square parcel of a kind that a load fits, outside.</summary>
    (Length Length, Length Side) MeasuresOf(ParcelLoad load, ParcelKind kind) => Enumerable.Range(0, Shapes.Count)
        .Where(s => Shapes[s].Kind == kind && RoomOf(load.Counts, s) is { } room && room <= Shapes[s].RoomCm3)
        .Select(s => (
            Length: Length.FromTenths(Shapes[s].Inside.Tenths + rules.Wrapping.Tenths),
            Side: Length.FromTenths((int)Math.Ceiling(Math.Sqrt(RoomOf(load.Counts, s)!.Value * 1_000_000.0 / Shapes[s].Inside.Tenths)) + rules.Wrapping.Tenths)))
        .MinBy(m => m.Length.Tenths + 4 * m.Side.Tenths);

    /// <summary>What a load takes of a shape's room; null where a piece is too long for it.</summary>
    public long? RoomOf(int[] counts, int shape)
    {
        long room = 0;
        for (var i = 0; i < counts.Length; i++)
        {
            if (counts[i] == 0) continue;
            if (Room[shape][i] is not { } each) return null;
            room += each * counts[i];
        }
        return room;
    }
}
