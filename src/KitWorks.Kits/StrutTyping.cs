using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>Families whose cut lengths round to one setting of the saw share a strut type.</summary>
static class StrutTyping
{
    public static Outcome<ImmutableArray<StrutType>> Of(OpenedFrame opened, Materials materials, ShopCatalog catalog)
    {
        var frame = opened.Frame;
        var doubled = opened.Doubled.CountBy(strut => frame.Struts[strut].Family).ToDictionary();
        var (hubs, stock, workshop) = (materials.HubSystem, materials.StrutStock, catalog.Workshop);
        var shortest = frame.Families[0].SpacingMm - 2 * hubs.Allowance.Millimetres;
        if (shortest < ShortestStrutMm)
            return Refusal.OfField("design.strut-too-short", "shelter/size",
                $"The shortest strut would be cut to {shortest:0.#} mm; {ShortestStrutMm} mm is the least. Make the shelter larger or its frequency lower.");
        var usable = stock.StockLength.Tenths - workshop.EndTrim.Tenths;
        var types = frame.Families
            .GroupBy(f => SawSetting(f.SpacingMm - 2 * hubs.Allowance.Millimetres, workshop.SawStep))
            .OrderBy(g => g.Key)
            .Select((g, place) => TypeOf(g.Key, [.. g], catalog.Palette.TagFor(place), place, g.Sum(f => doubled.GetValueOrDefault(f.Index))))
            .ToImmutableArray();
        return types[^1].CutLength.Tenths > usable
            ? Refusal.OfField("design.strut-too-long", "shelter/size",
                $"The longest strut is cut to {types[^1].CutLength}, and {stock.Name} comes in {stock.StockLength}. Make the shelter smaller or its frequency higher.")
            : types;
    }

    static StrutType TypeOf(Length cutLength, ImmutableArray<StrutFamily> families, Tag tag, int place, int doubled)
    {
        var count = families.Sum(f => f.Count);
        return new(
            $"S{place + 1}", tag, families.Sum(f => f.SpacingMm * f.Count) / count, cutLength,
            families[0].ChordFactor is null ? null : families.Sum(f => f.ChordFactor * f.Count) / count,
            count + doubled, [.. families.Select(f => f.Index)]);
    }

    /// <summary>
    /// The setting nearest to a length, halves away from zero; a step of zero is a tenth of a millimetre. Rounded once: by way of tenths,
    /// 1,000.46 mm would come to 1,001 mm on a saw that steps by 1 mm.
    /// </summary>
    static Length SawSetting(double millimetres, Length step)
    {
        var tenths = Math.Max(1, step.Tenths);
        var steps = Math.Round(millimetres * 10 / tenths, NoiseDigits);
        return Length.FromTenths(tenths * (int)Math.Round(steps, MidpointRounding.AwayFromZero));
    }

    /// <summary>Past this many digits of a step there is only the noise of computing, which must not decide a half.</summary>
    const int NoiseDigits = 6;

    /// <summary>Shorter pieces cannot be held safely at a saw's stop; common practice, no source.</summary>
    public const double ShortestStrutMm = 50;
}
