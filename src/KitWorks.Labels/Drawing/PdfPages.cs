using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>A PDF document of pages of one size, whose canvas unit is the printer's dot.</summary>
sealed class PdfPages : IDisposable
{
    const double PointsPerMm = 72 / 25.4;

    readonly (float Width, float Height) points;
    readonly float pointsPerDot;
    readonly SKDocument document;
    SKCanvas? canvas;
    int open = -1;

    public PdfPages(Stream to, double widthMm, double heightMm, int dpi)
    {
        points = ((float)(widthMm * PointsPerMm), (float)(heightMm * PointsPerMm));
        pointsPerDot = 72f / dpi;
        // By default Skia rounds pages to whole points and recompresses pictures as JPEG.
        var about = SKDocumentPdfMetadata.Default;
        about.RasterDpi = 2540;
        about.EncodingQuality = 101;
        document = SKDocument.CreatePdf(to, about);
    }

    public SKCanvas Page(int number)
    {
        if (number != open)
        {
            if (canvas is not null) document.EndPage();
            canvas = document.BeginPage(points.Width, points.Height);
            canvas.Scale(pointsPerDot);
            open = number;
        }
        return canvas!;
    }

    public void Close()
    {
        if (canvas is not null) document.EndPage();
        document.Close();
    }

    public void Dispose() => document.Dispose();
}
