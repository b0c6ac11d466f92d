using KitWorks.Drawings;
using KitWorks.Kits.Catalog;

namespace KitWorks.Browser.Tests;

/// <summary>Our preview of other people's eyes, held against the browser's own emulation of them.</summary>
public sealed class ColourVisionTests(Chromium chromium)
{
    /// <summary>Of 255. Both work in linear light by the same paper; they round at other places.</summary>
    const int Tolerance = 3;

    [Theory]
    [InlineData(Vision.Protanopia, "protanopia")]
    [InlineData(Vision.Deuteranopia, "deuteranopia")]
    [InlineData(Vision.Tritanopia, "tritanopia")]
    public async Task Seen_WhenTheBrowserEmulatesTheSameEyes_IsTheSameColour(Vision by, string emulated)
    {
        var page = await (await chromium.Open()).NewPageAsync(new() { ViewportSize = new() { Width = 40, Height = 40 } });
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Emulation.setEmulatedVisionDeficiency", new() { ["type"] = emulated });
        foreach (var colour in Palette.ColourBlindSafe.Colours)
        {
            await page.SetContentAsync($"<body style='margin:0;background:{colour.Hex}'>");
            var picture = Convert.ToBase64String(await page.ScreenshotAsync());
            // The browser reads its own picture back.
            var seen = await page.EvaluateAsync<int[]>("""
                async (png) => {
                  const image = new Image(); image.src = "data:image/png;base64," + png; await image.decode();
                  const canvas = new OffscreenCanvas(40, 40), pen = canvas.getContext("2d"); pen.drawImage(image, 0, 0);
                  return [...pen.getImageData(20, 20, 1, 1).data.slice(0, 3)];
                }
                """, picture);
            var ours = Convert.FromHexString(ColourVision.Seen(colour.Hex, by)[1..]);
            for (var i = 0; i < 3; i++) Assert.True(Math.Abs(seen[i] - ours[i]) <= Tolerance, $"{colour.Name}: the browser shows {string.Join(' ', seen)}, we {string.Join(' ', ours)}");
        }
        await page.CloseAsync();
    }
}
