using Microsoft.Playwright;

namespace KitWorks.Browser.Tests;

/// <summary>Somebody without a mouse: they reach a thing by the tab key, hear its name, and press.</summary>
sealed class Keyboard(IPage page)
{
    const int MostTabs = 120;

    /// <summary>The name of what is in focus: its label, or its own words.</summary>
    const string Focused = """
        () => {
          const it = document.activeElement;
          if (!it || it === document.body) return ["", ""];
          const words = it.getAttribute("aria-label") ?? (it.labels?.length ? [...it.labels].map(l => l.innerText).join(" ") : it.innerText ?? "");
          return [words.trim(), it.closest("main") ? "main" : "around"];
        }
        """;

    public async Task TabTo(string name, string? among = null)
    {
        for (var tabs = 0; tabs < MostTabs; tabs++)
        {
            var seen = await page.EvaluateAsync<string[]>(Focused);
            if (seen[0].StartsWith(name, StringComparison.Ordinal) && (among is null || seen[1] == among)) return;
            await page.Keyboard.PressAsync("Tab");
        }
        Assert.Fail($"The tab key never reached '{name}' on {page.Url}.");
    }

    public Task Type(string text) => page.Keyboard.TypeAsync(text);

    public Task Press(string key) => page.Keyboard.PressAsync(key);
}
