using KitWorks.Geometry;
using KitWorks.Shop.Auditing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Orders;

/// <summary>
/// Where orders wait to be taken. When the write lane has room, those that have come by then are taken together, a set of
/// rows a table. Should that fail, each is taken alone, so that none suffers for its neighbour.
/// </summary>
sealed class OrderDesk(IServiceScopeFactory scopes, WriteLane lane)
{
    /// <summary>The most orders that are taken together: enough to share the work, few enough that the first does not wait for long.</summary>
    const int Most = 64;

    readonly Lock gate = new();
    readonly Queue<WaitingAtDesk> waiting = new();
    bool isServed;

    /// <summary>Takes an order in its turn.</summary>
    public async Task<Outcome<OrderAnswer>> Take(TakeOrder order, string owner, Answering answering, AuditTrail audit, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var one = new WaitingAtDesk(new(order, owner, answering, audit));
        lock (gate)
        {
            waiting.Enqueue(one);
            if (!isServed)
            {
                isServed = true;
                // The desk outlives the call that happens to open it.
                using (ExecutionContext.SuppressFlow()) _ = Task.Run(Serve, CancellationToken.None);
            }
        }
        return await one.Done.Task;
    }

    async Task Serve()
    {
        while (true)
        {
            var together = new List<WaitingAtDesk>();
            try
            {
                // Who waits is asked only when the lane has come round, so that who came meanwhile goes along.
                await Ride(() => Next(together));
            }
            catch (Exception wrong)
            {
                await Alone(together, wrong);
            }
            foreach (var one in together) one.Answer();
            lock (gate)
            {
                if (waiting.Count > 0) continue;
                isServed = false;
                return;
            }
        }
    }

    /// <summary>What went wrong with many may be one's fault.</summary>
    async Task Alone(List<WaitingAtDesk> together, Exception wrong)
    {
        if (together.Count == 0) together = Next(together);
        foreach (var one in together)
        {
            if (together.Count == 1)
            {
                one.Wrong = wrong;
                continue;
            }
            try
            {
                await Ride(() => [one]);
            }
            catch (Exception own)
            {
                one.Wrong = own;
            }
        }
    }

    async Task Ride(Func<IReadOnlyList<WaitingAtDesk>> who)
    {
        await using var scope = scopes.CreateAsyncScope();
        var provider = scope.ServiceProvider;
        await lane.Ride(provider.GetRequiredService<ShopDb>(), async () =>
        {
            var together = who();
            var outcomes = await provider.GetRequiredService<OrderTaking>().Take([.. together.Select(o => o.Order)], CancellationToken.None);
            foreach (var (one, outcome) in together.Zip(outcomes)) one.Outcome = outcome;
            return true;
        }, _ => true, CancellationToken.None);
    }

    List<WaitingAtDesk> Next(List<WaitingAtDesk> together)
    {
        lock (gate)
            while (together.Count < Most && waiting.TryDequeue(out var one)) together.Add(one);
        return together;
    }

    sealed class WaitingAtDesk(OrderAtDesk order)
    {
        public OrderAtDesk Order => order;
        public TaskCompletionSource<Outcome<OrderAnswer>> Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
        public Outcome<OrderAnswer> Outcome { get; set; }
        public Exception? Wrong { get; set; }

        public void Answer()
        {
            if (Wrong is null) Done.SetResult(Outcome);
            else Done.SetException(Wrong);
        }
    }
}

/// <summary>An order that is to be taken, whose it is, how its answer is remembered, and who writes down that it was placed.</summary>
sealed record OrderAtDesk(TakeOrder Order, string Owner, Answering Answering, AuditTrail Audit);
