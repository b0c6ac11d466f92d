using System.Collections.Concurrent;
using System.Text;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels.Drawing;

/// <summary>Pictures that come with a label, read once each. Their text is set in the same fonts as the label's.</summary>
sealed class PictureShelf(FontShelf fonts)
{
    const int Kept = 64;

    readonly ConcurrentDictionary<string, Template> pictures = new();

    public Outcome<Template> Read(string source)
    {
        if (pictures.TryGetValue(source, out var known)) return known;
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(source));
        var outcome = TemplateReader.ReadPicture(stream, fonts);
        if (outcome.Succeeds(out var picture, out _))
        {
            if (pictures.Count >= Kept) pictures.Clear();
            pictures[source] = picture;
        }
        return outcome;
    }
}
