using System.Globalization;
using Fluid;

namespace KitWorks.Labels;

/// <summary>What templates may name: the properties of labels and of what is in them, in snake case, and nothing else.</summary>
static class Values
{
    const int MaxSteps = 2000;

    static readonly Type[] Named =
    [
        typeof(BundleLabel), typeof(HubBagLabel), typeof(TieBagLabel), typeof(ParcelLabel), typeof(BinLabel), typeof(RemnantLabel),
        typeof(LabelItem), typeof(TagMark),
    ];

    public static TemplateOptions Options()
    {
        var options = new TemplateOptions { StrictVariables = true, StrictFilters = true, MaxSteps = MaxSteps, CultureInfo = CultureInfo.InvariantCulture };
        options.MemberAccessStrategy.MemberNameStrategy = MemberNameStrategies.SnakeCase;
        foreach (var type in Named) options.MemberAccessStrategy.Register(type);
        return options;
    }

    public static TemplateContext Of(Label label, TemplateOptions options) => new(label, options);
}
