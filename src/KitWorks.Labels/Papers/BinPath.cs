using System.Text.RegularExpressions;

namespace KitWorks.Labels;

/// <summary>The order in which one walks past bins.</summary>
public static partial class BinPath
{
    [GeneratedRegex("[0-9]+")]
    private static partial Regex Numbers();

    /// <summary>What bins are sorted by, ordinally: numbers in their names by value, A-2 before A-10.</summary>
    public static string Key(string bin) => Numbers().Replace(bin, n => n.Value.PadLeft(9, '0'));
}
