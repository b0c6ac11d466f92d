using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using KitWorks.Geometry;

namespace KitWorks.Kits;

/// <summary>Tells designs apart.</summary>
static class Designs
{
    /// <summary>
    /// The first 64 bits of the SHA-256 of a design. However a cut is written, it is told by the nodes that it keeps, so that
    /// two ways of asking for one thing have one id.
    /// </summary>
    /// <param name="design">The design, with what it left open filled in.</param>
    /// <param name="frame">Its frame, before openings.</param>
    public static string IdOf(Design design, Frame frame)
    {
        var shelter = design.Shelter is Dome dome ? dome with { Cut = Cut.Rows(frame.Nodes.Length) } : design.Shelter;
        var text = JsonSerializer.Serialize(design with { Shelter = shelter });
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))[..8]);
    }
}
