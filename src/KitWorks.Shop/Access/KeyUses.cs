using System.Collections.Concurrent;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Access;

/// <summary>
/// When keys were last used. Gathered in memory and written down every so often, so that no request waits for it; what is
/// gathered when the process is killed is lost.
/// </summary>
public sealed class KeyUses(IServiceScopeFactory scopes, TimeProvider clock)
{
    static readonly TimeSpan Pace = TimeSpan.FromSeconds(30);

    readonly ConcurrentDictionary<Guid, DateTimeOffset> uses = new();

    internal void Note(Guid key) => uses[key] = clock.GetUtcNow();

    internal DateTimeOffset? LastOf(Guid key) => uses.TryGetValue(key, out var at) ? at : null;

    /// <summary>Writes down what was gathered, until the token says stop, and a last time then.</summary>
    public async Task Run(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            await Task.Delay(Pace, clock, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await Write();
        }
    }

    async Task Write()
    {
        foreach (var (key, at) in uses)
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
                await scope.ServiceProvider.GetRequiredService<WriteLane>().Ride(
                    db, () => db.ApiKeys.Where(k => k.Id == key && (k.LastUsedAt == null || k.LastUsedAt < at)).ExecuteUpdateAsync(u => u.SetProperty(k => k.LastUsedAt, at)),
                    _ => true, CancellationToken.None);
            }
            catch (Exception wrong) when (wrong is System.Data.Common.DbException or ObjectDisposedException)
            {
                // Another time will do; where the program ends without being told to stop, none.
                return;
            }
            uses.TryRemove(KeyValuePair.Create(key, at));
        }
    }
}
