namespace KitWorks.Statics.Solving;

/// <remarks>
/// A pivot is the energy of the easiest motion in which its unknown is 1 and later ones are 0. Where that is zero, the rest of the column of a
/// semi-definite matrix is zero too, so the unknown is held at zero and factorisation goes on: one loose pivot is one independent way to
/// move without any strut changing length. A pivot so small that it may be rounding is computed again from that motion and the elements,
/// where errors count by their squares. Rounding can still hide a mechanism behind a pivot that looks firm, so that the easiest motion of
/// what is left is sought by inverse iteration, and held too, until it takes some force. A motion is loose when its energy is at or below
/// <see cref="Looseness"/> times its node's stiffness times its greatest part squared: on the scale of a frame, a hub
/// in the plane of its neighbours to within a slope of about 1 in 30,000.
/// </remarks>
sealed partial class EnvelopeCholesky
{
    /// <summary>The share of its node's stiffness that the energy of a motion must exceed.</summary>
    public const double Looseness = 1e-9;

    /// <summary>The share of its node's stiffness below which a pivot is computed again.</summary>
    const double Doubtful = 1e-5;

    /// <summary>Steps of inverse iteration: each brings the easiest motion out by the ratio of the two least eigenvalues.</summary>
    const int Steps = 3;

    readonly HashSet<int> held = [];
    readonly List<double[]> found = [];
    double limit = Looseness;

    /// <summary>Independent x of K·x = 0, as many as the size exceeds the rank.</summary>
    public IReadOnlyList<double[]> Motions { get; private set; } = [];

    /// <summary>Adds the elements up and turns K into L.</summary>
    /// <param name="groups">For each unknown, a number that those of its node have in common.</param>
    /// <param name="looseness">The share of its node's stiffness that the energy of a motion must exceed.</param>
    public void Factor(ReadOnlySpan<int> groups, double looseness = Looseness)
    {
        limit = looseness;
        do
        {
            Assemble();
            var stiffness = Stiffness(groups);
            Eliminate(stiffness);
            if (!FindAnother(stiffness)) break;
        }
        while (true);
        Motions = [.. Enumerable.Range(0, Size).Where(i => loose[i] && !held.Contains(i)).Select(Motion), .. found];
    }

    /// <summary>For each unknown, the sum of the diagonal entries of its node.</summary>
    double[] Stiffness(ReadOnlySpan<int> groups)
    {
        var sums = new Dictionary<int, double>();
        for (var i = 0; i < Size; i++) sums[groups[i]] = sums.GetValueOrDefault(groups[i]) + Row(i)[^1];
        var stiffness = new double[Size];
        for (var i = 0; i < Size; i++) stiffness[i] = sums[groups[i]];
        return stiffness;
    }

    bool FindAnother(ReadOnlySpan<double> stiffness)
    {
        var x = new double[Size];
        var random = 1u;
        for (var i = 0; i < Size; i++)
        {
            random = random * 1664525 + 1013904223;
            x[i] = stiffness[i] * (random / 4294967296.0 - 0.5);
        }
        var most = -1;
        for (var step = 0; step < Steps; step++)
        {
            Solve(x);
            most = -1;
            for (var i = 0; i < Size; i++) if (!loose[i] && (most < 0 || Math.Abs(x[i]) > Math.Abs(x[most]))) most = i;
            if (most < 0) return false;
            var scale = x[most];
            for (var i = 0; i < Size; i++) x[i] *= step + 1 < Steps ? stiffness[i] / scale : 1 / scale;
        }
        if (!Energy(x, stiffness[most]).IsNone) return false;
        found.Add(x);
        return held.Add(most);
    }

    /// <summary>The x of K·x = 0 in which one loose unknown is 1, the others that are loose are 0 and so are all later ones.</summary>
    double[] Motion(int unknown)
    {
        var x = new double[Size];
        Row(unknown)[..^1].CopyTo(x.AsSpan(first[unknown]));
        for (var i = 0; i < unknown; i++) x[i] = -x[i];
        Back(x.AsSpan(0, unknown));
        x[unknown] = 1;
        return x;
    }

    /// <summary>The energy xᵀ·K·x of a motion, and whether it is none.</summary>
    (double Energy, bool IsNone) Energy(double[] x, double stiffness)
    {
        double energy = 0, most = 0;
        foreach (var (at, k) in elements)
            for (var i = 0; i < at.Length; i++)
                for (var j = 0; j < at.Length; j++)
                    if (at[i] >= 0 && at[j] >= 0) energy += x[at[i]] * k[i, j] * x[at[j]];
        foreach (var part in x) most = Math.Max(most, Math.Abs(part));
        return (energy, !(energy > limit * stiffness * most * most));
    }
}
