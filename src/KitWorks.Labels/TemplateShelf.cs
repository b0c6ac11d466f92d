using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels;

/// <summary>The templates, by kind. A file in the shop's own folder stands in for the shipped one of the same name.</summary>
sealed class TemplateShelf
{
    readonly ImmutableDictionary<string, ImmutableArray<Template>> byKind;

    TemplateShelf(ImmutableDictionary<string, ImmutableArray<Template>> byKind) => this.byKind = byKind;

    public IEnumerable<(string Kind, Template Template)> All => byKind.SelectMany(k => k.Value.Select(t => (k.Key, t)));

    public static Outcome<TemplateShelf> Open(IEnumerable<string> folders, FontShelf fonts)
    {
        var files = folders.Where(Directory.Exists).SelectMany(f => Directory.EnumerateFiles(f, "*.svg"))
            .GroupBy(f => Path.GetFileName(f), StringComparer.OrdinalIgnoreCase).Select(g => g.Last()).Order(StringComparer.Ordinal);
        var read = new List<(string Kind, Template Template)>();
        foreach (var file in files)
        {
            using var stream = File.OpenRead(file);
            if (!TemplateReader.Read(Path.GetFileName(file), stream, fonts).Succeeds(out var template, out var refusal)) return refusal;
            read.Add((KindOf(template.File), template));
        }
        return new TemplateShelf(read.GroupBy(r => r.Kind).ToImmutableDictionary(g => g.Key, g => g.Select(r => r.Template).OrderByDescending(t => t.WidthMm * t.HeightMm).ToImmutableArray()));
    }

    /// <summary>The largest template of a kind that a label of this size has room for.</summary>
    public Outcome<Template> For(string kind, double widthMm, double heightMm)
    {
        if (!byKind.TryGetValue(kind, out var templates))
            return new Refusal(RefusalKind.NotFound, "label.template-missing", $"There is no template {kind}-….svg.");
        // A tenth of a millimetre is under what any printer's feed holds.
        return templates.FirstOrDefault(t => t.WidthMm <= widthMm + 0.1 && t.HeightMm <= heightMm + 0.1) is { } template
            ? template
            : new Refusal(RefusalKind.Impossible, "label.stock-too-small",
                $"The smallest {kind} label is {templates[^1].WidthMm:0.#} × {templates[^1].HeightMm:0.#} mm; this stock has {widthMm:0.#} × {heightMm:0.#} mm.");
    }

    static string KindOf(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        var dash = name.LastIndexOf('-');
        return dash < 0 ? name : name[..dash];
    }
}
