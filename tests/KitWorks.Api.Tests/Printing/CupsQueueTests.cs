namespace KitWorks.Api.Tests.Printing;

public sealed class CupsQueueTests
{
    [Fact]
    public async Task PrintJob_WhenItGoesThroughACupsQueue_IsDoneWhenTheQueueIs()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var queue = await CupsQueue.For(printer.Uri);
        await using var shop = await PrintShop.Open(queue.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var seen = (await shop.Bench.Get("/api/printers")).Ok.At("items/0");
        await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "done");

        Assert.Equal("idle", seen.Text("state"));
        Assert.Equal(
            (await shop.Bench.Get($"/api/orders/{order.Id()}/labels.pdf")).Is(200).Bytes,
            await File.ReadAllBytesAsync(Assert.Single(printer.Sent), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task PrintJob_WhenTheQueuesAnswerIsLost_IsFoundInTheQueueAndNotSentAgain()
    {
        await using var printer = await RealPrinter.SwitchedOn();
        await using var queue = await CupsQueue.For(printer.Uri);
        await using var relay = new Relay(queue.Uri) { Loses = Loss.Answer };
        await using var shop = await PrintShop.Open(new(relay.Uri, queue.Uri.AbsolutePath));
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "done");

        Assert.Equal(1, relay.Documents);
        Assert.Single(printer.Sent);
    }
}
