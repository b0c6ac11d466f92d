using System.Collections.Immutable;
using System.Text.RegularExpressions;
using KitWorks.Drawings;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Settings;

/// <summary>The colours of tags, as they print and as others see them.</summary>
sealed partial class PaletteModel(IMediator mediator) : BenchPage(mediator)
{
    /// <summary>In CIELAB: colours that are nearer are taken for one another at arm's length. Common practice, no source.</summary>
    public const double TooClose = 10;

    public ImmutableArray<TagColour> Colours { get; private set; } = [];
    public bool MayChange => User.IsInRole("Admin");

    public async Task OnGet(string[] name, string[] hex)
    {
        if (Given(name, hex) is { Length: > 0 } given) Colours = given;
        else if (await Ask(new GetCatalog()) is { } catalog) Colours = catalog.Palette.Colours;
    }

    public async Task<IActionResult> OnPost(string[] name, string[] hex)
    {
        if (!MayChange) return StatusCode(StatusCodes.Status403Forbidden);
        Colours = Given(name, hex);
        return await Did(new PutCatalog { Palette = new(Colours) }) ? Next("Palette: saved.", "/settings") : Page();
    }

    /// <summary>The two colours that somebody takes for one another first.</summary>
    public (string One, string Other, double Difference) Closest(Vision? by)
    {
        var seen = Colours.Select(c => (c.Name, Hex: by is { } vision ? ColourVision.Seen(c.Hex, vision) : c.Hex)).ToList();
        return seen.SelectMany((a, i) => seen.Skip(i + 1).Select(b => (a.Name, b.Name, ColourVision.Difference(a.Hex, b.Hex)))).OrderBy(p => p.Item3).FirstOrDefault(("", "", double.MaxValue));
    }

    static ImmutableArray<TagColour> Given(string[] names, string[] hexes) =>
        [.. names.Zip(hexes).Where(p => !string.IsNullOrWhiteSpace(p.First) && Hex().IsMatch(p.Second)).Select(p => new TagColour(p.First.Trim(), p.Second.ToUpperInvariant()))];

    [GeneratedRegex(@"^#[0-9A-Fa-f]{6}\z")]
    private static partial Regex Hex();
}
