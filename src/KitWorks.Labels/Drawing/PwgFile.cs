using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>Writes PWG raster (PWG 5102.4), the pages of dots that IPP printers take: eight bits of grey a dot, packed line by line.</summary>
static class PwgFile
{
    const int HeaderLength = 1796, SGray = 18;

    public static void Begin(Stream to) => to.Write("RaS2"u8);

    public static void Page(Stream to, SKBitmap bitmap, int dpi, int pages)
    {
        Header(to, bitmap.Width, bitmap.Height, dpi, pages);
        var (line, next) = (Line(bitmap, 0), new byte[bitmap.Width]);
        for (var y = 0; y < bitmap.Height;)
        {
            var same = 1;
            while (same < 256 && y + same < bitmap.Height && (next = Line(bitmap, y + same)).AsSpan().SequenceEqual(line)) same++;
            to.WriteByte((byte)(same - 1));
            Pack(to, line);
            y += same;
            line = next;
        }
    }

    /// <summary>Runs of one dot up to 128 times, or up to 128 different dots as they are.</summary>
    static void Pack(Stream to, ReadOnlySpan<byte> line)
    {
        while (!line.IsEmpty)
        {
            var run = 1;
            while (run < Math.Min(128, line.Length) && line[run] == line[0]) run++;
            if (run > 1 || line.Length == 1)
            {
                to.WriteByte((byte)(run - 1));
                to.WriteByte(line[0]);
                line = line[run..];
                continue;
            }
            var plain = 1;
            while (plain < Math.Min(128, line.Length) && (plain + 1 == line.Length || line[plain] != line[plain + 1])) plain++;
            // A count of literals is written as 257 less it, so a single dot is written as a run.
            to.WriteByte((byte)(plain == 1 ? 0 : 257 - plain));
            to.Write(line[..plain]);
            line = line[plain..];
        }
    }

    static byte[] Line(SKBitmap bitmap, int y)
    {
        var pixels = bitmap.GetPixelSpan().Slice(y * bitmap.RowBytes, bitmap.Width * 4);
        var line = new byte[bitmap.Width];
        // Luma of ITU-R BT.601 in 256ths; the pixel is blue, green, red, alpha.
        for (var x = 0; x < line.Length; x++) line[x] = (byte)((29 * pixels[4 * x] + 150 * pixels[4 * x + 1] + 77 * pixels[4 * x + 2]) >> 8);
        return line;
    }

    /// <summary>Field positions as in PWG 5102.4, section 4.3; what is not written is zero, the default.</summary>
    static void Header(Stream to, int width, int height, int dpi, int pages)
    {
        var header = new byte[HeaderLength];
        var (widthPoints, heightPoints) = ((int)Math.Round(width * 72.0 / dpi), (int)Math.Round(height * 72.0 / dpi));
        Text(0, "PwgRaster");
        Number(276, dpi, dpi);
        Number(340, 1);
        Number(352, widthPoints, heightPoints);
        Number(372, width, height);
        Number(384, 8, 8, width, 0, SGray);
        Number(420, 1);
        Number(452, pages, 1, 1, 0, 0, width, height);
        var (widthMm, heightMm) = (width * 25.4 / dpi, height * 25.4 / dpi);
        Text(1732, string.Create(CultureInfo.InvariantCulture, $"custom_label_{widthMm:0.#}x{heightMm:0.#}mm"));
        to.Write(header);

        void Text(int at, string text) => Encoding.ASCII.GetBytes(text).CopyTo(header, at);

        void Number(int at, params ReadOnlySpan<int> numbers)
        {
            foreach (var (i, number) in numbers.ToArray().Index()) BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(at + 4 * i), number);
        }
    }
}
