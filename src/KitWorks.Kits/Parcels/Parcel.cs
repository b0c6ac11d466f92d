using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Parcels;

/// <summary>How an order's bundles go into parcels.</summary>
/// <param name="Parcels">The parcels, numbered by the first bundle that is opened from them.</param>
/// <param name="LowerBound">No plan has fewer parcels.</param>
public sealed record ParcelPlan(ImmutableArray<Parcel> Parcels, int LowerBound)
{
    /// <summary>Whether there is no plan with fewer parcels.</summary>
    public bool Proven => Parcels.Length == LowerBound;
}

/// <summary>One parcel. Every bundle lies in it whole.</summary>
/// <param name="Number">Its place in the order, from 1.</param>
/// <param name="Kind">The kind of parcel, with the carrier's limits.</param>
/// <param name="Bundles">What is in it, from the bottom up: the heaviest lies lowest.</param>
/// <param name="MassGrams">Its mass, wrapping with it.</param>
/// <param name="Length">Its longest side, outside.</param>
/// <param name="Side">Each of its two other sides, outside, where it is square.</param>
public sealed record Parcel(int Number, ParcelKind Kind, ImmutableArray<ParcelBundle> Bundles, int MassGrams, Length Length, Length Side)
{
    /// <summary>The longest side and the girth round the other two.</summary>
    public Length LengthAndGirth => Length.FromTenths(Length.Tenths + 4 * Side.Tenths);
}

/// <summary>A bundle in a parcel.</summary>
/// <param name="Number">Its place among the order's bundles, from 1.</param>
/// <param name="KitNumber">Which of the order's kits it belongs to, from 1.</param>
/// <param name="Bundle">The bundle.</param>
public sealed record ParcelBundle(int Number, int KitNumber, Bundle Bundle);
