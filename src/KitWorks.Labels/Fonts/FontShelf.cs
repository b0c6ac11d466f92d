using System.Collections.Concurrent;
using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Labels.Fonts;

/// <summary>
/// The fonts that labels are set in: those of the templates first, then a configured folder's, then the system's, which are
/// read only when a character is in none of the others.
/// </summary>
sealed class FontShelf
{
    readonly ImmutableArray<Face> own;
    readonly Lazy<ImmutableArray<string>> system;
    readonly ConcurrentDictionary<string, Face?> loaded = new();
    readonly ConcurrentDictionary<(int, bool), Face?> fallbacks = new();

    FontShelf(ImmutableArray<Face> own, IEnumerable<string> systemFolders)
    {
        this.own = own;
        system = new(() => [.. systemFolders.SelectMany(FontFiles)]);
    }

    /// <summary>The family taken where a template names none: Open Sans if it is there.</summary>
    public string DefaultFamily => HasFamily("Open Sans") ? "Open Sans" : own[0].Family;

    /// <summary>Loads the fonts of some folders, in order of preference.</summary>
    public static Outcome<FontShelf> Open(IReadOnlyList<string> folders, IReadOnlyList<string> systemFolders)
    {
        var faces = Load(folders);
        if (faces.IsEmpty) faces = Load(systemFolders);
        return faces.IsEmpty
            ? new Refusal(RefusalKind.Conflict, "fonts.none",
                $"No font that can be read is in {string.Join(", ", folders.Concat(systemFolders))}. Put a .ttf or .otf file into one of these folders, or install a font package such as fonts-dejavu-core.")
            : new FontShelf(faces, systemFolders);
    }

    /// <summary>Where operating systems keep fonts.</summary>
    public static ImmutableArray<string> SystemFolders { get; } =
    [
        "/usr/share/fonts", "/usr/local/share/fonts", "/Library/Fonts", "/System/Library/Fonts",
        .. new[] { Environment.GetFolderPath(Environment.SpecialFolder.Fonts) }.Where(f => f.Length > 0),
    ];

    /// <summary>Whether a family is on the shelf without looking into the system's folders.</summary>
    public bool HasFamily(string family) => own.Any(f => f.Family.Equals(family, StringComparison.OrdinalIgnoreCase));

    /// <summary>The face for a character: of the family if it has the character, else the first face that has it; null where none has.</summary>
    public Face? FaceFor(int codePoint, string family, bool bold) =>
        own.FirstOrDefault(f => f.Family.Equals(family, StringComparison.OrdinalIgnoreCase) && f.Bold == bold && f.Has(codePoint))
        ?? fallbacks.GetOrAdd((codePoint, bold), FindFallback);

    Face? FindFallback((int CodePoint, bool Bold) wanted) =>
        own.Where(f => f.Has(wanted.CodePoint)).MinBy(f => f.Bold == wanted.Bold ? 0 : 1)
        ?? system.Value.Select(path => loaded.GetOrAdd(path, Face.Load)).FirstOrDefault(f => f is not null && f.Has(wanted.CodePoint));

    static ImmutableArray<Face> Load(IReadOnlyList<string> folders) => [.. folders.SelectMany(FontFiles).Select(Face.Load).OfType<Face>()];

    static IEnumerable<string> FontFiles(string folder) => !Directory.Exists(folder)
        ? []
        : Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true })
            .Where(f => System.IO.Path.GetExtension(f).ToUpperInvariant() is ".TTF" or ".OTF" or ".TTC")
            .Order(StringComparer.Ordinal);
}
