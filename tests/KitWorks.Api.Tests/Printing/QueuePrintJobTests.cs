namespace KitWorks.Api.Tests.Printing;

public sealed class QueuePrintJobTests
{
    // Nothing listens at port 1.
    static readonly Uri Away = new("ipp://127.0.0.1:1/ipp/print");

    [Fact]
    public async Task PrintJob_WhenSomethingIsUnknown_IsRefusedAndToldWhatThereIs()
    {
        await using var shop = await PrintShop.Open(Away);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var printer = (await shop.Bench.Print(order, printer: "cellar")).IsProblem(422, "printer.unknown", "#/printer");
        var what = (await shop.Bench.Print(order, "poster")).IsProblem(422, "request.invalid", "#/what");
        var tier = (await shop.Bench.Print(order, tier: 99)).IsProblem(422, "print-job.tier", "#/tier");
        (await shop.Bench.Print(order, "picklist", tier: 0)).IsProblem(422, "print-job.tier", "#/tier");
        (await shop.Bench.Post("/api/print-jobs", new { orderId = Guid.NewGuid(), what = "labels", printer = "bench" })).IsProblem(422, "order.unknown", "#/orderId");
        (await shop.Bench.Get($"/api/print-jobs/{Guid.NewGuid()}")).IsProblem(404, "print-job.unknown");

        Assert.Contains("\"bench\"", printer.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("\"packing-list\"", what.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("0 to", tier.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PrintJob_WhenNoPrinterIsSetUp_IsRefusedAndToldHowToSetOneUp()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var problem = (await shop.Bench.Print(order)).IsProblem(422, "printer.unknown", "#/printer");

        Assert.Contains("Printers:0:Uri", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Empty((await shop.Bench.Get("/api/printers")).Ok.List("items"));
    }

    [Fact]
    public async Task PrintJob_WhenAStorefrontAsks_IsForbidden()
    {
        await using var shop = await PrintShop.Open(Away);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Storefront.Print(order)).Is(403);
        (await shop.Storefront.Get("/api/printers")).Is(403);
        (await shop.Nobody.Print(order)).Is(401);
        (await shop.Admin.Print(order)).Is(202);
    }

    [Fact]
    public async Task PrintJob_WhenTheRequestIsRepeatedUnderItsKey_IsOneJob()
    {
        await using var shop = await PrintShop.Open(Away);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var first = (await shop.Bench.Print(order, once: "p-1")).Is(202);
        var again = (await shop.Bench.Print(order, once: "p-1")).Is(202);

        Assert.True(again.Replayed);
        Assert.Equal(first.Json.Id(), again.Json.Id());
        (await shop.Bench.Print(order, "picklist", once: "p-1")).IsProblem(422, "idempotency.mismatch");
    }

    [Fact]
    public async Task Retry_WhenTheJobIsUnderWay_IsRefused()
    {
        await using var shop = await PrintShop.Open(Away);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var job = (await shop.Bench.Print(order)).Is(202).Json;

        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/retry")).IsProblem(409, "print-job.status");
        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/cancel")).Is(200);
        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/cancel")).IsProblem(409, "print-job.status");
        (await shop.Bench.Post($"/api/print-jobs/{job.Id()}/retry")).Is(202);
        (await shop.Bench.Post($"/api/print-jobs/{Guid.NewGuid()}/retry")).IsProblem(404, "print-job.unknown");
    }

    [Fact]
    public async Task PrintJobs_WhenListed_ComeNewestFirstAndAPageAtATime()
    {
        await using var shop = await PrintShop.Open(Away);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var jobs = new List<Guid>();
        for (var i = 0; i < 5; i++) jobs.Insert(0, (await shop.Bench.Print(order)).Is(202).Json.Id());
        (await shop.Bench.Post($"/api/print-jobs/{jobs[1]}/cancel")).Is(200);

        var first = (await shop.Bench.Get("/api/print-jobs?limit=3")).Ok;
        var second = (await shop.Bench.Get($"/api/print-jobs?limit=3&after={first.Text("next")}")).Ok;

        Assert.Equal(jobs.Select(j => j.ToString()), first.Texts("items", "id").Concat(second.Texts("items", "id")));
        Assert.Equal([jobs[1].ToString()], (await shop.Bench.Get("/api/print-jobs?status=failed")).Ok.Texts("items", "id"));
        Assert.Equal(5, (await shop.Bench.Get($"/api/print-jobs?orderId={order.Id()}&printer=bench")).Ok.List("items").Count);
        Assert.Empty((await shop.Bench.Get("/api/print-jobs?printer=cellar")).Ok.List("items"));
        (await shop.Bench.Get("/api/print-jobs?status=lost")).IsProblem(422, "request.invalid", "#/status");
        (await shop.Bench.Get("/api/print-jobs?after=bm9uc2Vuc2U")).IsProblem(400, "list.after");
        (await shop.Bench.Get("/api/print-jobs?limit=0")).IsProblem(400, "list.limit");
        (await shop.Storefront.Get("/api/print-jobs")).Is(403);
    }

    [Fact]
    public async Task PrintJob_OfLabels_StartsWhereTheSheetIsFree()
    {
        await using var shop = await PrintShop.Open(Away, ("Printers:0:Labels", "a4"));
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var job = (await Ask("labels", 8, "96x64")).Is(202).Json;
        var place = (await Ask("labels", 9, null)).IsProblem(422, "label.start-at", "#/startAt");
        var template = (await Ask("labels", 1, "poster")).IsProblem(422, "label.template-unknown", "#/template");
        (await Ask("picklist", 2, null)).IsProblem(422, "print-job.labels-only", "#/startAt");

        Assert.Equal((8, "96x64"), (job.Int("startAt"), job.Text("template")));
        Assert.Equal(8, (await shop.Bench.Job(job)).Int("startAt"));
        Assert.Contains("1 to 8", place.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("96x64", template.Text("detail"), StringComparison.Ordinal);

        Task<Answer> Ask(string what, int startAt, string? template) =>
            shop.Bench.Post("/api/print-jobs", new { orderId = order.Id(), what, printer = "bench", startAt, template });
    }
}
