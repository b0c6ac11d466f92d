using System.Data.Common;
using System.Runtime.ExceptionServices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Storage;

/// <summary>
/// Where everything is written: one transaction at a time, and in it, in the order they came, all the commands that came
/// while the one before was being committed. Each command stands behind a savepoint of its own, so that one that is refused
/// or fails takes nothing from its neighbours; none is answered before the commit that they share.
/// </summary>
sealed class WriteLane(IServiceScopeFactory scopes)
{
    /// <summary>The most commands in one transaction: enough to share a commit, few enough that the first does not wait for long.</summary>
    const int Most = 64;

    readonly Lock gate = new();
    readonly Queue<Rider> waiting = new();
    bool running;

    /// <summary>Runs a piece of work on <paramref name="db"/> in the next transaction; what it wrote is kept where <paramref name="keep"/> says so.</summary>
    public async Task<T> Ride<T>(ShopDb db, Func<Task<T>> work, Func<T, bool> keep, CancellationToken cancellationToken)
    {
        T? result = default;
        var rider = new Rider(db, async () => keep(result = await work()), ExecutionContext.Capture(), cancellationToken);
        lock (gate)
        {
            waiting.Enqueue(rider);
            if (!running)
            {
                running = true;
                // The lane outlives the call that happens to start it.
                using (ExecutionContext.SuppressFlow()) _ = Task.Run(Drive, CancellationToken.None);
            }
        }
        await rider.Done.Task;
        return result!;
    }

    async Task Drive()
    {
        while (true)
        {
            var riders = new List<Rider>();
            lock (gate)
            {
                while (riders.Count < Most && waiting.TryDequeue(out var rider)) riders.Add(rider);
                running = riders.Count > 0;
            }
            if (riders.Count == 0) return;
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                await OneTransaction(scope.ServiceProvider.GetRequiredService<ShopDb>(), riders);
            }
            catch (Exception lost)
            {
                // The transaction could not be begun, was broken off, or was not committed: it is gone for all of its riders.
                foreach (var rider in riders) rider.Fault ??= lost;
            }
            foreach (var rider in riders) rider.Arrive();
        }
    }

    static async Task OneTransaction(ShopDb lane, List<Rider> riders)
    {
        await lane.Database.OpenConnectionAsync();
        await using var transaction = await lane.Database.BeginTransactionAsync();
        await lane.Database.OneWriterAtATime();
        if (riders is [var only])
        {
            if (await only.GoAlone(lane.Database.GetDbConnection(), transaction)) await transaction.CommitAsync();
            return;
        }
        foreach (var rider in riders) await rider.Go(lane.Database.GetDbConnection(), transaction);
        await transaction.CommitAsync();
    }

    /// <summary>A command that waits for its transaction.</summary>
    sealed class Rider(ShopDb db, Func<Task<bool>> work, ExecutionContext? context, CancellationToken cancellationToken)
    {
        public TaskCompletionSource Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
        public Exception? Fault { get; set; }

        /// <summary>Runs in a transaction that is nobody else's, and needs no savepoint; false where nothing of it is to be kept.</summary>
        public async Task<bool> GoAlone(DbConnection connection, IDbContextTransaction transaction) => !IsGone() && await Run(connection, transaction);

        /// <summary>Runs between others.</summary>
        public async Task Go(DbConnection connection, IDbContextTransaction transaction)
        {
            const string before = "before";
            if (IsGone()) return;
            await transaction.CreateSavepointAsync(before, CancellationToken.None);
            if (await Run(connection, transaction)) return;
            try
            {
                await transaction.RollbackToSavepointAsync(before, CancellationToken.None);
            }
            catch (DbException) when (Fault is not null)
            {
                // The fault broke the whole transaction off, as a full disk does; it is everybody's.
                ExceptionDispatchInfo.Throw(Fault);
            }
        }

        public void Arrive()
        {
            if (Fault is null) Done.SetResult();
            else Done.SetException(Fault);
        }

        /// <summary>Whether the caller has given up meanwhile.</summary>
        bool IsGone()
        {
            if (cancellationToken.IsCancellationRequested) Fault = new OperationCanceledException(cancellationToken);
            return Fault is not null;
        }

        async Task<bool> Run(DbConnection connection, IDbContextTransaction transaction)
        {
            await using (await db.Database.Borrow(connection, transaction))
            {
                try
                {
                    return await AsItsCaller();
                }
                catch (Exception fault)
                {
                    Fault = fault;
                    return false;
                }
            }
        }

        /// <summary>Runs the work with the caller's activity and culture.</summary>
        Task<bool> AsItsCaller()
        {
            if (context is null) return work();
            Task<bool> running = null!;
            ExecutionContext.Run(context, _ => running = work(), null);
            return running;
        }
    }
}
