namespace KitWorks.Browser.Tests;

/// <summary>The packing bench with a scanner that types what it reads and then Enter, wherever the focus is.</summary>
public sealed class PackingTests(Chromium chromium)
{
    /// <summary>A keyboard-wedge scanner types within some milliseconds and looks at nothing.</summary>
    static async Task Scan(Bench bench, string text)
    {
        var before = await bench.Page.Locator("#packing").ElementHandleAsync();
        await bench.Page.Keyboard.TypeAsync(text);
        await bench.Page.Keyboard.PressAsync("Enter");
        // The answer is a new copy of the region.
        await bench.Page.WaitForFunctionAsync("old => !old.isConnected", before);
    }

    [Fact]
    public async Task Scanner_WhenEveryLabelIsRead_PacksTheOrderAndNeverLosesTheField()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, codes, _) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");

        foreach (var (i, code) in codes.Index())
        {
            // Somebody touched the page in between: what is scanned must still arrive.
            if (i == 1) await bench.Page.ClickAsync("h1");
            // Half of the labels are read by their QR code, which holds an address.
            await Scan(bench, i % 2 == 0 ? code : $"https://kits.example.com/b/{code}");
            Assert.Equal("packed", await bench.Verdict());
        }

        Assert.Contains("All packed", await bench.Page.Locator(".verdict").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(codes.Length, (await bench.Page.EvaluateAsync<int[]>("heard")).Count(pitch => pitch == 660));
        Assert.Equal("code", await bench.Page.EvaluateAsync<string>("document.activeElement.id"));
        Assert.Empty(bench.Complaints);
    }

    [Fact]
    public async Task Scanner_WhenTheBundleIsOfAnotherOrder_SaysSoAndChangesNothing()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, _, _) = await bench.Order();
        var (_, others, _) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");

        await Scan(bench, others[0]);

        Assert.Equal("bundle.other-order", await bench.Verdict());
        Assert.Contains("Wrong order", await bench.Page.Locator(".verdict[role=alert]").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(220, (await bench.Page.EvaluateAsync<int[]>("heard"))[0]);
        Assert.All((await bench.Shop.Bench.Get("/api/orders")).Ok.List("items"), o => Assert.Equal("reserved", o.Text("status")));
    }

    [Fact]
    public async Task Scanner_WhenTheBundleIsOfAnotherTier_SaysSoAndChangesNothing()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, codes, id) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}?tier=1");

        await Scan(bench, codes[0]);

        Assert.Equal("bundle.other-tier", await bench.Verdict());
        Assert.Equal("reserved", (await bench.Shop.Bench.Get($"/api/orders/{id}")).Ok.Text("status"));
    }

    [Fact]
    public async Task Scanner_WhenALabelIsReadTwice_SaysSo()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, codes, _) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");

        await Scan(bench, codes[0]);
        await Scan(bench, codes[0]);

        Assert.Equal("bundle.packed-before", await bench.Verdict());
    }

    [Theory]
    [InlineData("4006381333931")]
    [InlineData("<script>alert(1)</script>")]
    public async Task Scanner_WhenTheCodeIsNotOurs_SaysSoAndRunsNothing(string code)
    {
        await using var bench = await Bench.Open(chromium);
        var (number, _, _) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");

        await Scan(bench, code);

        Assert.Equal("bundle.code", await bench.Verdict());
        Assert.Empty(bench.Complaints);
    }

    [Fact]
    public async Task TakeItBack_WhenPressedAfterAScan_OpensTheBundleAndTheOrderStandsAsBefore()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, codes, id) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");
        await Scan(bench, codes[0]);
        Assert.Equal("picking", (await bench.Shop.Bench.Get($"/api/orders/{id}")).Ok.Text("status"));

        await bench.Page.ClickAsync("text=Take it back");
        await bench.Page.Locator("[data-verdict=undone]").WaitForAsync();

        Assert.Equal("reserved", (await bench.Shop.Bench.Get($"/api/orders/{id}")).Ok.Text("status"));
        await Scan(bench, codes[0]);
        Assert.Equal("packed", await bench.Verdict());
    }

    [Fact]
    public async Task Scan_WhenTheServiceIsAway_SaysThatNothingWasChanged()
    {
        await using var bench = await Bench.Open(chromium);
        var (number, codes, _) = await bench.Order();
        await bench.Page.GotoAsync($"/pack/{number}");
        await bench.Page.RouteAsync("**/pack/**", route => route.AbortAsync());

        await bench.Page.Keyboard.TypeAsync(codes[0]);
        await bench.Page.Keyboard.PressAsync("Enter");

        await bench.Page.Locator("[data-trouble]:visible").WaitForAsync();
    }
}
