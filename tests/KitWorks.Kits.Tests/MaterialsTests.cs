using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class MaterialsTests
{
    [Fact]
    public void Make_WhenNoMaterialIsNamed_TakesTheCatalogsFirst() => Assert.Contains(SixMetreKit.Parts, p => p.Sku == "film-sku");

    [Theory]
    [InlineData(0), InlineData(5), InlineData(-1), InlineData(int.MaxValue)]
    public void Make_WhenLayersCannotBe_NamesTheField(int layers)
    {
        var refusal = Refused(SixMetreDome() with { Cover = new(layers) });

        Assert.Equal(("design.layers", "cover/layers"), (refusal.Code, refusal.Errors[0].Field));
    }

    [Theory]
    [InlineData("hubSystem", "ring, plate"), InlineData("strutStock", "pipe, long"), InlineData("cover/material", "film, bare")]
    public void Make_WhenCatalogHasNoSuchThing_ListsWhatItHas(string field, string known)
    {
        var design = field switch
        {
            "hubSystem" => SixMetreDome() with { HubSystem = "brass" },
            "strutStock" => SixMetreDome() with { StrutStock = "brass" },
            _ => SixMetreDome() with { Cover = new(1, "brass") },
        };
        var refusal = Refused(design);

        Assert.Equal(("design.not-in-catalog", field), (refusal.Code, refusal.Errors[0].Field));
        Assert.Contains($"'brass' is not in the catalog; it has {known}.", refusal.Detail, StringComparison.Ordinal);
    }
}
