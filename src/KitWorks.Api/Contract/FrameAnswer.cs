using KitWorks.Geometry;

namespace KitWorks.Api.Contract;

/// <summary>A frame: nodes, struts and panels. Millimetres, z up, the mean base plane at z = 0.</summary>
sealed record FrameAnswer(
    double? RadiusMm, double BaseSpreadMm, Dimensions Dimensions, IEnumerable<FamilyAnswer> Families, IEnumerable<NodeAnswer> Nodes,
    IEnumerable<StrutAnswer> Struts, IEnumerable<PanelAnswer> Panels, IEnumerable<int> Base)
{
    public static FrameAnswer Of(Frame frame) => new(
        frame.RadiusMm is { } radius ? Math.Round(radius, 6) : null, Math.Round(frame.BaseSpreadMm, 6), KitAnswer.Rounded(frame.Dimensions),
        frame.Families.Select(f => new FamilyAnswer(f.Index, Math.Round(f.SpacingMm, 6), f.ChordFactor is { } c ? Math.Round(c, 10) : null, f.Count)),
        frame.Nodes.Select(n => new NodeAnswer(n.Id, Math.Round(n.Position.X, 6), Math.Round(n.Position.Y, 6), Math.Round(n.Position.Z, 6), n.Degree, n.Tier)),
        frame.Struts.Select(s => new StrutAnswer(s.Id, s.From, s.To, s.Family, Math.Round(s.SpacingMm, 6), s.Tier)),
        frame.Panels.Select(p => new PanelAnswer([p.A, p.B, p.C], $"P{p.Kind + 1}", Math.Round(frame.PanelKinds[p.Kind].AreaM2, 9))),
        frame.Base);
}

/// <summary>Struts that are equal by mathematics.</summary>
sealed record FamilyAnswer(int Family, double SpacingMm, double? ChordFactor, int Count);

/// <summary>A point where struts meet.</summary>
sealed record NodeAnswer(int Id, double XMm, double YMm, double ZMm, int Degree, int Tier);

/// <summary>A member between two nodes.</summary>
sealed record StrutAnswer(int Id, int From, int To, int Family, double SpacingMm, int Tier);

/// <summary>A triangle: three nodes, counter-clockwise from outside.</summary>
sealed record PanelAnswer(int[] Nodes, string Code, double AreaM2);
