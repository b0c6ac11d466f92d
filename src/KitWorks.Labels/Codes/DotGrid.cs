using KitWorks.Geometry;
using SkiaSharp;

namespace KitWorks.Labels.Codes;

/// <summary>Where a symbol sits on the printer's dots.</summary>
/// <param name="Left">The first dark module's left edge, in dots.</param>
/// <param name="Top">Its top edge, in dots.</param>
/// <param name="Module">The width of a module, in dots.</param>
/// <param name="RowHeight">The height of a row, in dots.</param>
readonly record struct DotPlacement(int Left, int Top, int Module, int RowHeight);

/// <summary>Fits symbols to whole printer dots: a bar of one and a half dots does not scan.</summary>
static class DotGrid
{
    // In dots: sizes that are whole dots but for rounding pass, as two dots at 203 dpi (0.2502 mm) must.
    const double Tolerance = 0.01;

    /// <summary>The symbol as large as the box allows, in its middle, with its quiet zones inside the box.</summary>
    public static Outcome<DotPlacement> Place(Symbol symbol, SKRect boxDots, double dotsPerMm)
    {
        var (width, height) = ((int)Math.Floor(boxDots.Width + Tolerance), (int)Math.Floor(boxDots.Height + Tolerance));
        var linear = symbol.Rows == 1;
        var across = linear ? width : Math.Min(width, height);
        var module = Math.Min(across / symbol.FullColumns, (int)Math.Floor(symbol.Limits.MostModuleMm * dotsPerMm));
        var least = (int)Math.Ceiling(symbol.Limits.LeastModuleMm * dotsPerMm - Tolerance);
        if (module < least)
            return TooSmall($"The code needs {symbol.FullColumns * least / dotsPerMm:0.0} mm with its quiet zones and has {across / dotsPerMm:0.0} mm; a module may not be under {symbol.Limits.LeastModuleMm} mm.");
        if (height < symbol.Limits.LeastHeightMm * dotsPerMm - 1)
            return TooSmall($"The bars are {height / dotsPerMm:0.0} mm high; they may not be under {symbol.Limits.LeastHeightMm} mm.");
        var left = (int)Math.Round(boxDots.Left) + (width - symbol.Columns * module) / 2;
        var top = (int)Math.Round(boxDots.Top) + (linear ? 0 : (height - symbol.Rows * module) / 2);
        return new DotPlacement(left, top, module, linear ? height : module);
    }

    static Refusal TooSmall(string detail) => new(RefusalKind.Impossible, "label.code-too-small", detail);

    /// <summary>The dark runs as rectangles in dots, each drawn in by <paramref name="inset"/> on every side.</summary>
    public static SKPath Outline(Symbol symbol, DotPlacement at, float inset)
    {
        using var path = new SKPathBuilder();
        foreach (var (row, column, length) in symbol.Runs())
            path.AddRect(new(
                at.Left + column * at.Module + inset, at.Top + row * at.RowHeight + inset,
                at.Left + (column + length) * at.Module - inset, at.Top + (row + 1) * at.RowHeight - inset));
        return path.Detach();
    }
}
