using System.Buffers.Binary;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>Writes PNG files that say how many dots go to the metre; the encoder leaves that out.</summary>
static class PngFile
{
    // Signature and IHDR chunk: 8 + 4 + 4 + 13 + 4 bytes. pHYs stands between IHDR and IDAT.
    const int AfterHeader = 33;

    public static byte[] Write(SKBitmap bitmap, int dpi)
    {
        using var encoded = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        var plain = encoded.AsSpan();
        var chunk = new byte[21];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk.AsSpan(4));
        var perMetre = (uint)Math.Round(dpi / 0.0254);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8), perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(12), perMetre);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(17), Crc(chunk.AsSpan(4, 13)));
        return [.. plain[..AfterHeader], .. chunk, .. plain[AfterHeader..]];
    }

    // The CRC-32 of the PNG specification, annex D.
    static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var k = 0; k < 8; k++) crc = (crc & 1) != 0 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
        }
        return ~crc;
    }
}
