using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels;

/// <summary>A template that labels or papers are drawn from.</summary>
/// <param name="Kind">What it is for: <c>bundle</c>, <c>hubs</c>, <c>picklist</c>; its file's name before the last dash.</param>
/// <param name="Name">Which of its kind it is: its file's name after the last dash.</param>
/// <param name="WidthMm">Its width.</param>
/// <param name="HeightMm">Its height.</param>
/// <param name="Own">Whether it is the shop's own.</param>
public sealed record LabelTemplate(string Kind, string Name, double WidthMm, double HeightMm, bool Own);

/// <summary>The templates, by kind. A file in the shop's own folder stands in for the shipped one of the same name.</summary>
sealed class TemplateShelf
{
    // A tenth of a millimetre is under what any printer's feed holds.
    const double Slack = 0.1;

    readonly ImmutableArray<(LabelTemplate About, Template Drawing)> templates;
    readonly ILookup<string, (LabelTemplate About, Template Drawing)> byKind;

    TemplateShelf(IEnumerable<(LabelTemplate About, Template Drawing)> read)
    {
        templates = [.. read];
        byKind = templates.OrderByDescending(t => t.Drawing.WidthMm * t.Drawing.HeightMm).ToLookup(t => t.About.Kind);
    }

    public IReadOnlyList<LabelTemplate> All => [.. templates.Select(t => t.About)];

    public IEnumerable<(string Kind, Template Drawing)> Drawings => templates.Select(t => (t.About.Kind, t.Drawing));

    public static Outcome<TemplateShelf> Open(PressFolders folders, FontShelf fonts)
    {
        if (folders.OwnTemplates is { } missing && !Directory.Exists(missing))
            return new Refusal(RefusalKind.Impossible, "label.templates-folder", $"There is no folder '{missing}', which is set as that of the shop's own label templates.");
        var kinds = Files(folders.Templates, own: false).Select(f => KindAndName(f.Path).Kind).Distinct().Order(StringComparer.Ordinal).ToList();
        if (Files(folders.OwnTemplates, own: true).Select(f => f.Path).Order(StringComparer.Ordinal).FirstOrDefault(f => !kinds.Contains(KindAndName(f).Kind)) is { } stray) return Stray(stray, kinds);
        var files = Files(folders.Templates, own: false).Concat(Files(folders.OwnTemplates, own: true))
            .GroupBy(f => Path.GetFileName(f.Path), StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Last());
        var read = new List<(LabelTemplate, Template)>();
        foreach (var (file, own) in files)
        {
            using var stream = File.OpenRead(file);
            if (!TemplateReader.Read(Path.GetFileName(file), stream, fonts).Succeeds(out var template, out var refusal)) return refusal;
            var (kind, name) = KindAndName(file);
            read.Add((new(kind, name, template.WidthMm, template.HeightMm, own), template));
        }
        return new TemplateShelf(read);
    }

    static (string Kind, string Name) KindAndName(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        var dash = name.LastIndexOf('-');
        return (dash < 0 ? name : name[..dash], name[(dash + 1)..]);
    }

    /// <summary>A template of no kind would lie there unused and nobody would know.</summary>
    static Refusal Stray(string file, List<string> kinds)
    {
        var kind = KindAndName(file).Kind;
        var near = kinds.Where(k => Spelling.Distance(k, kind) <= 2).OrderBy(k => Spelling.Distance(k, kind)).Select(k => $"'{k}'").ToList();
        return new(RefusalKind.Impossible, "label.template-name",
            $"{file}: nothing is printed from templates of the kind '{kind}'; a file's name is a kind, a dash and a name. {(near.Count > 0 ? $"Is it {string.Join(" or ", near)}?" : $"The kinds are {string.Join(", ", kinds)}.")}");
    }

    static IEnumerable<(string Path, bool Own)> Files(string? folder, bool own) => Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "*.svg").Select(f => (f, own)) : [];

    /// <summary>The template of this name, and the largest that a label of the stock has room for where the kind has none of this name or none is named.</summary>
    public Outcome<Template> For(string kind, LabelStock stock, string? name) => For(kind, stock.LabelWidthMm, stock.LabelHeightMm, name);

    /// <summary>As above, by the label's size.</summary>
    public Outcome<Template> For(string kind, double widthMm, double heightMm, string? name)
    {
        var all = byKind[kind];
        var named = all.Where(t => t.About.Name == name).ToList();
        foreach (var (_, drawing) in named.Count > 0 ? named : all)
            if (drawing.WidthMm <= widthMm + Slack && drawing.HeightMm <= heightMm + Slack) return drawing;
        if (!all.Any()) return new Refusal(RefusalKind.NotFound, "label.template-missing", $"There is no template {kind}-….svg.");
        var smallest = (named.Count > 0 ? named : all).Last().Drawing;
        return new Refusal(RefusalKind.Impossible, "label.stock-too-small",
            $"{(named.Count > 0 ? $"The template {kind}-{name} is" : $"The smallest {kind} label is")} {smallest.WidthMm:0.#} × {smallest.HeightMm:0.#} mm; this stock has {widthMm:0.#} × {heightMm:0.#} mm.");
    }

    /// <summary>The refusal where none of these kinds has a template of this name, with the names that there are.</summary>
    public Refusal? Lacking(string? name, IReadOnlyList<string> kinds) =>
        name is null || kinds.SelectMany(k => byKind[k]).Any(t => t.About.Name == name) ? null
        : Refusal.OfField("label.template-unknown", "template",
            $"There is no template '{name}' for these labels; it is one of {string.Join(", ", kinds.SelectMany(k => byKind[k]).Select(t => t.About.Name).Distinct().Order(StringComparer.Ordinal))}.");
}
