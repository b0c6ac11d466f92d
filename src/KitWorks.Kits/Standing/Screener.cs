using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Statics;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Standing;

/// <summary>Screens one frame with the pipes of a catalog, each at most once.</summary>
sealed class Screener(Frame frame, Fittings fittings, ShopCatalog catalog, LoadSet loads)
{
    /// <summary>A screening of more struts takes half a second and more, which no preview may.</summary>
    public const int MostStruts = 2000;

    readonly Dictionary<string, Outcome<ScreeningReport>> reports = [];

    public LoadSet Loads => loads;

    public Frame Frame => frame;

    public HubSystem Hubs => fittings.HubSystem;

    public Tie Tie => fittings.Tie;

    public bool IsTooLarge => frame.Struts.Length > MostStruts;

    public Outcome<ScreeningReport> Of(StrutStock pipe)
    {
        if (reports.TryGetValue(pipe.Code, out var known)) return known;
        return reports[pipe.Code] = Section(pipe)
            .Then(section => Screening.Of(frame, section, loads with { Dead = Dead() }, catalog.Screening.Criteria with
            {
                TieRatedN = Tie.RatedNewtons > 0 ? Tie.RatedNewtons : null,
                TiesPerEnd = Hubs.TiesPerEnd,
            }));
    }

    public static Outcome<Section> Section(StrutStock pipe) => pipe.ModulusMPa is not { } modulus
        ? Refusal.OfField("statics.material-unknown", "strutStock", $"The catalog does not say how stiff {pipe.Name} is.")
        : Statics.Section.Tube(pipe.OutsideDiameter.Millimetres, pipe.Wall.Millimetres, modulus).Select(s => s with
        {
            LongTermModulusMPa = pipe.LongTermModulusMPa,
            StrengthMPa = pipe.StrengthMPa,
            MassKgPerM = pipe.GramsPerMetre / 1000.0,
        });

    /// <summary>The mean hub of the system with the ties of a mean node, and the cover's layers without seams.</summary>
    DeadLoad Dead() => new()
    {
        HubKg = (Hubs.Hubs.Average(h => (double)h.MassGrams) + 2.0 * frame.Struts.Length * Hubs.TiesPerEnd * Tie.MassGrams / frame.Nodes.Length) / 1000,
        CoverKgPerM2 = fittings.Cover is { } cover ? cover.Material.GramsPerM2 * cover.Layers / 1000.0 : 0,
    };
}
