using KitWorks.Labels;
using SkiaSharp;
using ZXing;
using ZXing.OneD;
using ZXing.QrCode.Internal;

namespace KitWorks.Benchmarks.Labels;

/// <summary>The same label written by hand: fixed places, whole font files, no fitting, no checks.</summary>
sealed class BareSkia
{
    const float Dot = 72f / 300, Mm = 300 / 25.4f;

    static readonly Dictionary<EncodeHintType, object> Hints = new() { [EncodeHintType.CHARACTER_SET] = "UTF-8", [EncodeHintType.DISABLE_ECI] = true };

    readonly Dictionary<string, SKPath> ready = [];
    readonly SKTypeface regular = Load("OpenSans-Regular.ttf"), bold = Load("OpenSans-Bold.ttf"), mono = Load("DejaVuSansMono-Bold.ttf");
    static readonly SKPaint Black = new() { Color = SKColors.Black, IsAntialias = true }, White = new() { Color = SKColors.White, IsAntialias = true };
    static readonly SKPaint Hair = new() { Color = SKColors.Black, Style = SKPaintStyle.Stroke, StrokeWidth = 0.3f };
    readonly Dictionary<(SKTypeface, float), SKFont> fonts = [];

    static SKTypeface Load(string name) => SKTypeface.FromFile(Path.Combine(AppContext.BaseDirectory, "labels-templates", "fonts", name));

    public void Write(Stream to, IReadOnlyList<BundleLabel> labels, bool encode)
    {
        var about = SKDocumentPdfMetadata.Default;
        (about.RasterDpi, about.EncodingQuality) = (2540, 101);
        using var document = SKDocument.CreatePdf(to, about);
        foreach (var label in labels)
        {
            var canvas = document.BeginPage(100 / 25.4f * 72, 150 / 25.4f * 72);
            canvas.Scale(Dot);
            Codes(canvas, label, encode);
            canvas.Scale(Mm);
            Draw(canvas, label);
            document.EndPage();
        }
        document.Close();
    }

    void Draw(SKCanvas canvas, BundleLabel l)
    {
        canvas.DrawRect(5, 5, 34, 38, Black);
        foreach (var (x, y, to) in new[] { (43f, 33f, 95f), (5, 88.5f, 95), (5, 107, 95) }) canvas.DrawLine(x, y, to, y, Hair);
        Middle("TIER", 22, 11, 4.4f, bold, White);
        Middle(l.Tier.ToString(), 22, 39, 33, bold, White);
        Left(l.TierName, 43, 12, 6.4f, bold);
        Left(l.Shelter, 43, 24.5f, 3.8f, regular);
        Left("Bundle ", 43, 40.5f, 5.4f, regular);
        Left(l.Bundle.ToString(), 63, 40.5f, 5.4f, bold);
        Left($" of {l.Bundles}", 68, 40.5f, 5.4f, regular);
        Left(l.PieceCode, 5, 66, 21, bold);
        Right($"×{l.Pieces}", 95, 66, 21, bold);
        using var tag = new SKPaint { Color = SKColor.Parse(l.Tag.Hex) };
        canvas.DrawRect(5, 71, 90, 9, White);
        for (var i = 0; i < l.Tag.Bands; i++)
        {
            canvas.DrawRect(40 + 20 * i, 71, 18, 9, tag);
            canvas.DrawRect(40 + 20 * i, 71, 18, 9, Hair);
        }
        canvas.DrawRect(5, 71, 90, 9, Hair);
        Left($"{l.What} · {l.Tag.Words}", 5, 85.5f, 4.2f, regular);
        Right(l.CutLength, 95, 85.5f, 4.2f, bold);
        var item = l.Contents[0];
        Left(item.Code, 5, 93.6f, 3.8f, bold);
        Left(item.Description, 31, 93.6f, 3.8f, regular);
        Right(item.Count.ToString(), 95, 93.6f, 3.8f, bold);
        Left("Order ", 5, 113.4f, 4.6f, regular);
        Left(l.Order, 20, 113.4f, 4.6f, bold);
        Left($"Kit {l.Kit} of {l.Kits}", 5, 119, 3.8f, regular);
        Right(l.Mass, 64, 119, 3.8f, regular);
        Middle(l.Code, 34.5f, 144, 3.9f, mono, Black);
        Right(l.Shop, 95, 144, 2.6f, regular);

        void Left(string text, float x, float y, float size, SKTypeface face) => canvas.DrawText(text, x, y, SKTextAlign.Left, Font(face, size), Black);
        void Right(string text, float x, float y, float size, SKTypeface face) => canvas.DrawText(text, x, y, SKTextAlign.Right, Font(face, size), Black);
        void Middle(string text, float x, float y, float size, SKTypeface face, SKPaint paint) => canvas.DrawText(text, x, y, SKTextAlign.Center, Font(face, size), paint);
    }

    void Codes(SKCanvas canvas, BundleLabel label, bool encode)
    {
        if (!encode)
        {
            if (!ready.TryGetValue(label.Code, out var path)) ready[label.Code] = path = Encode(label);
            canvas.DrawPath(path, Black);
            return;
        }
        using var now = Encode(label);
        canvas.DrawPath(now, Black);
    }

    static SKPath Encode(BundleLabel label)
    {
        using var path = new SKPathBuilder();
        var bars = new Code128Writer().encode(label.Code);
        for (var x = 0; x < bars.Length; x++)
        {
            if (!bars[x]) continue;
            var start = x;
            while (x + 1 < bars.Length && bars[x + 1]) x++;
            path.AddRect(new(60 + 3 * start + 0.02f, 1441, 60 + 3 * (x + 1) - 0.02f, 1642));
        }
        var qr = Encoder.encode(label.PageUrl, ErrorCorrectionLevel.M, Hints).Matrix;
        for (var y = 0; y < qr.Height; y++)
            for (var x = 0; x < qr.Width; x++)
            {
                if (qr[x, y] != 1) continue;
                var start = x;
                while (x + 1 < qr.Width && qr[x + 1, y] == 1) x++;
                path.AddRect(new(800 + 9 * start + 0.02f, 1300 + 9 * y + 0.02f, 800 + 9 * (x + 1) - 0.02f, 1300 + 9 * (y + 1) - 0.02f));
            }
        return path.Detach();
    }

    SKFont Font(SKTypeface face, float size) => fonts.TryGetValue((face, size), out var font)
        ? font
        : fonts[(face, size)] = new SKFont(face, size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };
}
