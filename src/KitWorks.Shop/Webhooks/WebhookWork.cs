using KitWorks.Shop.Orders;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace KitWorks.Shop.Webhooks;

/// <summary>Tells the webhooks, each for itself and its events one after the other, until it is told to stop.</summary>
public sealed partial class WebhookWork(IServiceScopeFactory scopes, ShopSettings settings, TimeProvider clock, ILogger<WebhookWork> log)
{
    readonly Dictionary<Guid, Task> running = [];

    /// <summary>Works until the token says stop. An event whose answer is not awaited any more is told again at the next start.</summary>
    public async Task Run(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                foreach (var id in await Due(stop))
                    if (!running.TryGetValue(id, out var task) || task.IsCompleted) running[id] = Task.Run(() => Tell(id, stop), stop);
            }
            catch (Exception) when (stop.IsCancellationRequested)
            {
                break;
            }
            catch (Exception wrong)
            {
                Failed(wrong);
            }
            await Task.Delay(settings.WebhookPace.Beat, clock, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
        await Task.WhenAll(running.Values).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    async Task<List<Guid>> Due(CancellationToken stop)
    {
        await using var scope = scopes.CreateAsyncScope();
        var now = clock.GetUtcNow();
        return await scope.ServiceProvider.GetRequiredService<ShopDb>().Webhooks.Where(w => w.NextAt <= now).Select(w => w.Id).ToListAsync(stop);
    }

    /// <summary>Tells a webhook what waits, until nothing does or an event is not taken.</summary>
    async Task Tell(Guid id, CancellationToken stop)
    {
        try
        {
            while (!stop.IsCancellationRequested)
            {
                await using var scope = scopes.CreateAsyncScope();
                if (!await scope.ServiceProvider.GetRequiredService<WebhookStep>().Take(id, stop)) return;
            }
        }
        catch (Exception wrong) when (!stop.IsCancellationRequested)
        {
            Failed(wrong);
        }
    }

    [LoggerMessage(LogLevel.Error, "Webhooks could not be looked after")]
    partial void Failed(Exception wrong);
}

/// <summary>One event to one webhook. The webhook is claimed first, so that of several processes one tells it.</summary>
sealed class WebhookStep(ShopDb db, WriteLane lane, IMediator mediator, WebhookPost post, ShopSettings settings, TimeProvider clock)
{
    /// <summary>Whether there may be more to tell at once.</summary>
    public async Task<bool> Take(Guid id, CancellationToken stop)
    {
        var now = clock.Moment();
        if (await db.Webhooks.FirstOrDefaultAsync(w => w.Id == id && w.NextAt <= now, stop) is not { } webhook) return false;
        var last = (await mediator.Send(new LastOrderEvent(), stop)).Value;
        if ((await mediator.Send(new NextOrderEvent(webhook.After, webhook.Storefront), stop)).Value.Event is not { } next)
        {
            // What happened to others' orders is not looked through again.
            if (last > webhook.After) webhook.Pass(last, now);
            await Saved(webhook);
            return false;
        }
        webhook.Claim(now + settings.WebhookPace.Lease);
        if (!await Saved(webhook)) return false;

        var wrong = await post.Send(webhook, next, stop);
        now = clock.Moment();
        if (wrong is null) webhook.Delivered(next.Number, now);
        else webhook.Failed(wrong, now, now + settings.WebhookPace.Wait(webhook.Tries));
        return await Saved(webhook) && wrong is null;
    }

    /// <summary>False where somebody has changed or ended the webhook meanwhile; theirs stands, and at worst the event is told again.</summary>
    async Task<bool> Saved(Webhook webhook)
    {
        try
        {
            // In the lane, so that a person's change never meets ours half way; never broken off, for what has happened is written down.
            return await lane.Ride(db, async () =>
            {
                await db.SaveChangesAsync(CancellationToken.None);
                return true;
            }, _ => true, CancellationToken.None);
        }
        catch (DbUpdateConcurrencyException)
        {
            db.Entry(webhook).State = EntityState.Detached;
            return false;
        }
    }
}
