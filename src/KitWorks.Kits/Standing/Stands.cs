using System.Collections.Immutable;
using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Statics;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Standing;

/// <summary>Whether a kit stands, for as far as a screening tells: what goes with the kit, and what its customer is warned of.</summary>
sealed record Stands(KitScreening? Screening, Recommendation? Recommendation, ImmutableArray<Warning> Warnings)
{
    /// <summary>Nothing is said, for want of a load set or of a pipe whose stiffness is known.</summary>
    public static readonly Stands Unsaid = new(null, null, []);

    /// <summary>The stakes of each base hub, in the order of the frame's base; null where nothing is said.</summary>
    public ImmutableArray<int>? StakesAt { get; private init; }

    /// <summary>The load set of a design: named, or the catalog's first; null where the catalog has none.</summary>
    public static Outcome<Statics.Loads.LoadSet?> LoadSetOf(Design design, ShopCatalog catalog)
    {
        var sets = catalog.Screening.LoadSets;
        if (design.LoadSet is null) return sets.FirstOrDefault();
        return sets.FirstOrDefault(s => s.Name == design.LoadSet) is { } named
            ? named
            : NotInCatalog.Of("loadSet", design.LoadSet, sets.Select(s => s.Name));
    }

    /// <summary>Screens a kit as it is, and says what the smallest pipe and tie would be.</summary>
    public static Stands Of(Materials materials, ImmutableArray<StrutType> types, Screener screener, ShopCatalog catalog)
    {
        var (pipe, frame) = (materials.StrutStock, screener.Frame);
        if (pipe.ModulusMPa is null) return Unsaid;
        if (screener.IsTooLarge)
            return NotScreened($"It has {frame.Struts.Length:#,0} struts; more than {Screener.MostStruts:#,0} are not screened here.");
        if (!screener.Of(pipe).Succeeds(out var report, out var refusal)) return NotScreened(refusal.Detail);

        var choice = Choice.Of(screener, catalog, pipe);
        var recommendation = choice is null
            ? null
            : new Recommendation(screener.Loads.Name, choice.Pipe?.Code, choice.Tie?.Sku, choice.Pipe == pipe && choice.Tie == materials.Tie, choice.Reason(catalog.HubSystems));
        var stakes = new KitStakes(frame, materials.HubSystem.Stake, report, catalog.Screening.MostStakesPerHub);
        var screening = Summary(frame, materials, types, screener, report, stakes);
        return new(screening, recommendation, [.. WarningsOf(materials, screening, report, stakes)]) { StakesAt = stakes.At };
    }

    static Stands NotScreened(string why) => Unsaid with { Warnings = [new("statics.not-screened", $"This shelter was not screened for its loads. {why} {Choice.Defer}")] };

    static KitScreening Summary(Frame frame, Materials materials, ImmutableArray<StrutType> types, Screener screener, ScreeningReport report, KitStakes stakes) => new()
    {
        LoadSet = screener.Loads.Name,
        Passes = report.Passes,
        Checks =
        [
            .. report.Checks.Select(c => new ScreeningLine(
                c.Kind, c.LoadCase, c.LoadedHub, c.At,
                c.Kind == CheckKind.Deflection ? null : types.First(t => t.Families.Contains(frame.Struts[c.At].Family)).Code,
                c.Demand, c.Capacity, UnitOf(c.Kind), c.Utilisation)),
        ],
        StakesNeeded = report.Stakes,
        StakesInKit = stakes.At.Sum(),
        Notes =
        [
            .. report.Mechanisms.Take(3).Select(m => m.Detail), .. report.Notes,
            .. Assumptions(screener.Loads, !screener.Opened.Openings.IsEmpty, materials.Cover is not null),
        ],
        Caution = Truss.Caution,
    };

    /// <summary>What the figures hold for, and what was not looked at.</summary>
    static IEnumerable<string> Assumptions(LoadSet loads, bool hasOpenings, bool hasCover)
    {
        var weather = (loads.Wind, loads.Snow) switch { (null, null) => "", (_, null) => "wind", (null, _) => "snow", _ => "wind and snow" };
        if (loads.Wind is null || loads.Snow is null)
            yield return $"The load set has no {(weather.Length == 0 ? "wind and no snow" : loads.Wind is null ? "wind" : "snow")}: what that does to this shelter was not looked at.";
        if (hasOpenings)
            yield return $"Openings: struts that lie double count twice against buckling only,{(loads.Wind is null ? "" : " wind is let in,")} and what leans on a shut door or vent is borne by the hubs around it.";
        if (!hasCover && weather.Length > 0) yield return $"The design has no cover; {weather} {(weather.Contains(' ', StringComparison.Ordinal) ? "are" : "is")} taken as if it had one.";
    }

    static IEnumerable<Warning> WarningsOf(Materials materials, KitScreening screening, ScreeningReport report, KitStakes stakes)
    {
        if (!report.Mechanisms.IsEmpty)
        {
            yield return new("statics.loose", $"The frame is loose: hubs can move without any strut changing length. {report.Mechanisms[0].Detail} {Choice.Defer}");
            yield break;
        }
        if (screening.Checks.FirstOrDefault(c => c.Kind != CheckKind.TieTension && c.Utilisation > 1) is { } strut)
            yield return new("statics.outgrown", $"In the screening this shelter outgrows {materials.StrutStock.Name}: {Asked(strut, screening.LoadSet)}. {Choice.Defer}");
        if (screening.Checks.FirstOrDefault(c => c.Kind == CheckKind.TieTension && c.Utilisation > 1) is { } tie)
            yield return new("statics.tie-overloaded", $"In the screening this shelter asks too much of {materials.Tie.Name}: {Asked(tie, screening.LoadSet)}. {Choice.Defer}");
        foreach (var warning in stakes.Warnings(screening.LoadSet)) yield return warning;
    }

    static string Asked(ScreeningLine line, string loadSet)
    {
        var (what, where) = line.Kind switch
        {
            CheckKind.Buckling => ("compression", $"strut {line.At} ({line.StrutType})"),
            CheckKind.TieTension => ("tension", $"strut {line.At} ({line.StrutType})"),
            CheckKind.Stress => ("stress", $"strut {line.At} ({line.StrutType})"),
            CheckKind.Deflection => ("deflection", $"hub {line.At}"),
        };
        var hub = line.LoadedHub is { } loaded ? $" (hub {loaded})" : "";
        return $"under {line.LoadCase}{hub} of the load set '{loadSet}', the {what} of {where} is {Number(line.Demand)} {line.Unit} and {Number(line.Capacity)} {line.Unit} is allowed";
    }

    static string Number(double value) => value.ToString(Math.Abs(value) >= 100 ? "#,0" : "0.0", CultureInfo.InvariantCulture);

    static string UnitOf(CheckKind kind) => kind switch
    {
        CheckKind.Buckling or CheckKind.TieTension => "N",
        CheckKind.Stress => "MPa",
        CheckKind.Deflection => "mm",
    };
}
