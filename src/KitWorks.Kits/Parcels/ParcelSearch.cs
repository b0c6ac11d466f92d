using Google.OrTools.Sat;

namespace KitWorks.Kits.Parcels;

/// <summary>Looks with CP-SAT for fewer parcels than a plan has, then for more preferred kinds, and for a proof.</summary>
static class ParcelSearch
{
    /// <summary>Item kinds times parcels in one model at the most; beyond, first-fit decreasing stands with its bound.</summary>
    const int MostCells = 2_000;

    /// <summary>One parcel weighs more than all ranks together.</summary>
    const int ParcelWeight = 10_000;

    /// <summary>The best plan found, and how many parcels every plan has at the least.</summary>
    public static (List<ParcelLoad> Loads, int Bound) Improve(ParcelInstance instance, List<ParcelLoad> known, int bound)
    {
        if (instance.Items.Length * known.Count * instance.Shapes.Count > MostCells * 10 || instance.Items.Length * known.Count > MostCells) return (known, bound);
        var model = new CpModel();
        var parcels = Enumerable.Range(0, known.Count).Select(p => new ParcelVariables(model, instance, p)).ToList();
        for (var i = 0; i < instance.Items.Length; i++) model.Add(LinearExpr.Sum(parcels.Select(p => p.Counts[i])) == instance.Count(i));
        for (var p = 1; p < parcels.Count; p++) model.Add(LinearExpr.Sum(parcels[p - 1].Shapes) >= LinearExpr.Sum(parcels[p].Shapes));
        for (var p = 0; p < parcels.Count; p++) parcels[p].Suggest(model, known[p]);
        model.Add(LinearExpr.Sum(parcels.SelectMany(p => p.Shapes)) >= bound);
        model.Minimize(LinearExpr.WeightedSum(
            parcels.SelectMany(p => p.Shapes).ToArray(), parcels.SelectMany(_ => instance.Shapes.Select(s => (long)ParcelWeight + s.Rank)).ToArray()));
        // Its own measure of work, so that the plan does not depend on the machine; the clock is the last resort.
        var solver = new CpSolver { StringParameters = "num_workers:1 random_seed:1 max_deterministic_time:2 max_time_in_seconds:20" };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return (known, bound);
        var found = parcels.Select(p => p.Read(solver)).OfType<ParcelLoad>().ToList();
        var least = (int)(Math.Ceiling(solver.BestObjectiveBound - 1e-6) / ParcelWeight);
        return (found.Count <= known.Count ? found : known, Math.Max(bound, Math.Min(least, found.Count)));
    }
}

/// <summary>One parcel in the model: which shape it has, if it is used, and how many of each item lie in it.</summary>
sealed class ParcelVariables
{
    public ParcelVariables(CpModel model, ParcelInstance instance, int number)
    {
        Counts = [.. instance.Items.Select((_, i) => model.NewIntVar(0, instance.Count(i), $"n{number}_{i}"))];
        Shapes = [.. instance.Shapes.Select((_, s) => model.NewBoolVar($"s{number}_{s}"))];
        model.AddAtMostOne(Shapes);
        model.Add(LinearExpr.WeightedSum(Counts, instance.Items.Select(i => (long)i.Grams).ToArray())
            <= LinearExpr.WeightedSum(Shapes, instance.Shapes.Select(s => (long)s.MostGrams).ToArray()));
        var used = LinearExpr.Sum(Shapes);
        for (var i = 0; i < Counts.Length; i++) model.Add(Counts[i] <= used * instance.Count(i));
        for (var s = 0; s < Shapes.Length; s++)
        {
            var fitting = Enumerable.Range(0, Counts.Length).Where(i => instance.Room[s][i] is not null).ToList();
            model.Add(LinearExpr.WeightedSum(fitting.Select(i => Counts[i]).ToArray(), fitting.Select(i => instance.Room[s][i]!.Value).ToArray())
                <= instance.Shapes[s].RoomCm3).OnlyEnforceIf(Shapes[s]);
            foreach (var i in Enumerable.Range(0, Counts.Length).Except(fitting)) model.Add(Counts[i] == 0).OnlyEnforceIf(Shapes[s]);
        }
    }

    public IntVar[] Counts { get; }

    public BoolVar[] Shapes { get; }

    public void Suggest(CpModel model, ParcelLoad load)
    {
        for (var i = 0; i < Counts.Length; i++) model.AddHint(Counts[i], load.Counts[i]);
        for (var s = 0; s < Shapes.Length; s++) model.AddHint(Shapes[s], s == load.Shape ? 1 : 0);
    }

    /// <summary>What lies in the parcel; null where it is not used.</summary>
    public ParcelLoad? Read(CpSolver solver)
    {
        var shape = Array.FindIndex(Shapes, s => solver.BooleanValue(s));
        return shape < 0 ? null : new([.. Counts.Select(c => (int)solver.Value(c))], shape);
    }
}
