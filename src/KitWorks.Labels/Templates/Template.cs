namespace KitWorks.Labels.Templates;

/// <summary>A drawing with placeholders, read and checked.</summary>
/// <param name="File">The name of its file.</param>
/// <param name="WidthMm">Its width on paper.</param>
/// <param name="HeightMm">Its height on paper.</param>
/// <param name="UnitsPerMm">The drawing's units to the millimetre.</param>
/// <param name="Layer">What it draws.</param>
sealed record Template(string File, double WidthMm, double HeightMm, double UnitsPerMm, Layer Layer);
