using KitWorks.Geometry;

namespace KitWorks.Kits.Catalog;

/// <summary>Pipe that struts are cut from, as it is bought.</summary>
public sealed record StrutStock
{
    /// <summary>The code a design names it by.</summary>
    public required string Code { get; init; }

    /// <summary>The stock code of one length.</summary>
    public required string Sku { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The length it is sold in.</summary>
    public required Length StockLength { get; init; }

    /// <summary>Outside diameter.</summary>
    public required Length OutsideDiameter { get; init; }

    /// <summary>Wall thickness.</summary>
    public required Length Wall { get; init; }

    /// <summary>Mass of one metre, in grams.</summary>
    public required int GramsPerMetre { get; init; }

    /// <summary>Young's modulus for a brief load, in megapascals: 0.000001 to 1,000,000. Null where it is not known; then kits of it are not screened.</summary>
    public double? ModulusMPa { get; init; }

    /// <summary>Young's modulus under a load that stays for months, in megapascals: to <see cref="ModulusMPa"/>. Null for a material that does not creep.</summary>
    public double? LongTermModulusMPa { get; init; }

    /// <summary>The stress at which it yields or breaks, in megapascals: to 10,000. Null leaves the stress unchecked.</summary>
    public double? StrengthMPa { get; init; }
}

/// <summary>Sheet that covers a frame.</summary>
public sealed record CoverMaterial
{
    /// <summary>The code a design names it by.</summary>
    public required string Code { get; init; }

    /// <summary>The stock code; counted in square metres.</summary>
    public required string Sku { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Added along every edge of every panel, to join it to the next.</summary>
    public required Length SeamAllowance { get; init; }

    /// <summary>Mass of one square metre, in grams.</summary>
    public required int GramsPerM2 { get; init; }
}

/// <summary>How the saw and the packing bench work.</summary>
public sealed record Workshop
{
    /// <summary>The finest step the saw's stop is set to.</summary>
    public Length SawStep { get; init; } = Length.FromMillimetres(0.5);

    /// <summary>The width of one saw cut.</summary>
    public Length Kerf { get; init; } = Length.FromMillimetres(3);

    /// <summary>Taken off each stock length before the first cut.</summary>
    public Length EndTrim { get; init; } = Length.Zero;

    /// <summary>The shortest offcut worth keeping.</summary>
    public Length ShortestRemnant { get; init; } = Length.FromMillimetres(300);

    /// <summary>How much longer or shorter than its place a strut may be: the slack of a tied joint. Common practice, no source.</summary>
    public Length JointSlack { get; init; } = Length.FromMillimetres(4);

    /// <summary>Pieces in one strut bundle at the most.</summary>
    public int BundlePieces { get; init; } = 20;

    /// <summary>Mass of one strut bundle at the most, in grams.</summary>
    public int BundleGrams { get; init; } = 15_000;

    /// <summary>Spare ties for each hundred needed, rounded up over the kit.</summary>
    public int SpareTiesPercent { get; init; } = 5;

    /// <summary>Working days from an order with all its stock to the carrier.</summary>
    public int LeadDays { get; init; } = 5;

    /// <summary>Working days that a supplier takes to refill a short shelf.</summary>
    public int RestockDays { get; init; } = 10;

    /// <summary>Who gets stock that an order waits for.</summary>
    public Turns Turns { get; init; } = Turns.OldestFirst;
}

/// <summary>Whose turn it is when stock is short: what an order that waits may keep others from taking.</summary>
public enum Turns
{
    /// <summary>
    /// What an order that waits is short of, no order behind it takes: what comes in goes to the orders that wait, the higher priority first and
    /// then the older, and a new order too leaves it to them. None starves.
    /// </summary>
    OldestFirst,

    /// <summary>
    /// As <see cref="OldestFirst"/> for what comes in; but a new order takes what is on the shelf, if that is all it needs. A very large order
    /// that waits does not stop the shop, and may wait for long.
    /// </summary>
    ShelfFirst,

    /// <summary>What comes in goes to whichever order that waits it is enough for, in their order; a small one may pass a large one.</summary>
    WhoeverFits,
}
