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
    /// <summary>The narrowest module that a hand scanner reads from a label printer.</summary>
    public const double LeastModuleMm = 0.25;

    /// <summary>The symbol as large as the box allows, in its middle, with its quiet zones inside the box.</summary>
    public static Outcome<DotPlacement> Place(Symbol symbol, SKRect boxDots, double dotsPerMm)
    {
        var (width, height) = ((int)Math.Floor(boxDots.Width + 0.01), (int)Math.Floor(boxDots.Height + 0.01));
        var linear = symbol.Rows == 1;
        var module = linear ? width / symbol.FullColumns : Math.Min(width, height) / symbol.FullColumns;
        // A hundredth of a dot lets two dots at 203 dpi, 0.2502 mm, pass.
        var least = (int)Math.Ceiling(LeastModuleMm * dotsPerMm - 0.01);
        if (module < least)
            return new Refusal(RefusalKind.Impossible, "label.code-too-small",
                $"The code needs {symbol.FullColumns * least / dotsPerMm:0.0} mm with its quiet zones and has {(linear ? width : Math.Min(width, height)) / dotsPerMm:0.0} mm; a module may not be under {LeastModuleMm} mm.");
        var left = (int)Math.Round(boxDots.Left) + (width - symbol.Columns * module) / 2;
        var top = (int)Math.Round(boxDots.Top) + (linear ? 0 : (height - symbol.Rows * module) / 2);
        return new DotPlacement(left, top, module, linear ? height : module);
    }

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
