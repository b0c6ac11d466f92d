using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using MediatR;

namespace KitWorks.Api.Pages;

/// <summary>What there is to do now, the oldest promise first.</summary>
sealed class TodayModel(IMediator mediator) : BenchPage(mediator)
{
    public IReadOnlyList<TodayPart> Parts { get; private set; } = [];
    public IReadOnlyList<StockItemAnswer> Low { get; private set; } = [];

    public async Task OnGet()
    {
        var open = await Ask(new GetOpenOrders()) ?? [];
        Parts =
        [
            new("ship", "To hand to the carrier", "to ship", "Nothing is packed and waiting for the carrier.", Of(OrderStatus.Packed)),
            new("pack", "To finish packing", "begun", "No order is half packed.", Of(OrderStatus.Picking)),
            new("pick", "To pick and cut", "to pick", "Nothing new to pick.", Of(OrderStatus.Reserved)),
            new("wait", "Waiting for stock", "waiting", "No order waits for stock.", Of(OrderStatus.Waiting)),
        ];
        var shelves = (await Ask(new ListStock(200, null)))?.Items ?? [];
        Low = [.. shelves.Where(i => i.Available < i.ReorderAt).OrderBy(i => i.Available - i.ReorderAt)];

        List<OpenOrder> Of(OrderStatus status) => [.. open.Where(o => o.Status == status)];
    }
}

/// <summary>One sort of work, and the orders that need it.</summary>
sealed record TodayPart(string Id, string Title, string Short, string Nothing, IReadOnlyList<OpenOrder> Orders);
