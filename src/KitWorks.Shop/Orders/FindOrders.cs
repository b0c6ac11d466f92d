using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Orders by what somebody remembers of them: their number, or a part of the customer's name or of the reference. Newest first.</summary>
public sealed record FindOrders(string Text, int Limit = 50) : IQuery<IReadOnlyList<OrderSummary>>;

/// <summary>The id of the order with a number.</summary>
public sealed record FindOrderId(int Number) : IQuery<Guid>;

sealed class FindOrdersHandler(ShopDb db, Call call) : IRequestHandler<FindOrders, Outcome<IReadOnlyList<OrderSummary>>>, IRequestHandler<FindOrderId, Outcome<Guid>>
{
    public async Task<Outcome<IReadOnlyList<OrderSummary>>> Handle(FindOrders query, CancellationToken cancellationToken)
    {
        var text = query.Text.Trim().ToUpperInvariant();
        var number = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : -1;
        // The databases fold letters in their own ways; upper case is the one that both know.
        return await db.VisibleOrders(call)
            .Where(o => o.Number == number || o.CustomerName.ToUpper().Contains(text) || (o.Reference != null && o.Reference.ToUpper().Contains(text)))
            .OrderByDescending(o => o.Number).Take(query.Limit)
            .Select(o => new OrderSummary(o.Id, o.Number, o.Status, o.Quantity, o.CustomerName, o.Reference, o.PlacedAt)).ToListAsync(cancellationToken);
    }

    public async Task<Outcome<Guid>> Handle(FindOrderId query, CancellationToken cancellationToken) =>
        await db.VisibleOrders(call).Where(o => o.Number == query.Number).Select(o => (Guid?)o.Id).FirstOrDefaultAsync(cancellationToken) is { } id
            ? id
            : new Refusal(RefusalKind.NotFound, "order.unknown", $"There is no order {query.Number}.");
}
