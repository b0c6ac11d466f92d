namespace KitWorks.Labels.Codes;

/// <summary>A bar code as modules: dark or light, row by row from the top.</summary>
/// <param name="Columns">Modules across.</param>
/// <param name="Rows">Modules down; 1 for bars, which stretch.</param>
/// <param name="Dark">The modules.</param>
/// <param name="Quiet">Light modules that must stay free on each side.</param>
/// <param name="Limits">How small and large it may be drawn.</param>
sealed record Symbol(int Columns, int Rows, bool[] Dark, int Quiet, SymbolLimits Limits)
{
    /// <summary>Modules that a row takes with its quiet zones.</summary>
    public int FullColumns => Columns + 2 * Quiet;

    /// <summary>Runs of dark modules: row, first column, length.</summary>
    public IEnumerable<(int Row, int Column, int Length)> Runs()
    {
        for (var row = 0; row < Rows; row++)
            for (var column = 0; column < Columns; column++)
            {
                if (!Dark[row * Columns + column]) continue;
                var start = column;
                while (column + 1 < Columns && Dark[row * Columns + column + 1]) column++;
                yield return (row, start, column - start + 1);
            }
    }
}

/// <summary>How small and large a symbol may be drawn.</summary>
/// <param name="LeastModuleMm">The narrowest module.</param>
/// <param name="MostModuleMm">The widest module.</param>
/// <param name="LeastHeightMm">The lowest bars.</param>
sealed record SymbolLimits(double LeastModuleMm, double MostModuleMm, double LeastHeightMm)
{
    /// <summary>What a hand scanner reads from a label printer. No bars under 5 mm: a scanner's line then misses them.</summary>
    public static SymbolLimits Bars { get; } = new(0.25, 1, 5);

    /// <summary>The same for a code that is read by camera.</summary>
    public static SymbolLimits Matrix { get; } = new(0.25, 1.5, 0);

    /// <summary>GS1 General Specifications, symbol specification table 5 for logistic units, from memory.</summary>
    public static SymbolLimits Logistics { get; } = new(0.495, 0.940, 31.75);
}
