using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits.Catalog;

/// <summary>A family of hubs that go together.</summary>
public sealed record HubSystem
{
    /// <summary>The code a design names it by.</summary>
    public required string Code { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The distance from a node centre to the end of the strut seated there.</summary>
    public required Length Allowance { get; init; }

    /// <summary>Ties that hold one strut end: 1 or more.</summary>
    public required int TiesPerEnd { get; init; }

    /// <summary>The tie it is rated with.</summary>
    public required string TieSku { get; init; }

    /// <summary>The stake that holds a base hub down.</summary>
    public required Stake Stake { get; init; }

    /// <summary>The hubs, one for each number of ways.</summary>
    public required ImmutableArray<Hub> Hubs { get; init; }
}

/// <summary>A hub that takes up to <paramref name="Ways"/> struts.</summary>
/// <param name="Sku">Its stock code.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Ways">How many struts it can take.</param>
/// <param name="MassGrams">Its mass.</param>
public sealed record Hub(string Sku, string Name, int Ways, int MassGrams);

/// <summary>What holds a base hub to the ground.</summary>
/// <param name="Sku">Its stock code.</param>
/// <param name="Name">What people call it.</param>
/// <param name="PerBaseHub">How many go through one base hub: 0 or more.</param>
/// <param name="MassGrams">Its mass.</param>
public sealed record Stake(string Sku, string Name, int PerBaseHub, int MassGrams);

/// <summary>A fastener that holds one strut end in a hub.</summary>
/// <param name="Sku">Its stock code.</param>
/// <param name="Name">What people call it.</param>
/// <param name="RatedNewtons">Its loop tensile strength, short-term.</param>
/// <param name="MassGrams">Its mass.</param>
public sealed record Tie(string Sku, string Name, int RatedNewtons, int MassGrams);
