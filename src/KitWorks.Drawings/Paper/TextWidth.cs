namespace KitWorks.Drawings.Paper;

/// <summary>
/// How wide text may come out. No font is measured, for the reader's font is not known: the widths, in ems, are those of the
/// widest common sans-serif faces, so that what is laid out by them fits in any.
/// </summary>
static class TextWidth
{
    public static double Of(string text, double size) => text.Sum(Em) * size;

    /// <summary>The text in lines that are no wider than told, unless one word is.</summary>
    public static IEnumerable<string> Wrap(string text, double size, double width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Of(longer, size) > width)
            {
                yield return line;
                longer = word;
            }
            line = longer;
        }
        yield return line;
    }

    static double Em(char c) => c switch
    {
        'i' or 'j' or 'l' or 'I' or '.' or ',' or '\'' or ':' or ';' or '|' or ' ' or '·' => 0.34,
        'f' or 't' or 'r' or '(' or ')' or '/' or '-' or '"' => 0.46,
        'm' or 'w' or 'M' or 'W' => 0.97,
        >= 'A' and <= 'Z' => 0.70,
        >= '0' and <= '9' => 0.64,
        '×' or '+' or '=' => 0.84,
        _ => 0.62,
    };
}
