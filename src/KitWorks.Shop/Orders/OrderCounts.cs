using System.Diagnostics.Metrics;
using KitWorks.Shop.Counting;

namespace KitWorks.Shop.Orders;

/// <summary>Counts orders as they come and go, what was reserved for them, and what was short.</summary>
sealed class OrderCounts :
    IAfterwards<PlaceOrder, OrderAnswer>, IAfterwards<CancelOrder, OrderAnswer>, IAfterwards<ShipOrder, OrderAnswer>
{
    static readonly Counter<long> Orders = ShopMeter.Meter.CreateCounter<long>("kitworks.orders", "{order}", "Orders, by what became of them");
    static readonly Counter<long> Reserved = ShopMeter.Meter.CreateCounter<long>("kitworks.reservations", "{item}", "Stock items reserved when orders were placed");
    static readonly Counter<long> Short = ShopMeter.Meter.CreateCounter<long>("kitworks.shortages", "{item}", "Stock items short when orders were placed");

    public void After(PlaceOrder request, OrderAnswer answer)
    {
        Became(answer);
        Reserved.Add(answer.Reservations.Sum(l => (long)l.Quantity));
        Short.Add(answer.Shortages.Sum(s => (long)s.Short));
    }

    public void After(CancelOrder request, OrderAnswer answer) => Became(answer);

    public void After(ShipOrder request, OrderAnswer answer) => Became(answer);

    static void Became(OrderAnswer order) => Orders.Add(1, new KeyValuePair<string, object?>("status", order.Status.ToString().ToLowerInvariant()));
}
