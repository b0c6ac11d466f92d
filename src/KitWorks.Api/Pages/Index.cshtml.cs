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
            Part("ship", "To hand to the carrier", "to ship", OrderStatus.Packed),
            Part("pack", "To finish packing", "begun", OrderStatus.Picking),
            Part("pick", "To pick, cut and pack", "to pick", OrderStatus.Reserved),
            Part("wait", "Waiting for stock", "waiting", OrderStatus.Waiting),
        ];
        var shelves = (await Ask(new ListStock(200, null)))?.Items ?? [];
        Low = [.. shelves.Where(i => i.Available < i.ReorderAt).OrderBy(i => i.Available - i.ReorderAt)];

        TodayPart Part(string id, string title, string inShort, OrderStatus status) => new(id, title, inShort, status, [.. open.Where(o => o.Status == status)]);
    }
}

/// <summary>One sort of work, and the orders that need it.</summary>
sealed record TodayPart(string Id, string Title, string Short, OrderStatus Status, IReadOnlyList<OpenOrder> Orders);
