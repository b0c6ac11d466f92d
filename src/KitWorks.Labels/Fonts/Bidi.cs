using System.Text;

namespace KitWorks.Labels.Fonts;

/// <summary>
/// The order in which a line of mixed directions is drawn: the Unicode bidirectional algorithm (UAX #9) without embeddings,
/// isolates and bracket pairs, which addresses and names do not use.
/// </summary>
static class Bidi
{
    /// <summary>Stretches of one direction, in the order in which they are drawn from the left.</summary>
    public static IReadOnlyList<(string Text, bool RightToLeft)> Order(string text)
    {
        if (!text.EnumerateRunes().Any(IsRightToLeft)) return [(text, false)];
        var runes = text.EnumerateRunes().ToArray();
        var levels = Levels(runes);
        var stretches = new List<(StringBuilder Text, int Level)>();
        for (var i = 0; i < runes.Length; i++)
        {
            if (stretches.Count == 0 || stretches[^1].Level != levels[i]) stretches.Add((new(), levels[i]));
            stretches[^1].Text.Append(runes[i].ToString());
        }
        // Rule L2: from the highest level down, turn round every stretch of that level or above.
        for (var level = levels.Max(); level >= 1; level--)
            for (var start = 0; start < stretches.Count; start++)
            {
                var end = start;
                while (end < stretches.Count && stretches[end].Level >= level) end++;
                if (end - start > 1) stretches.Reverse(start, end - start);
                start = Math.Max(start, end - 1);
            }
        return [.. stretches.Select(s => (s.Text.ToString(), s.Level % 2 == 1))];
    }

    static int[] Levels(Rune[] runes)
    {
        var strong = Array.ConvertAll(runes, r => IsRightToLeft(r) ? 'R' : Rune.IsDigit(r) ? 'N' : Rune.IsLetter(r) ? 'L' : '-');
        var start = Array.Find(strong, c => c is 'L' or 'R') == 'R' ? 1 : 0;
        // Rule W7: digits after Latin letters belong to them.
        for (var (i, last) = (0, start == 1 ? 'R' : 'L'); i < strong.Length; i++)
            if (strong[i] is 'L' or 'R') last = strong[i];
            else if (strong[i] == 'N' && last == 'L') strong[i] = 'L';
        // Rule W4: one separator between two digits is part of the number.
        for (var i = 1; i + 1 < strong.Length; i++)
            if (strong[i] == '-' && strong[i - 1] == 'N' && strong[i + 1] == 'N' && runes[i].Value is '.' or ',' or ':' or '/' or '-') strong[i] = 'N';
        var levels = new int[runes.Length];
        for (var i = 0; i < strong.Length; i++)
        {
            if (strong[i] == '-') levels[i] = Neutral(strong, i, start);
            else levels[i] = (strong[i], start) switch { ('R', _) => 1, ('N', _) => 2, (_, 0) => 0, _ => 2 };
        }
        return levels;
    }

    // Rules N1 and N2: neutrals between two alike go with them, others with the line. A number counts as right to left.
    static int Neutral(char[] strong, int at, int start)
    {
        var before = Array.FindLastIndex(strong, at, c => c != '-') is var b and >= 0 ? strong[b] : start == 1 ? 'R' : 'L';
        var after = Array.FindIndex(strong, at, c => c != '-') is var a and >= 0 ? strong[a] : start == 1 ? 'R' : 'L';
        var (left, right) = (before == 'L', after == 'L');
        return left != right ? start : left ? start == 0 ? 0 : 2 : 1;
    }

    static bool IsRightToLeft(Rune rune) => rune.Value is (>= 0x0590 and <= 0x08FF) or (>= 0xFB1D and <= 0xFDFF) or (>= 0xFE70 and <= 0xFEFF) or (>= 0x10800 and <= 0x10FFF) or (>= 0x1E800 and <= 0x1EFFF)
        && !(rune.Value is (>= 0x0660 and <= 0x0669) or (>= 0x06F0 and <= 0x06F9));
}
