using System.Globalization;
using Fluid;

namespace KitWorks.Labels;

/// <summary>What templates may name: the properties of labels and of what is in them, in snake case, and nothing else.</summary>
static class Values
{
    const int MaxSteps = 5000;

    static readonly Type[] Named =
    [
        typeof(BundleLabel), typeof(HubBagLabel), typeof(TieBagLabel), typeof(ParcelLabel), typeof(BinLabel), typeof(RemnantLabel),
        typeof(LabelItem), typeof(TagMark), typeof(PageMark), typeof(Picklist), typeof(PickLine), typeof(PickStop), typeof(CutSheet), typeof(CutStop), typeof(CutRow), typeof(CutGoes),
        typeof(PackingList), typeof(PackedBundle), typeof(PackedParcel), typeof(GuideCover), typeof(GuideStakes), typeof(GuideTier), typeof(GuideEnd), typeof(GuideStruts), typeof(GuideHubs),
        typeof(GuideCheck), typeof(GuideOpenings), typeof(GuideOpening), typeof(GuidePeg),
    ];

    public static TemplateOptions Options()
    {
        var options = new TemplateOptions { StrictVariables = true, StrictFilters = true, MaxSteps = MaxSteps, CultureInfo = CultureInfo.InvariantCulture };
        options.MemberAccessStrategy.MemberNameStrategy = MemberNameStrategies.SnakeCase;
        foreach (var type in Named) options.MemberAccessStrategy.Register(type);
        return options;
    }

    public static TemplateContext Of(object values, TemplateOptions options) => new(values, options);
}
