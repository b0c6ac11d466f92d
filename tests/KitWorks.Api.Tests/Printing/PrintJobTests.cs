namespace KitWorks.Api.Tests.Printing;

/// <summary>Print jobs on a real IPP printer.</summary>
public sealed class PrintJobTests
{
    [Theory]
    [InlineData("labels", "labels.pdf?dpi=203")]
    [InlineData("picklist", "picklist.pdf")]
    [InlineData("cut-plan", "cut-plan.pdf")]
    [InlineData("packing-list", "packing-list.pdf")]
    [InlineData("guide", "guide.pdf")]
    public async Task PrintJob_WhenThePrinterIsReady_IsDoneAndThePrinterHasTheDocumentByteForByte(string what, string address)
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answer = (await shop.Bench.Print(order, what)).Is(202);

        Assert.Equal($"/api/print-jobs/{answer.Json.Id()}", answer.Headers.Location!.ToString());
        var done = await shop.Bench.JobIs(answer.Json, "done");
        Assert.Equal(("printed", "bench"), (done.Text("detail"), done.Text("createdBy")));
        Assert.Equal((await shop.Bench.Get($"/api/orders/{order.Id()}/{address}")).Is(200).Bytes, await File.ReadAllBytesAsync(Assert.Single(printer.Sent), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task PrintJob_WhenPaperIsOut_SaysSoAndIsDoneAfterRefill()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.TakePaperOut();

        var job = (await shop.Bench.Print(order)).Is(202).Json;
        var held = await shop.Bench.JobThat(job, j => j.HeldUpBy("media-empty"));
        var seen = (await shop.Bench.Get("/api/printers")).Ok.At("items/0");
        printer.Refill();
        var done = await shop.Bench.JobIs(job, "done");

        Assert.Equal(("printing", "paper out"), (held.Text("status"), held.Text("detail")));
        Assert.Contains("paper out", seen.Texts("reasons", "detail"));
        Assert.Empty(done.List("reasons"));
        Assert.Single(printer.Sent);
    }

    [Fact]
    public async Task PrintJob_WhenThePrinterIsOff_WaitsAndIsPrintedOnceWhenItIsOn()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.SwitchOff();

        var job = (await shop.Bench.Print(order)).Is(202).Json;
        var waiting = await shop.Bench.JobThat(job, j => j.HeldUpBy("away"));
        var seen = (await shop.Bench.Get("/api/printers")).Ok.At("items/0");
        await printer.SwitchOn();
        await shop.Bench.JobIs(job, "done");

        Assert.Equal("queued", waiting.Text("status"));
        Assert.Equal("away", seen.Text("state"));
        Assert.Single(printer.Sent);
    }

    [Fact]
    public async Task PrintJob_WhenThePrinterIsSwitchedOffOverItAndForgets_IsUnknownAndNotSentAgain()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.TakePaperOut();
        var job = (await shop.Bench.Print(order)).Is(202).Json;
        await shop.Bench.JobThat(job, j => j.HeldUpBy("media-empty"));

        printer.SwitchOff();
        var away = await shop.Bench.JobThat(job, j => j.HeldUpBy("away"));
        printer.Refill();
        await printer.SwitchOn();
        var lost = await shop.Bench.JobIs(job, "unknown");

        Assert.Equal("printing", away.Text("status"));
        Assert.Contains("no longer knows", lost.Text("detail"), StringComparison.Ordinal);
        Assert.Single(printer.Sent);
        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/retry")).Is(202);
        Assert.Equal(2, (await shop.Bench.JobIs(job, "done")).Int("round"));
        Assert.Equal(2, printer.Sent.Count);
    }

    [Fact]
    public async Task PrintJob_WhenThePrinterIsBusyWithAnothers_IsSentAgainUntilItIsTaken()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        // Two shops at one printer, which takes one job at a time.
        await using var other = await PrintShop.Open(printer.Uri);
        await using var shop = await PrintShop.Open(printer.Uri);
        var others = (await other.Storefront.Order(Designs.SmallDome)).Created;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.TakePaperOut();
        var first = (await other.Bench.Print(others)).Is(202).Json;
        await other.Bench.JobThat(first, j => j.HeldUpBy("media-empty"));

        var job = (await shop.Bench.Print(order)).Is(202).Json;
        var waiting = await shop.Bench.JobThat(job, j => j.HeldUpBy("busy"));
        printer.Refill();
        await shop.Bench.JobIs(job, "done");

        Assert.Equal("queued", waiting.Text("status"));
        await other.Bench.JobIs(first, "done");
        Assert.Equal(2, printer.Sent.Count);
    }

    [Fact]
    public async Task PrintJobs_WhenSeveralAreQueued_ArePrintedOneAfterAnotherAsTheyCame()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.TakePaperOut();
        var first = (await shop.Bench.Print(order)).Is(202).Json;
        await shop.Bench.JobThat(first, j => j.HeldUpBy("media-empty"));
        var second = (await shop.Bench.Print(order, tier: 1)).Is(202).Json;
        var third = (await shop.Bench.Print(order, "picklist")).Is(202).Json;

        (await shop.Bench.Post($"/api/print-jobs/{second.Id()}/cancel")).Is(200);
        printer.Refill();
        await shop.Bench.JobIs(third, "done");

        Assert.Equal(["done", "failed"], [(await shop.Bench.Job(first)).Text("status"), (await shop.Bench.Job(second)).Text("status")]);
        Assert.Equal("cancelled by bench", (await shop.Bench.Job(second)).Text("detail"));
        Assert.Equal(2, printer.Sent.Count);
    }

    [Fact]
    public async Task PrintJob_WhenItIsCancelledAtThePrinter_EndsThere()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.TakePaperOut();
        var job = (await shop.Bench.Print(order)).Is(202).Json;
        await shop.Bench.JobThat(job, j => j.HeldUpBy("media-empty"));

        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/cancel")).Is(200);
        await shop.Bench.JobThat(job, j => j.Text("detail").Contains("give it up", StringComparison.Ordinal));
        printer.Refill();

        Assert.Contains("cancelled", (await shop.Bench.JobIs(job, "failed")).Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PrintJob_WhenTheEngineFails_IsFailedAndSaysSo()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        printer.Break();

        var failed = await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "failed");

        Assert.Equal("the printer gave up", failed.Text("detail"));
    }

    [Theory]
    [InlineData("Pdf", "labels", "does not take this document as it is")]
    [InlineData("Auto", "picklist", "papers are printed from PDF")]
    public async Task PrintJob_WhenThePrinterDoesNotTakeItsFormat_IsFailedAndSaysSo(string form, string what, string detail)
    {
        await using var printer = await RealPrinter.SwitchedOn(formats: "image/pwg-raster");
        await using var shop = await PrintShop.Open(printer.Uri, ("Printers:0:Form", form));
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var failed = await shop.Bench.JobIs((await shop.Bench.Print(order, what)).Is(202).Json, "failed");

        Assert.Contains(detail, failed.Text("detail"), StringComparison.Ordinal);
        Assert.Empty(printer.Sent);
    }

    [Fact]
    public async Task PrintJob_WhenThePathIsWrong_IsFailedAndSaysSo()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var shop = await PrintShop.Open(new(printer.Uri, "/ipp/nothing"));
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var failed = await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "failed");

        Assert.Contains("nothing prints at this address", failed.Text("detail"), StringComparison.Ordinal);
    }
}
