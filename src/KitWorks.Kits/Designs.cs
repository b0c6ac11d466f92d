using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using KitWorks.Geometry;

namespace KitWorks.Kits;

/// <summary>Tells designs apart.</summary>
static class Designs
{
    /// <summary>
    /// The first 64 bits of the SHA-256 of a design, in which a cut stands by its rows, so that two ways of asking for one
    /// thing have one id.
    /// </summary>
    public static string IdOf(Design design, Frame frame)
    {
        var text = JsonSerializer.Serialize(design with { Shelter = WithCutByRows(frame) });
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))[..8]);
    }

    /// <summary>The frame's shelter, its cut told by the height that it keeps: no two cuts of a dome keep the same.</summary>
    static Shelter WithCutByRows(Frame frame)
    {
        if (frame.Shelter is not Dome dome) return frame.Shelter;
        var height = frame.Nodes[0].Position.Z / frame.RadiusMm!.Value;
        var cut = DomeCuts.Of(dome.Solid, dome.Lattice, dome.Up).Value.MinBy(c => Math.Abs(c.HeightOverRadius - height))!;
        return dome with { Cut = Cut.Rows(cut.Rows) };
    }
}
