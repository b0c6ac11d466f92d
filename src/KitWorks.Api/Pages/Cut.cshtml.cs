using KitWorks.Kits;
using KitWorks.Shop.Orders;
using MediatR;

namespace KitWorks.Api.Pages;

/// <summary>What the saw has to do.</summary>
sealed class CutModel(IMediator mediator) : BenchPage(mediator)
{
    public IReadOnlyList<OpenOrder> Open { get; private set; } = [];
    public OpenOrder? Chosen { get; private set; }
    public Kit? Kit { get; private set; }

    public async Task OnGet(int? order)
    {
        Open = [.. (await Ask(new GetOpenOrders()) ?? []).Where(o => o.Status is OrderStatus.Reserved or OrderStatus.Picking)];
        Chosen = Open.FirstOrDefault(o => o.Number == order);
        if (Chosen is not null) Kit = (await Ask(new GetOrderKit(Chosen.Id)))?.Kit;
    }
}
