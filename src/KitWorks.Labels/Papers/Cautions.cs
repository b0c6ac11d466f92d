using KitWorks.Kits;

namespace KitWorks.Labels;

/// <summary>What a customer is told of a kit's warnings: what to do. The figures are for the shop, and stand on its picklist.</summary>
static class Cautions
{
    const string Load = "This frame carries itself and its cover, and little more. Nobody climbs on it or hangs from it, and nothing heavy is hung up in it. Push snow off with a soft broom, from the ground, before it settles. "
        + "Take the cover off before a storm. Ask the shop what would make it stronger before you build where there is much snow or wind.";

    const string Anchors = "In strong wind some of the hubs at the ground can pull harder than the stakes of this kit hold. Before you rely on one, drive it and try to pull it out by hand: if it moves, the ground is too soft for it. "
        + "Put a longer stake, or two, at every hub, or weigh the ring down. Take the cover off before a storm, and ask the shop where you are not sure.";

    const string Loose = "Ask the shop before you build this frame: as it is drawn, some of its hubs can move. Until it has told you what to add, do not stand it up.";

    const string Unknown = "Nobody has reckoned yet what wind and snow this shelter carries. Until an engineer has, nobody climbs on it or hangs from it; keep snow off it, and take the cover off before a storm. Ask the shop.";

    /// <summary>The cautions, each once.</summary>
    public static IEnumerable<string> For(IEnumerable<Warning> warnings) => warnings.Select(w => w.Code switch
    {
        "statics.outgrown" or "statics.tie-overloaded" => Load,
        "statics.stakes" => Anchors,
        "statics.more-stakes" => "Some hubs at the ground take more than one stake; the page on driving the stakes says which. Drive every one of them: in wind they hold the shelter down.",
        "statics.loose" => Loose,
        "statics.not-screened" => Unknown,
        "base.not-level" => "The hubs at the ground do not all lie at one height. The table of pegs says how high each lies over the lowest: lay the lowest on the ground and block the others up, or dig the ground away under the low ones.",
        "shell.dented" => "Somewhere the shell is nearly flat, or turns inwards, and could snap through if it is pushed. Do not lean on it or let snow lie there, and ask the shop before you build.",
        // What else there is tells of lengths, and was agreed to when the kit was ordered.
        _ => w.Detail,
    }).Distinct();
}
