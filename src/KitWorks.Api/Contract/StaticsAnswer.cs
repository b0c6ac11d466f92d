using System.Text.Json.Serialization;
using KitWorks.Statics;

namespace KitWorks.Api.Contract;

/// <summary>What loads do to a frame. Newtons and millimetres; tension is positive.</summary>
/// <param name="Mechanisms">The independent ways in which hubs can move although no strut changes length: 0 for a frame that can stand.</param>
/// <param name="Explanation">Where there are mechanisms, what is loose and what would stop it; otherwise null.</param>
/// <param name="Members">The force in each strut; none where there are mechanisms.</param>
/// <param name="Displacements">How far each node moves.</param>
/// <param name="Reactions">What the ground does to each base node; a push up is positive.</param>
/// <param name="Caution">What this is not.</param>
sealed record StaticsAnswer(
    int Mechanisms, string? Explanation, IEnumerable<MemberAnswer> Members, IEnumerable<Displacement> Displacements, IEnumerable<ReactionAnswer> Reactions, string Caution)
{
    /// <summary>As many mechanisms are told apart in words; more would only repeat themselves.</summary>
    const int MostExplained = 3;

    public static StaticsAnswer Of(LoadedFrame loaded)
    {
        var mechanisms = loaded.Truss.Mechanisms;
        return loaded.Result is not { } result
            ? new(mechanisms.Length, string.Join(' ', mechanisms.Take(MostExplained).Select(m => m.Detail).Distinct()), [], [], [], Truss.Caution)
            : new(0, null,
                result.Members.Select(m => new MemberAnswer(m.Strut, Rounded(m.ForceN), m.EulerFactor)),
                result.Displacements.Select(d => new Displacement(d.Node, Rounded(d.XMm), Rounded(d.YMm), Rounded(d.ZMm))),
                result.Reactions.Select(r => new ReactionAnswer(r.Node, Rounded(r.XN), Rounded(r.YN), Rounded(r.ZN))),
                Truss.Caution);
    }

    /// <summary>To nine decimals, which is below the solver's own rounding for any load of a newton or more; never minus nothing.</summary>
    static double Rounded(double value) => Math.Round(value, 9) + 0.0;
}

/// <summary>The force in one strut.</summary>
/// <param name="Strut">Its id in the frame.</param>
/// <param name="ForceN">Tension positive, compression negative.</param>
/// <param name="EulerFactor">Euler's load over the compression: below 1 it buckles. Null in tension.</param>
sealed record MemberAnswer(int Strut, double ForceN, double? EulerFactor);

/// <summary>What the ground does to one base node. The names are spelt out because camel case would make <c>xn</c> of <c>XN</c>.</summary>
sealed record ReactionAnswer(
    int Node, [property: JsonPropertyName("xN")] double XN, [property: JsonPropertyName("yN")] double YN, [property: JsonPropertyName("zN")] double ZN);
