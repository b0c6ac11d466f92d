using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Statics;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Standing;

/// <summary>Screens one frame with the pipes of a catalog, each at most once.</summary>
sealed class Screener(OpenedFrame opened, Fittings fittings, ShopCatalog catalog, LoadSet loads)
{
    /// <summary>A screening of more struts takes half a second and more, which no preview may.</summary>
    public const int MostStruts = 2000;

    /// <summary>Inside pressure of a building with an opening that is not shut: GCpi of ASCE 7 for a partially enclosed one.</summary>
    const double OpenInsideCp = 0.55;

    readonly Frame frame = opened.Frame;
    readonly Dictionary<string, Outcome<ScreeningReport>> reports = [];

    Outcome<Sweep>? sweep;

    public LoadSet Loads => loads;

    public OpenedFrame Opened => opened;

    public Frame Frame => frame;

    public HubSystem Hubs => fittings.HubSystem;

    public Tie Tie => fittings.Tie;

    public bool IsTooLarge => frame.Struts.Length > MostStruts;

    public Outcome<ScreeningReport> Of(StrutStock pipe)
    {
        if (reports.TryGetValue(pipe.Code, out var known)) return known;
        return reports[pipe.Code] = Section(pipe)
            .Then(section => Swept().Then(swept => swept.Report(section, Dead(pipe), catalog.Screening.Criteria with
            {
                TieRatedN = Tie.RatedNewtons > 0 ? Tie.RatedNewtons : null,
                TiesPerEnd = Hubs.TiesPerEnd,
            })));
    }

    /// <summary>The frame under its loads, solved once for all pipes. What leans on a shut door reaches the frame, and the wind finds it open.</summary>
    Outcome<Sweep> Swept() => sweep ??= opened.Openings.IsEmpty
        ? Sweeps.Of(opened, loads)
        : Sweeps.Of(opened, loads with { Wind = loads.Wind is { } wind ? wind with { InsideCp = Math.Max(wind.InsideCp, OpenInsideCp) } : null });

    public static Outcome<Section> Section(StrutStock pipe) => pipe.ModulusMPa is not { } modulus
        ? Refusal.OfField("statics.material-unknown", "strutStock", $"The catalog does not say how stiff {pipe.Name} is.")
        : Statics.Section.Tube(pipe.OutsideDiameter.Millimetres, pipe.Wall.Millimetres, modulus).Select(s => s with
        {
            LongTermModulusMPa = pipe.LongTermModulusMPa,
            StrengthMPa = pipe.StrengthMPa,
            MassKgPerM = pipe.GramsPerMetre / 1000.0,
        });

    /// <summary>The mean hub of the system with the ties of a mean node and its share of the struts that lie double, and the cover's layers without seams.</summary>
    DeadLoad Dead(StrutStock pipe)
    {
        var doubled = opened.Doubled.Select(id => frame.Struts[id]).ToList();
        var ties = 2.0 * (frame.Struts.Length + doubled.Count) * Hubs.TiesPerEnd * Tie.MassGrams;
        var further = doubled.Sum(s => s.SpacingMm) / 1000 * pipe.GramsPerMetre;
        return new()
        {
            HubKg = (Hubs.Hubs.Average(h => (double)h.MassGrams) + (ties + further) / frame.Nodes.Length) / 1000,
            CoverKgPerM2 = fittings.Cover is { } cover ? cover.Material.GramsPerM2 * cover.Layers / 1000.0 : 0,
        };
    }
}
