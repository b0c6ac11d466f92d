using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using SkiaSharp;

namespace KitWorks.Labels.Templates;

/// <summary>
/// Reads a template once: splits it into a fixed picture and the parts that differ from label to label. Nothing outside
/// the file is ever fetched.
/// </summary>
sealed class TemplateReader
{
    static readonly XmlReaderSettings Closed = new() { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null, MaxCharactersInDocument = 10_000_000 };

    readonly string file;
    readonly bool isPicture;
    readonly FontShelf fonts;
    readonly XElement svg;
    readonly Stylesheet sheet;
    readonly FixedPicture fixedPicture;
    readonly HashSet<string> lists = [];
    Refusal? wrong;

    TemplateReader(string file, bool isPicture, FontShelf fonts, XElement svg)
    {
        (this.file, this.isPicture, this.fonts, this.svg) = (file, isPicture, fonts, svg);
        sheet = Stylesheet.Of(svg);
        fixedPicture = new(svg, IsDynamic);
    }

    /// <summary>Reads a template.</summary>
    public static Outcome<Template> Read(string file, Stream content, FontShelf fonts) => Read(file, content, fonts, isPicture: false);

    /// <summary>Reads a picture that comes with a label: what looks like a placeholder or a note in it is only text.</summary>
    public static Outcome<Template> ReadPicture(Stream content, FontShelf fonts) => Read("the picture", content, fonts, isPicture: true);

    static Outcome<Template> Read(string file, Stream content, FontShelf fonts, bool isPicture)
    {
        try
        {
            using var reader = XmlReader.Create(content, Closed);
            var root = XDocument.Load(reader, LoadOptions.SetLineInfo | LoadOptions.PreserveWhitespace).Root!;
            return root.Name == SvgNames.Of("svg") && TemplateRules.Broken(file, root, isPicture) is var broken
                ? broken ?? new TemplateReader(file, isPicture, fonts, root).Read()
                : new Place(file, 1, "").Refuse("This is not an SVG drawing.");
        }
        catch (XmlException e)
        {
            return new Place(file, e.LineNumber, isPicture ? "" : PlaceholderOn(content, e.LineNumber)).Refuse(e.Message);
        }
    }

    /// <summary>The first placeholder on a line of a file that is no XML, so that one finds it where a drawing program shows no lines.</summary>
    static string PlaceholderOn(Stream content, int line)
    {
        content.Position = 0;
        using var text = new StreamReader(content, leaveOpen: true);
        var words = "";
        for (var i = 0; i < line; i++) words = text.ReadLine() ?? "";
        var from = words.IndexOf("{{", StringComparison.Ordinal);
        var to = from < 0 ? -1 : words.IndexOf("}}", from, StringComparison.Ordinal);
        return to < 0 ? "" : words[from..(to + 2)];
    }

    Outcome<Template> Read()
    {
        var box = ((string?)svg.Attribute("viewBox") ?? "").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)
            .Select(n => float.TryParse(n, CultureInfo.InvariantCulture, out var x) ? x : float.NaN).ToArray();
        if (!TryMm((string?)svg.Attribute("width"), out var width) || !TryMm((string?)svg.Attribute("height"), out var height)
            || box is not [0, 0, > 0 and var w, > 0 and var h] || Math.Abs(w / width - h / height) > 0.01 * w / width)
            return Place.Of(file, svg, "").Refuse("The drawing needs a width and a height in mm or in, and a viewBox that starts at 0 0 with the same proportions.");
        var style = new TextStyle(fonts.DefaultFamily, false, 16, SKColors.Black, SKTextAlign.Left);
        var layer = ReadLayer(svg, style, SKMatrix.Identity);
        return wrong is null ? new Template(file, width, height, w / width, layer) : wrong;
    }

    Layer ReadLayer(XElement scope, TextStyle style, SKMatrix transform)
    {
        var parts = ImmutableArray.CreateBuilder<Part>();
        ReadInto(parts, scope, style, transform);
        return new(fixedPicture.Of(scope), parts.ToImmutable());
    }

    void ReadInto(ImmutableArray<Part>.Builder parts, XElement scope, TextStyle style, SKMatrix transform)
    {
        foreach (var child in scope.Elements())
        {
            if (wrong is not null) return;
            if (child.Name == SvgNames.Of("defs") || child.Name == SvgNames.Of("style") || !IsSvg(child)) continue;
            var inner = style.Of(child, sheet, fonts.HasFamily, file);
            var at = transform.PreConcat(Keep(Transform.Of(child, file), SKMatrix.Identity));
            if (child.Name == SvgNames.Of("text")) parts.AddRange(new TextReader(file, isPicture, sheet, fonts).Read(child, inner, at, ref wrong));
            else if (NoteOn(child) is { } note) AddNoted(parts, child, note, inner, at);
            else if (child.Name == SvgNames.Of("g") || child.Name == SvgNames.Of("a") || child.Name == SvgNames.Of("svg")) ReadInto(parts, child, inner, at);
        }
    }

    void AddNoted(ImmutableArray<Part>.Builder parts, XElement element, Note note, TextStyle style, SKMatrix at)
    {
        if (note.Word == "each")
        {
            var words = note.Rest.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words is not [var item, "in", var list]) { wrong = note.Place.Refuse("Write “each item in list; step 6; room 4”."); return; }
            if (note.Settings.ContainsKey("step") == note.Settings.ContainsKey("across") || !note.Settings.ContainsKey("room"))
            {
                wrong = note.Place.Refuse("“each” needs a “step” down or “across”, and a “room”.");
                return;
            }
            lists.Add(item);
            var source = Keep(Placeholder.Parse(note.Place, "{{ " + list + " }}"), null!);
            parts.Add(new EachPart(note.Place, item, source, new(Keep(note.Number("across", 0), 0), Keep(note.Number("step", 0), 0)),
                (int)Keep(note.Number("room", 1), 1), note.Settings.ContainsKey("flow"), ReadLayer(element, style, at)));
            return;
        }
        if (note.Word == "after")
        {
            var items = note.Rest.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
            if (items.Length == 0 || items.Any(i => !lists.Contains(i))) wrong = note.Place.Refuse("“after” names the items of lists that stand before it in the file: “after strut, hub”.");
            else parts.Add(new AfterPart(note.Place, [.. items], ReadLayer(element, style, at)));
            return;
        }
        var content = Keep(Placeholder.Parse(note.Place, note.Rest), null!);
        if (note.Word == "when") { parts.Add(new WhenPart(note.Place, content, ReadLayer(element, style, at))); return; }
        if (element.Name != SvgNames.Of("rect") || at.SkewX != 0 || at.SkewY != 0) { wrong = note.Place.Refuse("This stands on a rectangle that is not turned."); return; }
        float Of(string name) => TextStyle.TryNumber((string?)element.Attribute(name) ?? "0", out var n) ? n : 0;
        var box = at.MapRect(SKRect.Create(Of("x"), Of("y"), Of("width"), Of("height")));
        parts.Add(note.Word switch
        {
            "tag" => new TagPart(note.Place, box, content),
            "picture" => new PicturePart(note.Place, box, content),
            _ => new CodePart(note.Place, box, note.Word, content),
        });
    }

    bool IsDynamic(XElement element) => element.Name == SvgNames.Of("text") || element.Name != SvgNames.Of("svg") && NoteOn(element) is not null;

    Note? NoteOn(XElement element) => isPicture ? null : Note.On(element, file);

    static bool IsSvg(XElement element) => element.Name.Namespace == SvgNames.Space;

    T Keep<T>(Outcome<T> outcome, T otherwise)
    {
        if (outcome.Succeeds(out var value, out var refusal)) return value;
        wrong ??= refusal;
        return otherwise;
    }

    static bool TryMm(string? text, out double mm)
    {
        mm = 0;
        var unit = text?.EndsWith("mm", StringComparison.Ordinal) == true ? 1 : text?.EndsWith("in", StringComparison.Ordinal) == true ? 25.4 : 0;
        if (unit == 0 || !double.TryParse(text![..^2], NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || number is not (> 0 and < 2000)) return false;
        mm = number * unit;
        return true;
    }
}
