using KitWorks.Api.Tests.Verbs;

namespace KitWorks.Api.Tests.Printing;

/// <summary>What may have been printed is never sent again unless a person says so.</summary>
public sealed class LostAnswerTests
{
    [Fact]
    public async Task PrintJob_WhenTheAnswerIsLost_IsFoundAtThePrinterByItsNameAndNotSentAgain()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var relay = new Relay(printer.Uri) { Loses = Loss.Answer };
        await using var shop = await PrintShop.Open(relay.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "done");

        Assert.Equal(1, relay.Documents);
        Assert.Single(printer.Sent);
    }

    [Fact]
    public async Task PrintJob_WhenThePrinterTakesTooLongToAnswer_IsFoundThereToo()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var relay = new Relay(printer.Uri) { Loses = Loss.Silence };
        await using var shop = await PrintShop.Open(relay.Uri, ("Printing:TakeSeconds", "3"));
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "done");

        Assert.Equal(1, relay.Documents);
    }

    [Fact]
    public async Task PrintJob_WhenTheDocumentIsLostOnItsWay_IsUnknownUntilAPersonSendsItAgain()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var relay = new Relay(printer.Uri) { Loses = Loss.Request };
        await using var shop = await PrintShop.Open(relay.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var job = (await shop.Bench.Print(order)).Is(202).Json;
        await shop.Bench.JobIs(job, "unknown");

        // A job behind it is printed, so that the worker has had its turns.
        relay.Loses = Loss.None;
        await shop.Bench.JobIs((await shop.Bench.Print(order, "picklist")).Is(202).Json, "done");
        Assert.Equal("unknown", (await shop.Bench.Job(job)).Text("status"));
        Assert.Equal(2, relay.Documents);

        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/retry")).Is(202);
        await shop.Bench.JobIs(job, "done");
        Assert.Equal(3, relay.Documents);
    }

    [Theory]
    [InlineData(true, "unknown", 1)]
    [InlineData(false, "done", 1)]
    public async Task PrintJob_WhenTheProgramIsKilled_IsSentOnceOrNotAgain(bool whileSending, string status, int documents)
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var relay = new Relay(printer.Uri) { Loses = whileSending ? Loss.Silence : Loss.None };
        await using var desk = await OpenShop.Open();
        var order = (await desk.Storefront.Order(Designs.SmallDome)).Created;
        if (!whileSending) printer.SwitchOff();
        var job = await KilledOverAJob(desk, relay, order, whileSending);

        // A printer that was switched off and on remembers nothing.
        if (whileSending) printer.SwitchOff();
        await printer.SwitchOn();
        relay.Loses = Loss.None;
        await desk.Database.Sql("UPDATE print_jobs SET NextAt = 1");
        await using var shop = await desk.AnotherInstance(PrintShop.Settings(relay.Uri));

        await shop.Bench.JobIs(job, status);
        await shop.Bench.JobIs((await shop.Bench.Print(order, "picklist")).Is(202).Json, "done");
        Assert.Equal(status, (await shop.Bench.Job(job)).Text("status"));
        Assert.Equal(documents + 1, relay.Documents);
    }

    static async Task<System.Text.Json.JsonElement> KilledOverAJob(OpenShop desk, Relay relay, System.Text.Json.JsonElement order, bool whileSending)
    {
        var url = $"http://127.0.0.1:{RealPrinter.FreePort()}";
        var folder = Directory.CreateTempSubdirectory("kitworks-killed-");
        (string Key, string? Value)[] settings = [.. OpenShop.SettingsFor(desk.Database.Settings).Where(s => s.Item1 != "urls"), .. PrintShop.Settings(relay.Uri)];
        using var process = KitWorksProcess.Start(folder.FullName, settings, "serve", "--urls", url);
        try
        {
            using var http = new HttpClient { BaseAddress = new(url) };
            var bench = new Caller(http, desk.Keys.Bench);
            await Patience.Until(async () => await Answers(http), "the program");
            var job = (await bench.Print(order)).Is(202).Json;
            await bench.JobThat(job, j => whileSending ? j.Text("status") == "sending" && relay.Documents == 1 : j.HeldUpBy("away"));
            return job;
        }
        finally
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            folder.Delete(recursive: true);
        }
    }

    static async Task<bool> Answers(HttpClient http)
    {
        try
        {
            return (await http.GetAsync(new Uri("/health/live", UriKind.Relative), TestContext.Current.CancellationToken)).IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
