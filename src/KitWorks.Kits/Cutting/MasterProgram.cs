using Google.OrTools.LinearSolver;

namespace KitWorks.Kits.Cutting;

/// <summary>What a linear programme over patterns makes smallest, besides bars beyond the limits.</summary>
enum MasterAim
{
    /// <summary>The cost of the bars.</summary>
    Cost,

    /// <summary>Nothing but the bars beyond the limits: can it be done with these bars?</summary>
    Shortage,

    /// <summary>The capacity of the bars, remnants counted a little less.</summary>
    Material,
}

/// <summary>
/// The linear programme of Gilmore and Gomory over the patterns found so far: cover the demand, take no more bars than the
/// limits, or pay dearly for each beyond. Solved by GLOP, which starts from the basis it had.
/// </summary>
sealed class MasterProgram : IDisposable
{
    /// <summary>What the remnants' capacity counts for, so that they go first.</summary>
    const double RemnantWeight = 0.9;

    readonly CutInstance instance;
    readonly Solver solver;
    readonly Constraint[] demandRows;
    readonly Constraint[] barRows;
    readonly Variable[] beyond;
    readonly List<Variable> variables = [];
    readonly List<Pattern> patterns = [];
    readonly HashSet<Pattern> known = new(PatternEquality.Instance);
    readonly double dearest;
    readonly double longest;
    MasterAim aim = MasterAim.Cost;

    public MasterProgram(CutInstance instance)
    {
        this.instance = instance;
        dearest = instance.Bars.Max(b => (double)Math.Max(1, b.Cost));
        longest = instance.Bars.Max(b => (double)b.Capacity);
        solver = Solver.CreateSolver("GLOP");
        solver.SetSolverSpecificParametersAsString("use_preprocessing:false use_dual_simplex:false random_seed:1");
        demandRows = [.. instance.Demands.Select(d => solver.MakeConstraint(d, double.PositiveInfinity, ""))];
        barRows = [.. instance.Bars.Select(b => solver.MakeConstraint(double.NegativeInfinity, b.Available, ""))];
        beyond = [.. instance.Bars.Select((_, k) => Beyond(k))];
        solver.Objective().SetMinimization();
    }

    /// <summary>The patterns, in the order they were added.</summary>
    public IReadOnlyList<Pattern> Patterns => patterns;

    /// <summary>How often each pattern is cut in the last solution.</summary>
    public double[] Times { get; private set; } = [];

    /// <summary>What one more piece of each type is worth in the last solution.</summary>
    public double[] PieceDuals { get; private set; } = [];

    /// <summary>What a bar of each kind must be worth before a pattern of it pays: its weight and the price of its limit.</summary>
    public double[] BarPrices { get; private set; } = [];

    /// <summary>Bars beyond the limits in the last solution.</summary>
    public double Shortage { get; private set; }

    /// <summary>The value of the last solution: in <see cref="MasterAim.Cost"/>, in the instance's cost unit.</summary>
    public double Value { get; private set; }

    /// <summary>Adds a pattern; false where it is there already.</summary>
    public bool Add(Pattern pattern)
    {
        if (!known.Add(pattern)) return false;
        var variable = solver.MakeNumVar(0, double.PositiveInfinity, "");
        for (var i = 0; i < pattern.Counts.Length; i++)
            if (pattern.Counts[i] > 0) demandRows[i].SetCoefficient(variable, pattern.Counts[i]);
        barRows[pattern.Bar].SetCoefficient(variable, 1);
        solver.Objective().SetCoefficient(variable, Weight(pattern.Bar));
        variables.Add(variable);
        patterns.Add(pattern);
        return true;
    }

    /// <summary>Sets what to cover, the bars to do it with, and the aim. Patterns that give more than is wanted are put aside.</summary>
    public void Set(IReadOnlyList<int> demands, IReadOnlyList<int> limits, MasterAim aim)
    {
        for (var i = 0; i < demandRows.Length; i++) demandRows[i].SetLb(demands[i]);
        for (var k = 0; k < barRows.Length; k++) barRows[k].SetUb(limits[k]);
        for (var p = 0; p < patterns.Count; p++)
            variables[p].SetUb(patterns[p].IsWithin(demands) ? double.PositiveInfinity : 0);
        if (this.aim == aim) return;
        this.aim = aim;
        for (var p = 0; p < patterns.Count; p++) solver.Objective().SetCoefficient(variables[p], Weight(patterns[p].Bar));
    }

    /// <summary>Solves the programme over the patterns it has; false where the solver gave up, from its last basis and from none.</summary>
    public bool Solve()
    {
        var status = solver.Solve();
        if (status != Solver.ResultStatus.OPTIMAL)
        {
            // A warm start may end in numerical trouble that a cold one does not meet.
            solver.Reset();
            status = solver.Solve();
        }
        if (status != Solver.ResultStatus.OPTIMAL) return false;
        Times = [.. variables.Select(v => v.SolutionValue())];
        PieceDuals = [.. demandRows.Select(r => Math.Max(0, r.DualValue()))];
        BarPrices = [.. barRows.Select((r, k) => Weight(k) + Math.Max(0, -r.DualValue()))];
        Shortage = beyond.Sum(b => b.SolutionValue());
        Value = solver.Objective().Value() * (aim == MasterAim.Cost ? dearest : 1);
        return true;
    }

    /// <summary>Bars of each kind in the last solution.</summary>
    public double[] BarsUsed()
    {
        var used = new double[barRows.Length];
        for (var p = 0; p < Times.Length; p++) used[patterns[p].Bar] += Times[p];
        return used;
    }

    /// <summary>Pivots of the last solve.</summary>
    public long Pivots => solver.Iterations();

    public void Dispose() => solver.Dispose();

    Variable Beyond(int bar)
    {
        var variable = solver.MakeNumVar(0, double.PositiveInfinity, "");
        barRows[bar].SetCoefficient(variable, -1);
        solver.Objective().SetCoefficient(variable, 10 * instance.Bars[bar].Capacity / longest);
        return variable;
    }

    double Weight(int bar) => aim switch
    {
        MasterAim.Cost => instance.Bars[bar].Cost / dearest,
        MasterAim.Shortage => 0,
        MasterAim.Material => instance.Bars[bar].Capacity / longest * (instance.Bars[bar].IsRemnant ? RemnantWeight : 1),
    };
}
