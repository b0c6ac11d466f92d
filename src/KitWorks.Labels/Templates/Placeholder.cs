using System.Xml;
using Fluid;
using Fluid.Ast;
using Fluid.Parser;
using Fluid.Values;
using KitWorks.Geometry;

namespace KitWorks.Labels.Templates;

/// <summary>A text with placeholders.</summary>
sealed record Placeholder(Place Place, IFluidTemplate Template)
{
    static readonly FluidParser Parser = new();

    public static bool IsIn(string text) => text.Contains("{{", StringComparison.Ordinal) || text.Contains("{%", StringComparison.Ordinal);

    public static Outcome<Placeholder> Parse(Place place, string text)
    {
        if (!Parser.TryParse(text, out var template, out var error)) return place.Refuse($"{error.Split('\n')[0].Trim()}.");
        return PlaceholderRules.Broken(template) is { } broken ? place.Refuse(broken) : new Placeholder(place, template);
    }

    /// <summary>The text filled in, without the characters that XML forbids.</summary>
    public Outcome<string> Fill(TemplateContext values)
    {
        try
        {
            var text = Template.Render(values, Fluid.NullEncoder.Default);
            return text.All(IsXml) ? text : string.Concat(text.Where(IsXml));
        }
        catch (Exception e) when (e is FluidException or InvalidOperationException)
        {
            return Place.Refuse(Explain(e));
        }

        static bool IsXml(char c) => XmlConvert.IsXmlChar(c) || char.IsSurrogate(c);
    }

    /// <summary>The list that a path such as <c>contents</c> or <c>tier.struts</c> names.</summary>
    public Outcome<IReadOnlyList<FluidValue>> Items(TemplateContext values)
    {
        if (Template is not FluidTemplate { Statements: [OutputStatement output] }) return Place.Refuse("“each” needs the name of one list.");
        try
        {
            var value = output.Expression.EvaluateAsync(values).AsTask().GetAwaiter().GetResult();
            return value.Type == FluidValues.Array ? value.Enumerate(values).ToList() : Place.Refuse("This is not a list.");
        }
        catch (Exception e) when (e is FluidException or InvalidOperationException)
        {
            return Place.Refuse(Explain(e));
        }
    }

    // The library names its own classes in some messages; a shop is told what it wrote.
    static string Explain(Exception e) => e is FluidException && !e.Message.Contains("Fluid.", StringComparison.Ordinal)
        ? $"{e.Message}."
        : e is FluidException ? "A value that this kind of label does not have." : "This takes too many steps.";
}
