using System.Runtime.InteropServices;

namespace KitWorks.Api.Tests.Printing;

/// <summary>Reads PWG raster with CUPS's own library.</summary>
static class CupsRaster
{
    const int HeaderLength = 1796;

    /// <summary>The pages as grey pictures, and the dots to the inch of each.</summary>
    public static IReadOnlyList<(int Dpi, int Width, int Height, byte[] Grey)> Pages(string file)
    {
        if (!NativeLibrary.TryLoad("libcups.so.2", out _))
        {
            if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail("libcups is missing.");
            Assert.Skip("libcups is not installed (Debian: libcups2).");
        }
        using var handle = File.OpenHandle(file);
        var raster = cupsRasterOpen((int)handle.DangerousGetHandle(), 0);
        var pages = new List<(int, int, int, byte[])>();
        for (var header = new byte[HeaderLength]; cupsRasterReadHeader2(raster, header) != 0;)
        {
            // Words in the machine's own order; positions as in the structure cups_page_header2_t.
            int Word(int at) => BitConverter.ToInt32(header, at);
            var (width, height) = (Word(372), Word(376));
            Assert.Equal((8, 8, width, 18), (Word(384), Word(388), Word(392), Word(400)));
            var grey = new byte[width * height];
            Assert.Equal((uint)grey.Length, cupsRasterReadPixels(raster, grey, (uint)grey.Length));
            pages.Add((Word(276), width, height, grey));
        }
        cupsRasterClose(raster);
        return pages;
    }

    public static string WritePgm(string path, int width, int height, byte[] grey)
    {
        File.WriteAllBytes(path, [.. System.Text.Encoding.ASCII.GetBytes($"P5 {width} {height} 255\n"), .. grey]);
        return path;
    }

#pragma warning disable SYSLIB1054, CA5392 // The library is the system's, and needs no marshalling of ours.
    [DllImport("libcups.so.2")]
    static extern nint cupsRasterOpen(int file, int mode);

    [DllImport("libcups.so.2")]
    static extern uint cupsRasterReadHeader2(nint raster, byte[] header);

    [DllImport("libcups.so.2")]
    static extern uint cupsRasterReadPixels(nint raster, byte[] pixels, uint length);

    [DllImport("libcups.so.2")]
    static extern void cupsRasterClose(nint raster);
#pragma warning restore SYSLIB1054, CA5392
}
