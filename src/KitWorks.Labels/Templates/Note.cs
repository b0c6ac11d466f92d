using System.Xml.Linq;
using KitWorks.Geometry;

namespace KitWorks.Labels.Templates;

/// <summary>
/// What a template's author says about an element in its description (<c>desc</c>), which drawing programs show and keep:
/// a first word, what follows it, and settings after semicolons: <c>each item in contents; step 6; to 90</c>.
/// </summary>
sealed record Note(Place Place, string Word, string Rest, IReadOnlyDictionary<string, string> Settings)
{
    static readonly string[] Drawn = ["code128", "gs1-128", "qr", "tag", "picture", "when"];
    static readonly string[] Words = ["width", "each", "after"];

    /// <summary>The note on an element, or null where its description is none of ours.</summary>
    public static Note? On(XElement element, string file)
    {
        if (element.Element(SvgNames.Of("desc")) is not { } description) return null;
        var text = description.Value.Trim();
        var (first, all) = Split(text);
        if (Drawn.Contains(first)) return new(Place.Of(file, description, text), first, all, new Dictionary<string, string>());
        var parts = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length == 0) return null;
        var (word, rest) = Split(parts[0]);
        if (!Words.Contains(word)) return null;
        return new(Place.Of(file, description, text), word, rest, parts.Skip(1).Select(Split).DistinctBy(p => p.Word).ToDictionary(p => p.Word, p => p.Value));
    }

    /// <summary>A setting that is a number, or the given one where it is not set.</summary>
    public Outcome<float> Number(string name, float otherwise) => !Settings.TryGetValue(name, out var text)
        ? otherwise
        : TextStyle.TryNumber(text, out var number) && number > 0 ? number : Place.Refuse($"“{name}” needs a number above zero.");

    static (string Word, string Value) Split(string part)
    {
        var space = part.IndexOf(' ', StringComparison.Ordinal);
        return space < 0 ? (part, "") : (part[..space], part[(space + 1)..].Trim());
    }
}
