using KitWorks.Labels.Templates;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>Draws fitted text, line under line.</summary>
static class TextDrawing
{
    /// <summary>From baseline to baseline, in sizes.</summary>
    public const float LinePitch = 1.25f;

    public static void Draw(SKCanvas canvas, Ink ink, TextPart part, FittedText text)
    {
        var y = part.At.Y;
        foreach (var line in text.Lines)
        {
            var width = line.Sum(s => s.Text.Width * s.Style.Size) * text.Scale;
            var x = part.At.X - line[0].Style.Anchor switch { SKTextAlign.Left => 0, SKTextAlign.Center => width / 2, SKTextAlign.Right => width };
            foreach (var (shaped, style) in line)
            {
                var size = style.Size * text.Scale;
                using var paint = new SKPaint { Color = style.Colour, IsAntialias = true };
                foreach (var run in shaped.Runs)
                {
                    using var builder = new SKTextBlobBuilder();
                    builder.AddPositionedRun(run.Glyphs, ink.Font(run.Face, size), Array.ConvertAll(run.Points, p => new SKPoint(p.X * size, p.Y * size)));
                    using var blob = builder.Build();
                    if (blob is not null) canvas.DrawText(blob, x, y, paint);
                    x += run.Width * size;
                }
            }
            y += line[0].Style.Size * text.Scale * LinePitch;
        }
    }
}
