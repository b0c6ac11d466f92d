using Fluid;
using KitWorks.Geometry;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels.Drawing;

/// <summary>Goes through the pages of a paper; a section has as many as its longest list needs.</summary>
sealed class PaperRun(TemplateShelf templates, TemplateOptions options, double widthMm, double heightMm, int dpi)
{
    readonly List<(Template Template, TemplateContext Values, int Pages)> sections = [];

    public Refusal? Plan(Paper paper)
    {
        foreach (var (kind, values) in paper.Sections)
        {
            if (!templates.For(kind, widthMm, heightMm, null).Succeeds(out var template, out var refusal)) return refusal;
            var context = Values.Of(values, options);
            if (!PagesOf(template.Layer, context).Succeeds(out var pages, out refusal)) return refusal;
            sections.Add((template, context, pages));
        }
        return null;
    }

    public Refusal? Each(Func<int, int, Painter> painterFor, Action done)
    {
        var (number, count, dots) = (0, sections.Sum(s => s.Pages), dpi / 25.4);
        foreach (var (template, values, pages) in sections)
        {
            var corner = ((int)Math.Round((widthMm - template.WidthMm) / 2 * dots), (int)Math.Round((heightMm - template.HeightMm) / 2 * dots));
            for (var flowed = 0; flowed < pages; flowed++, number++)
            {
                values.SetValue("page", new PageMark(number + 1, count, flowed + 1));
                if (painterFor(number, flowed).Paint(template, values, corner) is { } refusal) return refusal;
            }
        }
        done();
        return null;
    }

    static Outcome<int> PagesOf(Layer layer, TemplateContext values)
    {
        var pages = 1;
        foreach (var part in layer.Parts)
        {
            if (part is not EachPart { Flows: true } each) continue;
            if (!each.List.Items(values).Succeeds(out var items, out var refusal)) return refusal;
            pages = Math.Max(pages, (items.Count + each.Room - 1) / each.Room);
        }
        return pages;
    }
}
