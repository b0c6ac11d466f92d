using KitWorks.Kits.Catalog;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Standing;

/// <summary>The smallest pipe and the smallest tie of a catalog that pass a screening.</summary>
sealed class Choice
{
    /// <summary>A pipe whose utilisation, estimated from another's, is above this is not screened itself. Above 1, for an estimate is only that.</summary>
    const double HopelessEstimate = 1.2;

    readonly Screener screener;

    Choice(Screener screener, StrutStock strongest, StrutStock? pipe, Tie? tie) => (this.screener, Strongest, Pipe, Tie) = (screener, strongest, pipe, tie);

    /// <summary>The smallest pipe that passes; null where none does.</summary>
    public StrutStock? Pipe { get; }

    /// <summary>The pipe to build from: <see cref="Pipe"/>, or the strongest there is.</summary>
    public StrutStock Strongest { get; }

    /// <summary>The weakest tie that passes with that pipe; null where none does.</summary>
    public Tie? Tie { get; }

    /// <summary>Chooses among the pipes that the longest strut can be cut from and whose stiffness is known.</summary>
    /// <param name="screener">Screens.</param>
    /// <param name="catalog">What there is to choose from.</param>
    /// <param name="start">A pipe that is screened anyway.</param>
    /// <returns>The choice; null where there is nothing to choose from or the frame cannot be screened.</returns>
    public static Choice? Of(Screener screener, ShopCatalog catalog, StrutStock? start = null)
    {
        if (screener.IsTooLarge) return null;
        var longest = screener.Frame.Families[^1].SpacingMm - 2 * screener.Hubs.Allowance.Millimetres;
        var bySize = catalog.StrutStocks
            .Where(p => p.ModulusMPa is not null && longest <= p.StockLength.Millimetres - catalog.Workshop.EndTrim.Millimetres)
            .OrderBy(p => p.OutsideDiameter).ThenBy(p => p.Wall).ThenBy(p => p.Code, StringComparer.Ordinal).ToList();
        start ??= bySize.FirstOrDefault();
        if (start is null || !screener.Of(start).Succeeds(out var known, out _) || !known.Mechanisms.IsEmpty) return null;
        StrutStock? smallest = null;
        foreach (var pipe in bySize)
        {
            if (Estimate(known, start, pipe) > HopelessEstimate || !screener.Of(pipe).Succeeds(out var report, out _)) continue;
            if (Worst(report) > 1) continue;
            smallest = pipe;
            break;
        }
        var strongest = smallest ?? bySize.Append(start).MinBy(p => Estimate(known, start, p))!;
        return !screener.Of(strongest).Succeeds(out var its, out _)
            ? null
            : new(screener, strongest, smallest, catalog.Ties.Where(t => t.RatedNewtons >= RatingNeeded(its, screener.Tie)).OrderBy(t => t.RatedNewtons).ThenBy(t => t.Sku, StringComparer.Ordinal).FirstOrDefault());
    }

    /// <summary>Why, in words.</summary>
    /// <param name="ofSystems">The hub systems of the catalog.</param>
    public string Reason(IEnumerable<HubSystem> ofSystems)
    {
        var report = screener.Of(Strongest).Value;
        var set = $"the load set '{screener.Loads.Name}'";
        var pipe = Pipe is null
            ? $"No pipe of the catalog passes the screening for {set}: the strongest for it, {Strongest.Name}, is asked for {Percent(Worst(report))} of what is allowed. Make the shelter smaller or its frequency higher."
            : $"{Pipe.Name} is the smallest pipe of the catalog that passes the screening for {set}, at {Percent(Worst(report))} of what is allowed.";
        var needed = RatingNeeded(report, screener.Tie);
        var ends = screener.Hubs.TiesPerEnd == 1 ? "one tie to an end" : $"{screener.Hubs.TiesPerEnd} ties to an end";
        if (Tie is null) return $"{pipe} With {ends} it asks for ties rated {needed:#,0} N, and the catalog has none so strong. {Defer}";
        var rated = string.Join(", ", ofSystems.Where(s => s.TieSku == Tie.Sku).Select(s => s.Name));
        var where = Tie.Sku == screener.Tie.Sku ? $"the tie of {screener.Hubs.Name}" : rated.Length > 0 ? $"used with {rated}" : "used with no hub system of the catalog";
        return $"{pipe} With {ends} it asks for ties rated {needed:#,0} N; {Tie.Name} ({Tie.RatedNewtons:#,0} N), {where}, is the weakest that passes. {Defer}";
    }

    public const string Defer = "This is a screening only: local building codes and a licensed engineer decide.";

    /// <summary>The rating that the worst pull asks of a tie, in newtons; 0 where nothing pulls.</summary>
    public static double RatingNeeded(ScreeningReport report, Tie screenedWith) =>
        report.Checks.Where(c => c.Kind == CheckKind.TieTension).Select(c => c.Utilisation * screenedWith.RatedNewtons).DefaultIfEmpty(0).Max();

    /// <summary>The worst utilisation of the pipe itself, its ties left aside.</summary>
    static double Worst(ScreeningReport report) => report.Checks.Where(c => c.Kind != CheckKind.TieTension).Select(c => c.Utilisation).DefaultIfEmpty(0).Max();

    /// <summary>
    /// The worst utilisation of another pipe: the forces do not depend on the pipe but for its weight, and fall at most as the weight does.
    /// </summary>
    static double Estimate(ScreeningReport known, StrutStock of, StrutStock other)
    {
        if (!Screener.Section(of).Succeeds(out var a, out _) || !Screener.Section(other).Succeeds(out var b, out _)) return double.PositiveInfinity;
        double Softer(LoadDuration duration) => duration == LoadDuration.Brief
            ? a.ModulusMPa / b.ModulusMPa
            : (a.LongTermModulusMPa ?? a.ModulusMPa) / (b.LongTermModulusMPa ?? b.ModulusMPa);
        var softer = Math.Min(Softer(LoadDuration.Brief), Softer(LoadDuration.Lasting));
        var thinner = a.AreaMm2 / b.AreaMm2;
        var lighter = Math.Min(1, other.GramsPerMetre / Math.Max(1.0, of.GramsPerMetre));
        return known.Checks.Select(c => lighter * c.Utilisation * c.Kind switch
        {
            CheckKind.Buckling => softer * a.SecondMomentMm4 / b.SecondMomentMm4,
            CheckKind.Deflection => softer * thinner,
            CheckKind.Stress => b.StrengthMPa is null ? 0 : thinner * (a.StrengthMPa ?? 0) / b.StrengthMPa.Value,
            CheckKind.TieTension => 0,
        }).DefaultIfEmpty(0).Max();
    }

    static string Percent(double utilisation) => $"{utilisation * 100:#,0} %";
}
