using KitWorks.Shop.Orders;
using MediatR;

namespace KitWorks.Api.Pages.Orders;

/// <summary>All orders, newest first, or those of one state.</summary>
sealed class OrdersModel(IMediator mediator) : BenchPage(mediator)
{
    const int PageLength = 50;

    public IReadOnlyList<OrderSummary> Items { get; private set; } = [];
    public string? Older { get; private set; }
    public OrderStatus? Status { get; private set; }
    public string? Search { get; private set; }

    public async Task OnGet(OrderStatus? status, string? after, string? q)
    {
        Status = status;
        if (!string.IsNullOrWhiteSpace(q))
        {
            Search = q.Trim();
            Items = await Ask(new FindOrders(Search)) ?? [];
            return;
        }
        if (await Ask(new ListOrders(PageLength, after, status)) is { } page) (Items, Older) = (page.Items, page.Next);
    }
}
