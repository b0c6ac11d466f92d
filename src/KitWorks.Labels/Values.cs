using System.Globalization;
using Fluid;

namespace KitWorks.Labels;

/// <summary>What templates may name: the properties of labels and of what is in them, in snake case, and nothing else.</summary>
static class Values
{
    const int MaxSteps = 2000;

    public static TemplateOptions Options()
    {
        var options = new TemplateOptions { StrictVariables = true, StrictFilters = true, MaxSteps = MaxSteps, CultureInfo = CultureInfo.InvariantCulture };
        options.MemberAccessStrategy.MemberNameStrategy = MemberNameStrategies.SnakeCase;
        options.MemberAccessStrategy.Register<BundleLabel>();
        options.MemberAccessStrategy.Register<LabelItem>();
        options.MemberAccessStrategy.Register<TagMark>();
        return options;
    }

    public static TemplateContext Of(Label label, TemplateOptions options) => new(label, options);
}
