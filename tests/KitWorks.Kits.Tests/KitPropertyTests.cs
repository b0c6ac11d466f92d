using CsCheck;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using static KitWorks.Kits.Tests.ExampleShop;
using Size = KitWorks.Geometry.Size;

namespace KitWorks.Kits.Tests;

public sealed class KitPropertyTests
{
    static readonly Gen<Lattice> Lattices = Gen.OneOf(
        Gen.Int[1, 6].Select(Lattice.Class1), Gen.Int[1, 3].Select(b => Lattice.Class2(2 * b)), Gen.Select(Gen.Int[1, 3], Gen.Int[1, 3], (b, c) => new Lattice(b, c)));

    static readonly Gen<Shelter> Domes =
        from solid in Gen.Enum<BaseSolid>()
        from up in Gen.Enum<Up>()
        from lattice in Lattices
        from at in Gen.Int[0, 999]
        from flat in Gen.Bool
        from longest in Gen.Int[3000, 30_000]
        let cuts = DomeCuts.Of(solid, lattice, up).Value
        select (Shelter)new Dome
        {
            Solid = solid, Up = up, Lattice = lattice, Cut = Cut.Rows(cuts.Length == 0 ? 1 : cuts[at % cuts.Length].Rows), FlatBase = flat,
            Size = new Size.LongestStrut(Length.FromTenths(longest)),
        };

    static readonly Gen<Shelter> Oblongs = Gen.Select(OneOf(4, 6, 8), Gen.Int[1, 2], Gen.Int[-1, 2], Gen.Int[5000, 20_000], (fold, frequency, bays, longest) =>
        (Shelter)new Oblong { Fold = fold, Frequency = frequency, Bays = bays, Size = new Size.LongestStrut(Length.FromTenths(longest)) });

    static readonly Gen<Workshop> Workshops = Gen.Select(
        OneOf(1, 2, 5, 10, 20, 100), Gen.Int[1, 60], Gen.Int[100, 30_000], Gen.Int[0, 100],
        (step, pieces, grams, spares) => new Workshop { SawStep = Length.FromTenths(step), BundlePieces = pieces, BundleGrams = grams, SpareTiesPercent = spares });

    static readonly Gen<Design> Designs = Gen.Select(
        Gen.Frequency((4, Domes), (1, Oblongs)), OneOf(Ring, Plate), OneOf("pipe", "long"), Gen.Int[0, 4], OneOf("film", "bare"),
        (shelter, hubs, stock, layers, cover) => Of(shelter) with { HubSystem = hubs, StrutStock = stock, Cover = layers == 0 ? null : new(layers, cover) });

    static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    [Fact]
    public void Make_WhenAnyDesign_AddsUpOrSaysWhyNot()
    {
        int made = 0, refused = 0;
        Gen.Select(Designs, Workshops).Sample((design, workshop) =>
        {
            var shop = With(workshop);
            if (Kit.Make(design, shop).Succeeds(out var kit, out var refusal))
            {
                Interlocked.Increment(ref made);
                KitChecks.Hold(kit, shop);
                return;
            }
            Interlocked.Increment(ref refused);
            Assert.NotEmpty(refusal.Errors);
            Assert.Contains(refusal.Code, new[] { "design.no-hub", "design.strut-too-short", "shelter.size", "shelter.flat-base", "shelter.cut-invalid" });
        }, iter: 250);

        Assert.True(made > 3 * refused, $"{made} made, {refused} refused");
    }
}
