using System.Text.Json;
using UglyToad.PdfPig;

namespace KitWorks.Shop.Tests.Sawing;

public sealed class PlanBatchTests
{
    static Task<Answer> Batch(OpenShop shop, params JsonElement[] orders) => shop.Bench.Post("/api/batches", new { orderIds = orders.Select(o => o.Id()) });

    static async Task<int> Reserved(OpenShop shop) => (await shop.Bench.Item("pipe-pvc-33")).Int("reserved");

    [Fact]
    public async Task Preview_WhenAsked_SaysWhatIsSavedAndKeepsNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var orders = new[] { (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created, (await shop.Storefront.Order(Designs.Greenhouse)).Created };
        var before = await Reserved(shop);

        var pipe = (await shop.Bench.Post("/api/batches/preview", new { orderIds = orders.Select(o => o.Id()) })).Ok.At("pipes/0");

        Assert.Equal(before, pipe.Int("saving/lengthsApart"));
        Assert.Equal(pipe.Int("saving/lengthsApart") - pipe.Int("saving/lengths"), pipe.Int("saving/lengthsSaved"));
        Assert.Equal(before, await Reserved(shop));
        Assert.Empty((await shop.Bench.Get("/api/batches")).Ok.List("items"));
    }

    [Fact]
    public async Task Batch_WhenMade_TakesOverThePipeAndFreesWhatItSaves()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var (first, second) = ((await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created, (await shop.Storefront.Order(Designs.Greenhouse)).Created);

        var batch = (await Batch(shop, first, second)).Created;

        Assert.Equal(batch.Int("pipes/0/saving/lengths"), await Reserved(shop));
        Assert.Equal("planned", batch.Text("status"));
        foreach (var order in new[] { first, second })
        {
            var now = (await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok;
            Assert.Equal(("reserved", batch.Int("number")), (now.Text("status"), now.Int("batch")));
            Assert.DoesNotContain("pipe-pvc-33", now.Texts("reservations", "sku"));
        }
        // Every strut of every bundle is traced.
        var struts = new[] { first, second }.SelectMany(o => o.List("bundles").Where(b => b.Text("kind") == "struts").Select(b => (o.Int("number"), b.Int("number"), b.Int("contents/0/count"))));
        Assert.Equal(struts.Order(), batch.List("pipes/0/pieces").SelectMany(p => p.List("goes")).Select(g => (g.Int("order"), g.Int("bundle"), g.Int("count"))).Order());
        (await Batch(shop, first)).IsProblem(409, "order.in-batch");
        (await shop.Storefront.Post($"/api/orders/{first.Id()}/cancel")).IsProblem(409, "order.in-batch");
        await shop.LedgerAddsUp();
    }

    // The one saves pipe that another order waits for.
    [Fact]
    public async Task Batch_WhenItServesWaitingOrders_TheyAreReservedInTheSameTransaction()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var apart = (await shop.Storefront.Order(Designs.SmallDome)).Created.List("reservations").Single(r => r.Text("sku") == "pipe-pvc-33").Int("quantity");
        _ = (await shop.Bench.Post("/api/stock/counts", new { lines = new[] { new { sku = "pipe-pvc-33", counted = apart } }, reason = "fire" })).Ok;
        var waits = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        Assert.Equal("waiting", waits.Text("status"));
        _ = (await shop.Bench.Receive("pipe-pvc-33", apart - 1)).Ok;
        Assert.Equal("waiting", await shop.Bench.StatusOf(waits));
        // What is missing is one length; a remnant on the shelf makes up for it.
        _ = (await shop.Bench.Post("/api/stock/remnants", new { pipeSku = "pipe-pvc-33", length = "3000 mm", count = 2 })).Ok;

        var batch = (await Batch(shop, waits)).Created;

        Assert.True(batch.Int("pipes/0/saving/lengths") < apart);
        Assert.Equal("reserved", await shop.Bench.StatusOf(waits));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Batch_WhenStockIsShort_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await Batch(shop, order)).IsProblem(409, "stock.short");

        Assert.True((await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok.IsNull("batch"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Pattern_WhenMarkedCut_PipeLeavesAndRemnantsComeIn()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var batch = (await Batch(shop, order)).Created;
        var onHand = (await shop.Bench.Item("pipe-pvc-33")).Int("onHand");

        var remnants = new List<string>();
        foreach (var pattern in batch.List("pipes/0/patterns"))
        {
            var path = $"/api/batches/{batch.Id()}/patterns/{pattern.Int("number")}/cut";
            if (pattern.Int("times") > 1) remnants.AddRange((await shop.Bench.Post(path, new { times = 1 })).Ok.Texts("remnants", "code"));
            remnants.AddRange((await shop.Bench.Post(path)).Ok.Texts("remnants", "code"));
            (await shop.Bench.Post(path, new { times = 1 })).Is(409);
        }

        var done = (await shop.Bench.Get($"/api/batches/{batch.Id()}")).Ok;
        Assert.Equal("done", done.Text("status"));
        Assert.Equal(onHand - batch.Int("pipes/0/saving/lengths"), (await shop.Bench.Item("pipe-pvc-33")).Int("onHand"));
        Assert.Equal(batch.List("pipes/0/patterns").Where(p => p.Number("remnantMm") >= 300).Sum(p => p.Int("times")), remnants.Count);
        Assert.Equal(remnants.Order(), (await shop.Bench.Get("/api/stock/remnants?limit=200")).Ok.Texts("items", "code").Order());
        using var labels = PdfDocument.Open((await shop.Bench.Get($"/api/batches/{batch.Id()}/remnant-labels.pdf")).Is(200).Bytes);
        Assert.All(remnants, code => Assert.Contains(labels.GetPages(), p => p.Text.Contains(code, StringComparison.Ordinal)));
        await shop.LedgerAddsUp();

        // Shipped like any other: what is left of its stock leaves with it.
        await shop.Bench.Pack(order);
        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/ship")).Ok;
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Remnants_WhenABatchLeftThem_ALaterBatchUsesThemFirst()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        _ = (await shop.Bench.Post("/api/stock/remnants", new { pipeSku = "pipe-pvc-33", length = "2 m", count = 5, bin = "R-9" })).Ok;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var batch = (await Batch(shop, order)).Created;

        var used = batch.List("pipes/0/patterns").SelectMany(p => p.List("remnants")).Select(r => r.GetString()!).ToList();
        Assert.NotEmpty(used);
        Assert.Equal(used.Order(), (await shop.Bench.Get("/api/stock/remnants")).Ok.List("items").Where(r => r.Text("status") == "taken" && r.Int("forBatch") == batch.Int("number")).Select(r => r.Text("code")));
        Assert.Equal(used.Count, batch.Int("pipes/0/saving/remnantsUsed"));
        Assert.True(batch.Int("pipes/0/saving/lengths") < batch.Int("pipes/0/saving/lengthsApart"));
        (await shop.Bench.Post($"/api/stock/remnants/{used[0]}/scrap")).IsProblem(409, "remnant.status");
        var byRemnant = batch.List("pipes/0/patterns").First(p => p.IsNull("sku"));
        _ = (await shop.Bench.Post($"/api/batches/{batch.Id()}/patterns/{byRemnant.Int("number")}/cut")).Ok;
        Assert.DoesNotContain(byRemnant.List("remnants")[0].GetString(), (await shop.Bench.Get("/api/stock/remnants?limit=200")).Ok.Texts("items", "code"));
    }

    [Fact]
    public async Task ReadyStruts_WhenTheyLieThere_ArePickedFirstAndComeBackWhenTheBatchIsDissolved()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var reserved = await Reserved(shop);
        var length = (await shop.Bench.Get($"/api/orders/{order.Id()}/kit")).Ok.Number("strutTypes/0/cutLengthMm");
        _ = (await shop.Bench.Post("/api/stock/ready-struts", new { pipeSku = "pipe-pvc-33", length = $"{length:0.0} mm", counted = 12 })).Ok;

        var batch = (await Batch(shop, order)).Created;
        Assert.Equal(12, batch.Int("pipes/0/saving/picked"));
        Assert.Empty((await shop.Bench.Get("/api/stock/ready-struts")).Ok.List("items"));

        Assert.Equal("dissolved", (await shop.Bench.Post($"/api/batches/{batch.Id()}/dissolve")).Ok.Text("status"));
        Assert.Equal(12, (await shop.Bench.Get("/api/stock/ready-struts")).Ok.Int("items/0/onHand"));
        Assert.Equal(reserved, await Reserved(shop));
        Assert.True((await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok.IsNull("batch"));
        (await shop.Bench.Post($"/api/batches/{batch.Id()}/dissolve")).IsProblem(409, "batch.status");
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Order_WhenItsBatchIsCutAndItIsCancelled_ItsStrutsLieReady()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var batch = (await Batch(shop, order)).Created;
        foreach (var pattern in batch.List("pipes/0/patterns")) _ = (await shop.Bench.Post($"/api/batches/{batch.Id()}/patterns/{pattern.Int("number")}/cut")).Ok;

        _ = (await shop.Storefront.Post($"/api/orders/{order.Id()}/cancel")).Ok;

        Assert.Equal(65, (await shop.Bench.Get("/api/stock/ready-struts")).Ok.List("items").Sum(i => i.Int("onHand")));
        // The next of the kind cuts nothing.
        var next = (await Batch(shop, (await shop.Storefront.Order(Designs.SmallDome)).Created)).Created;
        Assert.Equal(("done", 0, 65), (next.Text("status"), next.Int("pipes/0/saving/lengths"), next.Int("pipes/0/saving/picked")));
        await shop.LedgerAddsUp();
    }

    // Six at once want the same order: one gets it.
    [Fact]
    public async Task Batch_WhenManyWantOneOrderAtOnce_OneGetsIt()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Batch(shop, order)));

        Assert.Single(answers, a => a.Status == 201);
        Assert.All(answers.Where(a => a.Status != 201), a => a.IsProblem(409, "order.in-batch"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task CutSheet_OfABatch_NamesOrdersAndBundles()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var batch = (await Batch(shop, order)).Created;

        using var pdf = PdfDocument.Open((await shop.Bench.Get($"/api/batches/{batch.Id()}/cut-sheet.pdf?paperSize=letter&units=feet")).Is(200).Bytes);

        Assert.Contains($"{order.Int("number")}", string.Concat(pdf.GetPages().Select(p => p.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Batch_WhenWrong_IsRefused()
    {
        await using var shop = await OpenShop.Open();

        (await Batch(shop)).IsProblem(422, "request.invalid", "#/orderIds");
        (await shop.Bench.Post("/api/batches", new { orderIds = new[] { Guid.NewGuid() } })).IsProblem(422, "order.unknown", "#/orderIds/0");
        (await shop.Bench.Get($"/api/batches/{Guid.NewGuid()}")).IsProblem(404, "batch.unknown");
        (await shop.Storefront.Get("/api/batches")).IsProblem(403, "access.role");
        (await shop.Bench.Post("/api/stock/remnants", new { pipeSku = "pipe-none", length = "2 m" })).IsProblem(422, "stock.unknown-sku", "#/pipeSku");
        (await shop.Bench.Post("/api/stock/remnants", new { pipeSku = "pipe-pvc-33" })).IsProblem(422, "request.invalid", "#/length");
    }
}
