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
        var shelter = frame.Shelter;
        var text = JsonSerializer.Serialize(design with { Shelter = shelter });
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))[..8]);
    }
}
