using KitWorks.Geometry;

namespace KitWorks.Statics;

public sealed partial class TrussModel
{
    /// <summary>The structure of a shelter's frame, with its cover.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="support">How its base hubs stand.</param>
    /// <param name="without">Ids of struts that are taken out for an opening; none by default.</param>
    /// <param name="shut">Triangles that shut openings, which the cover's loads reach too; none by default.</param>
    /// <param name="doubled">Ids of struts beside which a second lies; none by default.</param>
    /// <returns>
    /// The model, or a refusal with the field <c>without/0</c> and so on. Panels beside a strut that was taken out stay: a door or a vent that is shut
    /// passes its load to the hubs around it.
    /// </returns>
    public static Outcome<TrussModel> Of(Frame frame, BaseSupport support, IEnumerable<int>? without = null, IEnumerable<Panel>? shut = null, IEnumerable<int>? doubled = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var removed = new HashSet<int>();
        foreach (var (strut, i) in (without ?? []).Select((s, i) => (s, i)))
        {
            if (strut < 0 || strut >= frame.Struts.Length)
                return Refusal.OfField(Code, $"without/{i}", $"There is no strut {strut}; struts are 0 to {frame.Struts.Length - 1}.");
            removed.Add(strut);
        }
        var pinned = support switch { BaseSupport.Pinned => true, BaseSupport.Sliding => false };
        var model = new TrussModel(
            [.. frame.Nodes.Select(n => n.Position)],
            [.. frame.Struts.Where(s => !removed.Contains(s.Id)).Select(s => new Member(s.Id, s.From, s.To))],
            [.. frame.Base.Select(n => new Support(n, pinned, pinned, true))]) { Panels = shut is null ? frame.Panels : [.. frame.Panels, .. shut], Doubled = [.. doubled ?? []], Slides = !pinned };
        return model.Fault() is { } refusal ? refusal : model;
    }
}
