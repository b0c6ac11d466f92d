using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Parcels;

/// <summary>
/// Puts the bundles of an order into the fewest parcels that its carriers take: first-fit decreasing where a bound proves
/// it, else constraint programming.
/// </summary>
/// <remarks>
/// Struts lie lengthwise, each in a square of its own width over the whole length of the parcel, so that what the plan says
/// fits can be packed by hand; bags fill what room they are given. The parcel is taken to be square in section. The same
/// bundles and rules give the same plan.
/// </remarks>
public static class ParcelPlanner
{
    /// <summary>Bundles that are planned as one. An order of more is planned kit by kit, each kit in parcels of its own.</summary>
    const int MostBundles = 300;

    /// <summary>The parcels of a number of kits.</summary>
    /// <returns>The plan, or <c>parcel.no-kinds</c> where the shop has no table of parcels, or <c>parcel.too-large</c> where a bundle is larger than any.</returns>
    public static Outcome<ParcelPlan> Plan(Kit kit, int quantity, ParcelRules rules)
    {
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);
        return Plan(kit.Bundles, quantity, rules);
    }

    internal static Outcome<ParcelPlan> Plan(ImmutableArray<Bundle> bundles, int quantity, ParcelRules rules)
    {
        if (rules.Kinds.IsEmpty) return new Refusal(RefusalKind.Conflict, "parcel.no-kinds", "The shop has no table of parcels. Put one with PUT /api/catalog/parcels.");
        if (bundles.Length * quantity <= MostBundles || quantity == 1) return PlanTogether(Numbered(bundles, 0, quantity), rules);
        return PlanTogether(Numbered(bundles, 0, 1), rules).Select(one => new ParcelPlan(
            [.. Enumerable.Range(0, quantity).SelectMany(kit => one.Parcels.Select(p => Later(p, kit, one.Parcels.Length, bundles.Length)))],
            ParcelInstance.Of(Numbered(bundles, 0, quantity), rules).Value.LowerBound));
    }

    static List<ParcelBundle> Numbered(ImmutableArray<Bundle> bundles, int from, int kits) =>
        [.. Enumerable.Range(from, kits).SelectMany(kit => bundles.Select((b, i) => new ParcelBundle(kit * bundles.Length + i + 1, kit + 1, b)))];

    /// <summary>The same parcel of a later kit.</summary>
    static Parcel Later(Parcel parcel, int kits, int parcelsPerKit, int bundlesPerKit) => parcel with
    {
        Number = parcel.Number + kits * parcelsPerKit,
        Bundles = [.. parcel.Bundles.Select(b => b with { Number = b.Number + kits * bundlesPerKit, KitNumber = b.KitNumber + kits })],
    };

    static Outcome<ParcelPlan> PlanTogether(List<ParcelBundle> bundles, ParcelRules rules)
    {
        if (!ParcelInstance.Of(bundles, rules).Succeeds(out var instance, out var refusal)) return refusal;
        var loads = FirstFit.Run(instance);
        var bound = instance.LowerBound;
        if (loads.Count > bound || rules.Kinds.Length > 1) (loads, bound) = ParcelSearch.Improve(instance, loads, bound);
        return new ParcelPlan(instance.Write(loads), bound);
    }
}
