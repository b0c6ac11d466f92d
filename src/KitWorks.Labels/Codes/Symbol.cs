namespace KitWorks.Labels.Codes;

/// <summary>A bar code as modules: dark or light, row by row from the top.</summary>
/// <param name="Columns">Modules across.</param>
/// <param name="Rows">Modules down; 1 for bars, which stretch.</param>
/// <param name="Dark">The modules.</param>
/// <param name="Quiet">Light modules that must stay free on each side.</param>
sealed record Symbol(int Columns, int Rows, bool[] Dark, int Quiet)
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
