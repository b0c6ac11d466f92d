using Fluid;
using KitWorks.Geometry;

namespace KitWorks.Labels.Drawing;

/// <summary>Goes through the places of sheets, label by label.</summary>
sealed class SheetRun(TemplateShelf templates, LabelStock stock, string? name, TemplateOptions options)
{
    public Refusal? Each(IReadOnlyList<Label> labels, int startAt, Func<int, int, Painter> painterFor, Action done)
    {
        var dots = stock.Dpi / 25.4;
        for (var i = 0; i < labels.Count; i++)
        {
            var (page, place) = ((startAt - 1 + i) / stock.PerPage, (startAt - 1 + i) % stock.PerPage);
            if (!templates.For(labels[i].Kind, stock, name).Succeeds(out var template, out var refusal)) return refusal;
            var (x, y) = stock.Corner(place);
            var corner = ((int)Math.Round((x + (stock.LabelWidthMm - template.WidthMm) / 2) * dots), (int)Math.Round((y + (stock.LabelHeightMm - template.HeightMm) / 2) * dots));
            if (painterFor(page, place).Paint(template, Values.Of(labels[i], options), corner) is { } wrong)
                return wrong with { Detail = labels.Count == 1 ? wrong.Detail : $"Label {i + 1} of {labels.Count}: {wrong.Detail}" };
        }
        done();
        return null;
    }
}
