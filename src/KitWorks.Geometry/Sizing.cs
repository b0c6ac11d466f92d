namespace KitWorks.Geometry;

/// <summary>The measures of a form whose scale is still open, in a unit of its own.</summary>
/// <param name="Height">From the lowest base node to the highest node.</param>
/// <param name="Length">The extent along x.</param>
/// <param name="Width">The extent along y.</param>
/// <param name="Shortest">The shortest strut.</param>
/// <param name="Longest">The longest strut.</param>
/// <param name="FloorDiameter">Twice the mean distance of the base nodes from the axis; null for an oblong.</param>
sealed record Form(double Height, double Length, double Width, double Shortest, double Longest, double? FloorDiameter)
{
    public static Form Of(MeasuredNet measured, int kept, int[] ring, bool round)
    {
        var points = measured.Net.Points.AsSpan(0, kept);
        Point3 low = points[0], high = points[0];
        foreach (var p in points)
        {
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), Math.Min(low.Z, p.Z));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), Math.Max(high.Z, p.Z));
        }
        int shortest = int.MaxValue, longest = 0;
        for (var i = 0; i < measured.Net.Start[kept]; i++)
            if (measured.Net.Around[i] < kept)
                (shortest, longest) = (Math.Min(shortest, measured.FamilyAround[i]), Math.Max(longest, measured.FamilyAround[i]));
        double? floor = round ? 2 * ring.Average(n => Math.Sqrt(measured.Net.Points[n].X * measured.Net.Points[n].X + measured.Net.Points[n].Y * measured.Net.Points[n].Y)) : null;
        var extent = high - low;
        return new(extent.Z, extent.X, extent.Y, measured.Lengths[shortest], measured.Lengths[longest], floor);
    }
}

/// <summary>Finds the scale that gives a form its size.</summary>
static class Sizing
{
    /// <summary>The largest and smallest extent that a shelter may have, in millimetres: from a model on the table to a hall of 200 m.</summary>
    const double MinExtentMm = 100, MaxExtentMm = 200_000;

    /// <summary>The shortest strut that can still be cut, in millimetres.</summary>
    const double MinCutMm = 1;

    /// <summary>Millimetres to a unit of the form.</summary>
    public static Outcome<double> ScaleOf(Size size, Form form, Length hubAllowance) => size switch
    {
        Size.FloorDiameter s => form.FloorDiameter is { } unit
            ? By(s.Diameter, unit, 0, "floorDiameter", "floor diameter", form, hubAllowance)
            : NotFor("floorDiameter", "An oblong has no floor diameter; give its longestStrut, length, width, height or fits."),
        Size.Height s => By(s.Of, form.Height, 0, "height", "height", form, hubAllowance),
        Size.Radius s => form.FloorDiameter is not null
            ? By(s.Of, 1, 0, "radius", "radius", form, hubAllowance)
            : NotFor("radius", "An oblong has no radius; give its longestStrut, length, width, height or fits."),
        Size.LongestStrut s => By(s.CutLength, form.Longest, 2 * hubAllowance.Millimetres, "longestStrut", "longest strut's cut length", form, hubAllowance),
        Size.LongSide s => form.FloorDiameter is null
            ? By(s.Of, form.Length, 0, "length", "length", form, hubAllowance)
            : NotFor("length", "A dome has no long side; give its floorDiameter, height, radius, longestStrut or fits."),
        Size.ShortSide s => form.FloorDiameter is null
            ? By(s.Of, form.Width, 0, "width", "width", form, hubAllowance)
            : NotFor("width", "A dome has no short side; give its floorDiameter, height, radius, longestStrut or fits."),
        Size.Fits s => Within(s, form, hubAllowance),
        _ => Refusal.OfField("shelter.size", "size", "A shelter needs a size: one of floorDiameter, height, radius, longestStrut, length, width or fits."),
    };

    static Outcome<double> Within(Size.Fits fits, Form form, Length hubAllowance)
    {
        var scales = new List<Outcome<double>>();
        if (fits.MaxLength is { } length) scales.Add(By(length, form.Length, 0, "fits/length", "length to fit", form, hubAllowance));
        if (fits.MaxWidth is { } width) scales.Add(By(width, form.Width, 0, "fits/width", "width to fit", form, hubAllowance));
        if (fits.MaxHeight is { } height) scales.Add(By(height, form.Height, 0, "fits/height", "height to fit", form, hubAllowance));
        if (scales.Count == 0) return Refusal.OfField("shelter.size", "size/fits", "Nothing is given to fit; give at least one of length, width and height.");
        return scales.Find(s => s.Refusal is not null) is { Refusal: { } refusal } ? refusal : scales.Min(s => s.Value);
    }

    // The measure is unit × scale − less.
    static Outcome<double> By(Length wanted, double unit, double less, string field, string name, Form form, Length hubAllowance)
    {
        var extent = Math.Max(form.Height, Math.Max(form.Length, form.Width));
        var least = Math.Max(MinExtentMm / extent, (2 * hubAllowance.Millimetres + MinCutMm) / form.Shortest);
        var most = MaxExtentMm / extent;
        var scale = (wanted.Millimetres + less) / unit;
        if (scale >= least && scale <= most) return scale;
        var withHubs = hubAllowance.Tenths > 0 ? $" with a hub allowance of {hubAllowance}" : "";
        return Refusal.OfField("shelter.size", $"size/{field}",
            $"The {name} is {wanted}; for this design{withHubs} it is {Math.Ceiling(least * unit - less):0} mm to {Math.Floor(most * unit - less):0} mm.");
    }

    static Refusal NotFor(string field, string detail) => Refusal.OfField("shelter.size", $"size/{field}", detail);
}
