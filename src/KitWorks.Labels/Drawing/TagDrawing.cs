using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>Draws a strut's end with its bands: colour for the eye, the number of bands for black and white.</summary>
static class TagDrawing
{
    public static void Draw(SKCanvas canvas, SKRect box, SKColor colour, int bands)
    {
        var line = Math.Max(1, box.Height / 24);
        using var fill = new SKPaint { Color = SKColors.White, IsAntialias = true };
        using var edge = new SKPaint { Color = SKColors.Black, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = line };
        using var ink = new SKPaint { Color = colour, IsAntialias = true };
        var pipe = SKRect.Inflate(box, -line / 2, -line / 2);
        canvas.DrawRect(pipe, fill);
        var width = Math.Min(box.Height * 2, box.Width / (2 * bands + 1));
        var left = box.MidX - width * (2 * bands - 1) / 2;
        for (var i = 0; i < bands; i++)
        {
            var band = new SKRect(left + 2 * i * width, pipe.Top, left + (2 * i + 1) * width, pipe.Bottom);
            canvas.DrawRect(band, ink);
            canvas.DrawRect(band, edge);
        }
        canvas.DrawRect(pipe, edge);
    }
}
