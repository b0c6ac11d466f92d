namespace KitWorks.Drawings.Paper;

/// <summary>What text must keep clear of: lines, dots and other text, found by place through a grid.</summary>
sealed class Obstacles
{
    const double Cell = 6;

    readonly Dictionary<(int, int), List<(int Owner, Spot From, Spot To, double Half)>> lines = [];
    readonly Dictionary<(int, int), List<(Spot At, double Radius)>> dots = [];
    readonly Dictionary<(int, int), List<Box>> boxes = [];

    /// <summary>A line of some width; its owner's own text may lie on it.</summary>
    public void AddLine(int owner, Spot from, Spot to, double width)
    {
        var half = width / 2;
        var (low, high) = (new Spot(Math.Min(from.X, to.X) - half, Math.Min(from.Y, to.Y) - half), new Spot(Math.Max(from.X, to.X) + half, Math.Max(from.Y, to.Y) + half));
        foreach (var cell in Cells(low, high)) Add(lines, cell, (owner, from, to, half));
    }

    public void AddDot(Spot at, double radius)
    {
        foreach (var cell in Cells(at - new Spot(radius, radius), at + new Spot(radius, radius))) Add(dots, cell, (at, radius));
    }

    public void AddBox(Box box)
    {
        var (low, high) = box.Bounds;
        foreach (var cell in Cells(low, high)) Add(boxes, cell, box);
    }

    /// <summary>Whether a box touches nothing but its owner's line.</summary>
    public bool LeaveRoomFor(Box box, int owner)
    {
        var (low, high) = box.Bounds;
        foreach (var cell in Cells(low, high))
        {
            if (lines.TryGetValue(cell, out var l) && l.Exists(x => x.Owner != owner && box.Grown(x.Half).Touches(x.From, x.To))) return false;
            if (dots.TryGetValue(cell, out var d) && d.Exists(x => box.Touches(x.At, x.Radius))) return false;
            if (boxes.TryGetValue(cell, out var b) && b.Exists(box.Touches)) return false;
        }
        return true;
    }

    static void Add<T>(Dictionary<(int, int), List<T>> grid, (int, int) cell, T item)
    {
        if (!grid.TryGetValue(cell, out var list)) grid[cell] = list = [];
        list.Add(item);
    }

    static IEnumerable<(int, int)> Cells(Spot low, Spot high)
    {
        for (var x = (int)Math.Floor(low.X / Cell); x <= (int)Math.Floor(high.X / Cell); x++)
            for (var y = (int)Math.Floor(low.Y / Cell); y <= (int)Math.Floor(high.Y / Cell); y++)
                yield return (x, y);
    }
}
