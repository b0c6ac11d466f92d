using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>
/// Takes orders in the order they came, all in the transaction that it is called in. Nobody else writes meanwhile, so that
/// what each finds on the shelf can be reckoned beforehand; the ledger checks it once more.
/// </summary>
sealed class OrderTaking(ShopDb db, IMediator mediator, TimeProvider clock)
{
    public async Task<IReadOnlyList<Outcome<OrderAnswer>>> Take(IReadOnlyList<OrderAtDesk> orders, CancellationToken cancellationToken)
    {
        var shelf = await Shelf.Read(mediator, [.. orders.SelectMany(o => o.Order.Lines)], cancellationToken);
        var found = new List<(OrderAtDesk At, List<Shortage> Short)>();
        foreach (var order in orders)
        {
            var shortages = shelf.Take(order.Order.Lines);
            if (order.Order.WhenShort == WhenShort.Wait) shelf.Await(shortages);
            found.Add((order, shortages));
        }
        var taken = found.Where(f => f.Short.Count == 0 || f.At.Order.WhenShort == WhenShort.Wait).ToList();
        var answers = taken.Count == 0 ? [] : await Write(taken, cancellationToken);
        return [.. found.Select(f => answers.TryGetValue(f.At, out var answer) ? answer : (Outcome<OrderAnswer>)Short(f.Short))];
    }

    async Task<Dictionary<OrderAtDesk, OrderAnswer>> Write(List<(OrderAtDesk At, List<Shortage> Short)> taken, CancellationToken cancellationToken)
    {
        var now = clock.Moment();
        var number = await db.TakeNumbers(CounterQueries.Order, taken.Count, cancellationToken) - taken.Count;
        var orders = new List<Order>();
        foreach (var (at, shortages) in taken)
        {
            var order = Order.Place(++number, at.Owner, at.Order, now);
            if (shortages.Count == 0) order.Become(OrderStatus.Reserved, at.Owner, now);
            orders.Add(order);
        }
        var wishes = orders.Zip(taken).Where(x => x.First.HoldsStock).Select(x => new StockWish(x.Second.At.Order.Lines, x.First.StockReference, x.First.Owner)).ToList();
        if (!(await mediator.Send(new ReserveForAll(wishes), cancellationToken)).Value)
            throw new DbUpdateConcurrencyException($"The stock changed while {orders[0].StockReference} was being reserved.");
        db.AddAll(orders);
        db.AddAll([.. orders.Zip(taken, (order, t) => new OrderKit { OrderId = order.Id, Packed = t.At.Order.PackedKit })]);
        db.AddAll([.. orders.SelectMany(o => o.History)]);
        var bundles = (await mediator.Send(new OpenBundles([.. orders.Zip(taken, (o, t) => new BundlesToOpen(o.Id, o.Number, t.At.Order.Bundles, o.Quantity))]), cancellationToken)).Value;

        var answers = taken.Select((t, i) => (t.At, Answer: orders[i].Answer(t.At.Order.Lines, t.Short, bundles[i]))).ToDictionary(x => x.At, x => x.Answer);
        db.AddAll([.. answers.Select(x => x.Key.Answering.Row<OrderAnswer>(x.Value)).OfType<RememberedAnswer>()]);
        db.AddAll([.. answers.Select(x => x.Key.Audit.Entry(x.Key.Order, x.Value))]);
        await db.SaveChangesAsync(cancellationToken);
        return answers;
    }

    static Refusal Short(IReadOnlyList<Shortage> shortages) => new(RefusalKind.Conflict, "stock.short",
        $"Stock is short of {string.Join(", ", shortages.Select(s => $"{s.Short} × {s.Sku}"))}. Order with whenShort \"wait\", or fewer kits.");

    /// <summary>What new orders may take: what is available, less, where the oldest go first, what they wait for.</summary>
    sealed class Shelf(Dictionary<string, int> available, HashSet<string> awaited, bool oldestFirst)
    {
        public static async Task<Shelf> Read(IMediator mediator, IReadOnlyList<StockLine> lines, CancellationToken cancellationToken)
        {
            var awaited = (await mediator.Send(new FindAwaited(), cancellationToken)).Value;
            var wanted = lines.GroupBy(l => l.Sku).ToDictionary(g => g.Key, g => g.Sum(l => (long)l.Quantity));
            var available = (await mediator.Send(new FindAvailable([.. wanted.Keys]), cancellationToken)).Value;
            // Whose turn it is matters only where somebody goes short.
            var isShort = awaited.Count > 0 || wanted.Any(w => w.Value > available.GetValueOrDefault(w.Key));
            var oldestFirst = isShort && (await mediator.Send(new GetTurns(), cancellationToken)).Value == Turns.OldestFirst;
            return new(new(available), oldestFirst ? [.. awaited] : [], oldestFirst);
        }

        /// <summary>What is missing of these lines; where nothing is, they are taken.</summary>
        public List<Shortage> Take(IReadOnlyList<StockLine> lines)
        {
            var left = lines.Where(l => awaited.Contains(l.Sku)).Select(l => new Shortage(l.Sku, l.Quantity)).ToList();
            if (left.Count > 0) return left;
            var missing = lines.Select(l => new Shortage(l.Sku, l.Quantity - available.GetValueOrDefault(l.Sku))).Where(s => s.Short > 0).ToList();
            if (missing.Count == 0)
                foreach (var line in lines) available[line.Sku] -= line.Quantity;
            return missing;
        }

        /// <summary>An order that waits from now on has the first right to what it is short of.</summary>
        public void Await(IEnumerable<Shortage> shortages)
        {
            if (oldestFirst) awaited.UnionWith(shortages.Select(s => s.Sku));
        }
    }
}
