using System.Globalization;
using Fluid;
using KitWorks.Geometry;
using KitWorks.Labels.Codes;
using KitWorks.Labels.Templates;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>What painters share: what was fitted, read and encoded before.</summary>
sealed record Shelves(TextFitting Fitting, PictureShelf Pictures, SymbolShelf Symbols);

/// <summary>
/// Draws filled templates on a canvas whose unit is the printer's dot. Without a canvas it goes through the same motions,
/// finds every fault and notes the glyphs used.
/// </summary>
sealed class Painter(SKCanvas? canvas, Ink ink, Shelves shelves, double dotsPerMm, float barInset)
{
    // For each list drawn, by what its items are called: the room below it that is left free, in the drawing's units.
    Dictionary<string, float>? free;

    /// <summary>How many pages of the same template came before, for lists that flow over pages.</summary>
    public int FlowedPages { get; init; }

    /// <summary>Draws a template with its top left corner on a dot.</summary>
    public Refusal? Paint(Template template, TemplateContext values, (int X, int Y) corner)
    {
        var toDots = SKMatrix.CreateScale((float)(dotsPerMm / template.UnitsPerMm), (float)(dotsPerMm / template.UnitsPerMm)).PostConcat(SKMatrix.CreateTranslation(corner.X, corner.Y));
        return Paint(template.Layer, values, toDots);
    }

    Refusal? Paint(Layer layer, TemplateContext values, SKMatrix toDots)
    {
        if (layer.Picture is not null && canvas is not null) canvas.DrawPicture(layer.Picture, toDots);
        foreach (var part in layer.Parts)
            if (Paint(part, values, toDots) is { } refusal) return refusal;
        return null;
    }

    Refusal? Paint(Part part, TemplateContext values, SKMatrix toDots) => part switch
    {
        TextPart text => PaintText(text, values, toDots),
        CodePart code => PaintCode(code, values, toDots),
        TagPart tag => PaintTag(tag, values, toDots),
        PicturePart picture => PaintPicture(picture, values, toDots),
        WhenPart group => PaintWhen(group, values, toDots),
        EachPart each => PaintEach(each, values, toDots),
        AfterPart after => PaintAfter(after, values, toDots),
        _ => throw new InvalidOperationException(part.GetType().Name),
    };

    Refusal? PaintText(TextPart part, TemplateContext values, SKMatrix toDots)
    {
        var words = new string[part.Pieces.Length];
        for (var i = 0; i < words.Length; i++)
        {
            if (part.Pieces[i].Placeholder is not { } placeholder) words[i] = part.Pieces[i].Words;
            else if (!placeholder.Fill(values).Succeeds(out words[i]!, out var refusal)) return refusal;
        }
        if (words.All(string.IsNullOrWhiteSpace)) return null;
        var toPaper = toDots.PreConcat(part.Transform);
        if (!shelves.Fitting.Fit(part, words, Math.Sqrt(toPaper.ScaleX * toPaper.ScaleX + toPaper.SkewY * toPaper.SkewY) / dotsPerMm).Succeeds(out var fitted, out var misfit)) return misfit;
        if (canvas is null)
        {
            foreach (var stretch in fitted.Lines.SelectMany(l => l))
                foreach (var run in stretch.Text.Runs) ink.Note(run);
            return null;
        }
        canvas.Save();
        canvas.Concat(toPaper);
        TextDrawing.Draw(canvas, ink, part, fitted);
        canvas.Restore();
        return null;
    }

    Refusal? PaintCode(CodePart part, TemplateContext values, SKMatrix toDots)
    {
        if (!part.Content.Fill(values).Succeeds(out var content, out var refusal)) return refusal;
        if (!shelves.Symbols.Encode(part.Symbology, content.Trim()).Succeeds(out var symbol, out refusal)) return refusal;
        if (!DotGrid.Place(symbol, toDots.MapRect(part.Box), dotsPerMm).Succeeds(out var at, out refusal)) return part.Place.Refuse(refusal.Detail) with { Code = refusal.Code };
        if (canvas is null) return null;
        using var path = DotGrid.Outline(symbol, at, barInset);
        using var paint = new SKPaint { Color = SKColors.Black, IsAntialias = false };
        canvas.DrawPath(path, paint);
        return null;
    }

    Refusal? PaintTag(TagPart part, TemplateContext values, SKMatrix toDots)
    {
        if (!part.Content.Fill(values).Succeeds(out var content, out var refusal)) return refusal;
        var words = content.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words is not [var hex, var count] || !SKColor.TryParse(hex, out var colour) || !int.TryParse(count, CultureInfo.InvariantCulture, out var bands))
            return words is [] or ["0"] ? null : part.Place.Refuse($"A tag is a colour and a number of bands; this is “{content}”.");
        if (canvas is not null) TagDrawing.Draw(canvas, toDots.MapRect(part.Box), colour, bands);
        return null;
    }

    Refusal? PaintPicture(PicturePart part, TemplateContext values, SKMatrix toDots)
    {
        if (!part.Content.Fill(values).Succeeds(out var source, out var refusal)) return refusal;
        if (string.IsNullOrWhiteSpace(source)) return null;
        if (!shelves.Pictures.Read(source).Succeeds(out var picture, out refusal)) return part.Place.Refuse(refusal.Detail);
        var (box, width, height) = (part.Box, (float)(picture.WidthMm * picture.UnitsPerMm), (float)(picture.HeightMm * picture.UnitsPerMm));
        var scale = Math.Min(box.Width / width, box.Height / height);
        var into = SKMatrix.CreateScale(scale, scale).PostConcat(SKMatrix.CreateTranslation(box.MidX - scale * width / 2, box.MidY - scale * height / 2));
        return Paint(picture.Layer, values, toDots.PreConcat(into));
    }

    Refusal? PaintWhen(WhenPart part, TemplateContext values, SKMatrix toDots)
    {
        if (!part.Condition.Fill(values).Succeeds(out var answer, out var refusal)) return refusal;
        return answer.Trim() is "" or "0" or "false" ? null : Paint(part.Layer, values, toDots);
    }

    Refusal? PaintEach(EachPart part, TemplateContext values, SKMatrix toDots)
    {
        if (!part.List.Items(values).Succeeds(out var items, out var refusal)) return refusal;
        if (items.Count > part.Room && !part.Flows)
            return part.Place.Refuse($"There is room for {part.Room} and there are {items.Count}.") with { Code = "label.too-many-lines" };
        var first = part.Flows ? FlowedPages * part.Room : 0;
        (free ??= [])[part.Item] = part.Step.Y * (part.Room - Math.Clamp(items.Count - first, 0, part.Room));
        for (var i = first; i < Math.Min(items.Count, first + part.Room); i++)
        {
            values.SetValue(part.Item, items[i]);
            var at = SKMatrix.CreateTranslation((i - first) * part.Step.X, (i - first) * part.Step.Y);
            if (Paint(part.Layer, values, toDots.PreConcat(at)) is { } wrong) return wrong;
        }
        return null;
    }

    Refusal? PaintAfter(AfterPart part, TemplateContext values, SKMatrix toDots)
    {
        var up = part.Items.Min(i => free?.GetValueOrDefault(i) ?? 0);
        return Paint(part.Layer, values, toDots.PreConcat(SKMatrix.CreateTranslation(0, -up)));
    }
}
