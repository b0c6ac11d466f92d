using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Tests.Cutting;

/// <summary>
/// Bin-packing instances of E. Falkenauer, "A Hybrid Grouping Genetic Algorithm for Bin Packing", Journal of Heuristics 2
/// (1996) 5–30, read from <c>../shared/data/bin-packing</c> beside the repository where that is present.
/// </summary>
static class OpenData
{
    /// <summary>Two headers are known not to be best.</summary>
    static readonly Dictionary<string, int> Better = new() { ["u250_07"] = 103, ["u250_12"] = 105 };

    /// <summary>The folder, or null where it is absent.</summary>
    public static string? Folder { get; } = Find();

    /// <summary>The instances of a file as jobs without kerf, with the fewest bins known.</summary>
    public static IEnumerable<(string Name, CutJob Job, int Bins)> Read(string file)
    {
        var words = new Queue<string>(File.ReadAllText(Path.Combine(Folder!, file)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        var instances = int.Parse(words.Dequeue());
        for (var n = 0; n < instances; n++)
        {
            var name = words.Dequeue();
            var capacity = LengthOf(words.Dequeue());
            var items = int.Parse(words.Dequeue());
            var bins = int.Parse(words.Dequeue());
            var sizes = Enumerable.Range(0, items).Select(_ => LengthOf(words.Dequeue())).ToList();
            yield return (name, JobOf(capacity, sizes), Better.GetValueOrDefault(name, bins));
        }
    }

    /// <summary>A bin-packing instance as a cut job.</summary>
    public static CutJob JobOf(Length capacity, IEnumerable<Length> sizes) => new()
    {
        Pieces = [.. sizes.GroupBy(s => s).Select(g => new CutPiece(g.Key.ToString(), g.Key, g.Count()))],
        Stock = [new("BIN", capacity)],
    };

    static Length LengthOf(string word) => Length.FromMillimetres(double.Parse(word, CultureInfo.InvariantCulture));

    static string? Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "KitWorks.sln")) || File.Exists(Path.Combine(folder.FullName, "Directory.Packages.props")))
                return Path.Combine(folder.FullName, "..", "shared", "data", "bin-packing") is var data && Directory.Exists(data) ? data : null;
        return null;
    }
}
