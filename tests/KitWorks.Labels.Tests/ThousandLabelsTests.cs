using KitWorks.Kits.Catalog;
using KitWorks.Labels.Tests.Reading;

namespace KitWorks.Labels.Tests;

/// <summary>A thousand labels of random orders, every code of which a scanner that is not ours must read.</summary>
public class ThousandLabelsTests
{
    const string CheckCharacters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    [Theory]
    [InlineData(203)]
    [InlineData(300)]
    public void Pdf_OfAThousandRandomLabels_EveryCodeReads(int dpi)
    {
        var random = new Random(20_261_125);
        var packs = Enumerable.Range(0, 800).Select(i => Pack(random, i)).ToList();
        var parcels = Enumerable.Range(0, 50).Select(i => Samples.Parcel with { Sscc = Sscc.Of(random.Next(10), "0614141", random.NextInt64(1_000_000_000)).Value, Parcel = 1 + i, Parcels = 50 }).ToList();
        var shelf = Enumerable.Range(0, 150).Select(i => Shelf(random, i)).ToList();
        var expected = packs.SelectMany(p => new[] { "CODE-128:" + p.Code, "QR-Code:" + p.PageUrl })
            .Concat(parcels.Select(p => "CODE-128:" + p.SsccElement))
            .Concat(shelf.Select(s => "CODE-128:" + (s is BinLabel bin ? bin.Code : ((RemnantLabel)s).Code)));

        var read = Scanner.All(dpi,
            Samples.Press.Pdf(packs[..500], LabelStock.A4Sheet with { Dpi = dpi }, startAt: 3).Value,
            Samples.Press.Pdf(packs[500..650], LabelStock.LetterSheet with { Dpi = dpi }, startAt: 8).Value,
            Samples.Press.Pdf(packs[650..], LabelStock.Page4x6 with { Dpi = dpi }).Value,
            Samples.Press.Pdf(parcels, LabelStock.Page100x150 with { Dpi = dpi }).Value,
            Samples.Press.Pdf(shelf[..75], LabelStock.Roll100x50 with { Dpi = dpi }).Value,
            Samples.Press.Pdf(shelf[75..], LabelStock.Roll57x32 with { Dpi = dpi }).Value);

        Assert.Equal(1_800, expected.Count());
        Assert.Equal(expected.Order(StringComparer.Ordinal), read.Order(StringComparer.Ordinal));
    }

    static PackLabel Pack(Random random, int i)
    {
        var code = $"K26-{random.Next(100_000):00000}-{1 + random.Next(9)}-{i:000}-{CheckCharacters[random.Next(36)]}";
        var tag = Palette.ColourBlindSafe.TagFor(random.Next(20));
        var struts = Samples.Bundle with
        {
            Code = code, PageUrl = $"https://kits.example/b/{code}", Order = code[..9], Bundle = 1 + random.Next(99), Bundles = 99, Tier = random.Next(17),
            TierName = $"Ring {random.Next(17)}", PieceCode = $"S{1 + random.Next(40)}", CutLength = $"{random.Next(3000, 30000) * 0.1:0.0} mm",
            Tag = new(tag.Colour, tag.Hex, tag.Bands), Contents = [new("S", "Pipe 33 mm", 1 + random.Next(20))],
        };
        return (i % 4) switch
        {
            0 => Samples.Hubs with { Code = struts.Code, PageUrl = struts.PageUrl, Order = struts.Order, Tier = struts.Tier, TierName = struts.TierName },
            1 => Samples.Ties with { Code = struts.Code, PageUrl = struts.PageUrl, Order = struts.Order, Tier = struts.Tier, TierName = struts.TierName },
            _ => struts,
        };
    }

    static Label Shelf(Random random, int i) => i % 2 == 0
        ? Samples.Bin with { Bin = $"{(char)('A' + i % 26)}-{i:00}-{random.Next(9)}", Code = $"BIN-{(char)('A' + i % 26)}-{i:000}" }
        : Samples.Remnant with { Length = $"{random.Next(300, 3000)} mm", Code = $"R-{i:000000}-{CheckCharacters[random.Next(36)]}" };
}
