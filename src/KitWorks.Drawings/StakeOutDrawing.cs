using KitWorks.Drawings.Paper;
using KitWorks.Drawings.Staking;
using KitWorks.Geometry;

namespace KitWorks.Drawings;

/// <summary>Draws the base ring as it is staked out: numbered stakes, sides and check diagonals, with a table of tape lengths.</summary>
public static class StakeOutDrawing
{
    const double Margin = 6, TitleSize = 4.2, DimensionRoom = 9;

    /// <summary>Base nodes that differ in height by less than this, in millimetres, count as level.</summary>
    const double LevelMm = 0.5;

    /// <summary>The drawing of a frame's base ring, an SVG document.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="width">The width on paper, 60 mm to 3 m; null for 180 mm.</param>
    /// <param name="title">The headline; null for the shelter's own name.</param>
    /// <param name="withTable">Whether the table is drawn below the ring.</param>
    public static Outcome<string> Draw(Frame frame, Units units = Units.Metric, Length? width = null, string? title = null, bool withTable = true)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (width is { } asked && SheetWidth.Fault(asked) is { } refusal) return refusal;
        var sheetWidth = width?.Millimetres ?? 180;
        var stakes = new Stakes(frame);
        var places = stakes.All.Select(stakes.At).ToList();
        var (left, right, low, high) = (places.Min(p => p.X), places.Max(p => p.X), places.Min(p => p.Y), places.Max(p => p.Y));

        var inner = sheetWidth - 2 * Margin - DimensionRoom - 2 * Ring.Room;
        var scale = Math.Min(inner / (right - left), inner * 1.1 / (high - low));
        var origin = new Spot(Margin + DimensionRoom + Ring.Room + inner / 2 - (left + right) / 2 * scale, Margin + TitleSize + 7 + Ring.Room + high * scale);
        Spot ToPaper(Spot p) => new(origin.X + p.X * scale, origin.Y - p.Y * scale);
        var (topLeft, bottomRight) = (ToPaper(new(left, high)), ToPaper(new(right, low)));

        var headline = $"{title ?? ShelterName.Of(frame.Shelter)} · Stake-out";
        var notes = Notes(frame, stakes, units).SelectMany(n => TextWidth.Wrap(n, 2.4, sheetWidth - 2 * Margin)).ToList();
        var withHeights = frame.BaseSpreadMm > LevelMm;
        var table = new StakeTable(stakes, units, withHeights, sheetWidth - 2 * Margin);
        var notesTop = bottomRight.Y + Ring.Room + DimensionRoom + 2;
        var tableTop = notesTop + notes.Count * 3.4 + 2;

        var drawing = Svg.Group("drawing", ("font-family", Ink.Font), ("fill", Ink.Dark));
        drawing.Add(Svg.Text(new(Margin, Margin + TitleSize * 0.8), headline, Math.Min(TitleSize, TitleSize * (sheetWidth - 2 * Margin) / TextWidth.Of(headline, TitleSize * 1.06)), ("font-weight", "bold")));
        drawing.Add(new Ring(stakes, units, ToPaper).Draw());
        drawing.Add(
            DimensionLines.Along(new(topLeft.X, bottomRight.Y + Ring.Room - 1), new(bottomRight.X, bottomRight.Y + Ring.Room - 1), bottomRight.Y + Ring.Room + 5, Measure.Whole(right - left, units)),
            DimensionLines.Up(new(topLeft.X - Ring.Room + 1, bottomRight.Y), new(topLeft.X - Ring.Room + 1, topLeft.Y), Margin + 2.5, Measure.Whole(high - low, units)));
        for (var i = 0; i < notes.Count; i++) drawing.Add(Svg.Text(new(Margin, notesTop + i * 3.4 + 2), notes[i], 2.4));
        if (withTable) drawing.Add(table.Draw(new(Margin, tableTop)));
        var sheet = Svg.Sheet(sheetWidth, tableTop + (withTable ? table.Height + Margin : 0), headline, string.Join(' ', notes));
        sheet.Add(drawing);
        return Svg.Write(sheet);
    }

    /// <summary>The table's figures, stake by stake, to be set in another way.</summary>
    public static IReadOnlyList<StakePlace> Places(Frame frame)
    {
        var stakes = new Stakes(frame);
        return [.. stakes.All.Select(s => new StakePlace(
            s, stakes.Second, stakes.Between(1, s), stakes.Between(stakes.Second, s), stakes.FromMiddle(s), stakes.Between(s, stakes.Next(s)), stakes.HeightOf(s)))];
    }

    static IEnumerable<string> Notes(Frame frame, Stakes stakes, Units units)
    {
        yield return (units == Units.Metric ? "Millimetres" : "Feet and inches") + ", between node centres, on level ground."
            + $" Set pegs 1 and {stakes.Second}, {Measure.Tape(stakes.Between(1, stakes.Second), units)} apart, and hook a tape to each: where its two readings meet, a peg stands; it keeps the place until the stake goes in, last of all. Check sides and diagonals.";
        if (frame.RadiusMm is null) yield return "Dashed: widths to check, and to pull in, before the stakes are driven home. A long shelter tends to spread at mid-length.";
        if (frame.BaseSpreadMm > LevelMm) yield return $"The base is not level by design: its nodes differ in height by up to {Measure.Tape(frame.BaseSpreadMm, units)}{(units == Units.Metric ? " mm" : "")}. Heights are over the lowest of them: lay that hub on the ground and block each of the others up by its height, or dig the ground away under the low ones.";
    }
}

/// <summary>Where a stake stands, in millimetres on level ground.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Second">The stake that the second tape is hooked to; the first is hooked to stake 1.</param>
/// <param name="FromFirstMm">From stake 1.</param>
/// <param name="FromSecondMm">From the second tape's stake.</param>
/// <param name="FromMiddleMm">From the middle.</param>
/// <param name="ToNextMm">To the next stake.</param>
/// <param name="HeightMm">How high its hub lies over the lowest of the ring.</param>
public sealed record StakePlace(int Number, int Second, double FromFirstMm, double FromSecondMm, double FromMiddleMm, double ToNextMm, double HeightMm);
