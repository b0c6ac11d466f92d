using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>Sorts a frame into the stages in which it is built.</summary>
static class Tiering
{
    public static Outcome<ImmutableArray<Tier>> Of(OpenedFrame opened, ImmutableArray<StrutType> strutTypes, HubSystem hubSystem, ImmutableArray<int> stakesAt)
    {
        var frame = opened.Frame;
        var most = frame.Nodes.Max(n => n.Degree);
        if (most > hubSystem.Hubs.Max(h => h.Ways))
            return Refusal.OfField("design.no-hub", "hubSystem",
                $"{most} struts meet at a node, and {hubSystem.Name} has hubs of at most {hubSystem.Hubs.Max(h => h.Ways)} ways.");
        var fitting = new HubFitting(frame, hubSystem);

        var typeOfFamily = new StrutType[frame.Families.Length];
        foreach (var type in strutTypes)
            foreach (var family in type.Families)
                typeOfFamily[family] = type;
        var strutsByTier = frame.Struts.Concat(opened.Doubled.Select(id => frame.Struts[id])).ToLookup(s => s.Tier);
        var nodesByTier = frame.Nodes.ToLookup(n => n.Tier);
        var tierCount = frame.TierCount;
        return Enumerable.Range(0, tierCount).Select(number =>
        {
            var struts = strutsByTier[number].ToList();
            return new Tier(
                number,
                NameOf(number, tierCount),
                [.. strutTypes.Select(t => new TierStruts(t.Code, struts.Count(s => typeOfFamily[s.Family] == t))).Where(t => t.Count > 0)],
                Merge(nodesByTier[number].Select(n => HubTypeOf(fitting, n))),
                Ties: struts.Count * 2 * hubSystem.TiesPerEnd,
                Stakes: number == 0 ? stakesAt.Sum() : 0);
        }).ToImmutableArray();
    }

    /// <summary>The same hubs counted together.</summary>
    public static ImmutableArray<HubType> Merge(IEnumerable<HubType> hubs) =>
    [
        .. hubs.GroupBy(h => (h.Sku, h.Ways, h.Degree))
            .OrderByDescending(g => g.Key.Ways).ThenByDescending(g => g.Key.Degree)
            .Select(g => g.First() with { Count = g.Sum(h => h.Count) }),
    ];

    static HubType HubTypeOf(HubFitting fitting, Node node)
    {
        var hub = fitting.For(node)!;
        return new(hub.Sku, hub.Ways, node.Degree, 1);
    }

    static string NameOf(int number, int count)
    {
        if (number == 0) return "Foundation";
        if (number == count - 1) return "Closing top";
        string[] ordinals = ["First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth", "Tenth"];
        return number <= ordinals.Length ? $"{ordinals[number - 1]} tier" : $"Tier {number}";
    }
}
