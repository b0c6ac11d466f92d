using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Access;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Webhooks;

/// <summary>Has an address told what becomes of orders from now on. The secret is in this answer and in none that follows.</summary>
public sealed record AddWebhook(string Url, string? Storefront) : ICommand<NewWebhook>, IWebhookWords;

/// <summary>Changes where a webhook goes, and whose orders it tells of. What waits goes to the new address.</summary>
public sealed record ChangeWebhook(Guid Id, string Url, string? Storefront) : ICommand<WebhookAnswer>, IWebhookWords;

/// <summary>Gives a webhook another secret; the old one signs nothing more.</summary>
public sealed record ChangeWebhookSecret(Guid Id) : ICommand<NewWebhook>;

/// <summary>Tries a webhook now that waits to be tried again.</summary>
public sealed record RetryWebhook(Guid Id) : ICommand<WebhookAnswer>;

/// <summary>Passes over the event that an address does not take.</summary>
public sealed record SkipWebhookEvent(Guid Id) : ICommand<WebhookAnswer>;

/// <summary>Ends a webhook; what waits for it is not told.</summary>
public sealed record RemoveWebhook(Guid Id) : ICommand<Unit>;

/// <summary>All webhooks, the oldest first.</summary>
public sealed record ListWebhooks : IQuery<IReadOnlyList<WebhookAnswer>>;

/// <summary>One webhook.</summary>
public sealed record GetWebhook(Guid Id) : IQuery<WebhookAnswer>;

/// <summary>A webhook and its secret.</summary>
public sealed record NewWebhook(Guid Id, string Url, string? Storefront, string Secret);

/// <summary>A webhook and how it does.</summary>
/// <param name="Id">Its id; the <c>keyid</c> of what it signs.</param>
/// <param name="Url">Where it goes.</param>
/// <param name="Storefront">Whose orders it tells of; null for all.</param>
/// <param name="CreatedAt">When it was made.</param>
/// <param name="DeliveredAt">When an event was taken last.</param>
/// <param name="Waiting">How many events wait to be taken.</param>
/// <param name="Tries">How often the next of them was tried.</param>
/// <param name="FailingSince">Since when it is not taken; null when all is well.</param>
/// <param name="NextAt">When it is tried again; null when all is well.</param>
/// <param name="Detail">What went wrong last; empty when all is well.</param>
public sealed record WebhookAnswer(
    Guid Id, string Url, string? Storefront, DateTimeOffset CreatedAt, DateTimeOffset? DeliveredAt, int Waiting, int Tries,
    DateTimeOffset? FailingSince, DateTimeOffset? NextAt, string Detail);

/// <summary>What is said of a webhook.</summary>
interface IWebhookWords
{
    string Url { get; }
    string? Storefront { get; }
}

sealed class AddWebhookValidator : WebhookWordsValidator<AddWebhook>;

sealed class ChangeWebhookValidator : WebhookWordsValidator<ChangeWebhook>;

abstract class WebhookWordsValidator<T> : AbstractValidator<T> where T : IWebhookWords
{
    protected WebhookWordsValidator()
    {
        RuleFor(c => c.Url).Must(url => url.Length <= Webhook.LongestUrl && Uri.TryCreate(url, UriKind.Absolute, out var address)
                && address is { Scheme: "http" or "https", UserInfo: "", Fragment: "", Host.Length: > 0 })
            .WithMessage("'{PropertyValue}' cannot be told anything; it is an address such as https://shop.example.com/hooks, of at most 500 characters, without name, password and fragment.");
        RuleFor(c => c.Storefront).MaximumLength(100).WithMessage("A key's name is at most 100 characters.");
    }
}

sealed class ManageWebhooksHandler(ShopDb db, IMediator mediator, TimeProvider clock) :
    IRequestHandler<AddWebhook, Outcome<NewWebhook>>, IRequestHandler<ChangeWebhook, Outcome<WebhookAnswer>>,
    IRequestHandler<ChangeWebhookSecret, Outcome<NewWebhook>>, IRequestHandler<RetryWebhook, Outcome<WebhookAnswer>>,
    IRequestHandler<SkipWebhookEvent, Outcome<WebhookAnswer>>, IRequestHandler<RemoveWebhook, Outcome<Unit>>,
    IRequestHandler<ListWebhooks, Outcome<IReadOnlyList<WebhookAnswer>>>, IRequestHandler<GetWebhook, Outcome<WebhookAnswer>>
{
    const int Most = 20;

    public async Task<Outcome<NewWebhook>> Handle(AddWebhook command, CancellationToken cancellationToken)
    {
        if (await WithoutSuchKey(command.Storefront, cancellationToken) is { } refusal) return refusal;
        if (await db.Webhooks.CountAsync(cancellationToken) >= Most)
            return new Refusal(RefusalKind.Conflict, "webhook.too-many", $"There are {Most} webhooks; end one that is not used.");
        var webhook = new Webhook
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()),
            Url = command.Url,
            Storefront = command.Storefront,
            Secret = Webhook.NewSecret(),
            CreatedAt = clock.Moment(),
            After = (await mediator.Send(new LastOrderEvent(), cancellationToken)).Value,
        };
        webhook.TryNow(clock.Moment());
        db.Webhooks.Add(webhook);
        return New(webhook);
    }

    public async Task<Outcome<WebhookAnswer>> Handle(ChangeWebhook command, CancellationToken cancellationToken)
    {
        if (await WithoutSuchKey(command.Storefront, cancellationToken) is { } refusal) return refusal;
        return await Change(command.Id, webhook =>
        {
            (webhook.Url, webhook.Storefront) = (command.Url, command.Storefront);
            webhook.TryNow(clock.Moment());
        }, cancellationToken);
    }

    public async Task<Outcome<NewWebhook>> Handle(ChangeWebhookSecret command, CancellationToken cancellationToken)
    {
        if (await db.Webhooks.FirstOrDefaultAsync(w => w.Id == command.Id, cancellationToken) is not { } webhook) return Unknown(command.Id);
        webhook.Secret = Webhook.NewSecret();
        return New(webhook);
    }

    public Task<Outcome<WebhookAnswer>> Handle(RetryWebhook command, CancellationToken cancellationToken) =>
        Change(command.Id, webhook => webhook.TryNow(clock.Moment()), cancellationToken);

    public async Task<Outcome<WebhookAnswer>> Handle(SkipWebhookEvent command, CancellationToken cancellationToken)
    {
        if (await db.Webhooks.FirstOrDefaultAsync(w => w.Id == command.Id, cancellationToken) is not { } webhook) return Unknown(command.Id);
        if ((await mediator.Send(new NextOrderEvent(webhook.After, webhook.Storefront), cancellationToken)).Value.Event is not { } next)
            return new Refusal(RefusalKind.Conflict, "webhook.nothing-waits", "No event waits for this webhook; nothing was passed over.");
        webhook.Pass(next.Number, clock.Moment());
        return await Answer(webhook, cancellationToken);
    }

    public async Task<Outcome<Unit>> Handle(RemoveWebhook command, CancellationToken cancellationToken)
    {
        if (await db.Webhooks.FirstOrDefaultAsync(w => w.Id == command.Id, cancellationToken) is not { } webhook) return Unknown(command.Id);
        db.Webhooks.Remove(webhook);
        return Unit.Value;
    }

    public async Task<Outcome<IReadOnlyList<WebhookAnswer>>> Handle(ListWebhooks query, CancellationToken cancellationToken)
    {
        var answers = new List<WebhookAnswer>();
        foreach (var webhook in await db.Webhooks.AsNoTracking().OrderBy(w => w.CreatedAt).ToListAsync(cancellationToken))
            answers.Add(await Answer(webhook, cancellationToken));
        return answers;
    }

    public async Task<Outcome<WebhookAnswer>> Handle(GetWebhook query, CancellationToken cancellationToken) =>
        await db.Webhooks.AsNoTracking().FirstOrDefaultAsync(w => w.Id == query.Id, cancellationToken) is { } webhook
            ? await Answer(webhook, cancellationToken)
            : Unknown(query.Id);

    async Task<Outcome<WebhookAnswer>> Change(Guid id, Action<Webhook> change, CancellationToken cancellationToken)
    {
        if (await db.Webhooks.FirstOrDefaultAsync(w => w.Id == id, cancellationToken) is not { } webhook) return Unknown(id);
        change(webhook);
        return await Answer(webhook, cancellationToken);
    }

    async Task<Refusal?> WithoutSuchKey(string? storefront, CancellationToken cancellationToken) =>
        storefront is null || (await mediator.Send(new ListKeys(), cancellationToken)).Value.Any(k => k.Name == storefront)
            ? null
            : Refusal.OfField("key.unknown", "storefront", $"There is no key named '{storefront}'. Leave it out to tell of all orders.");

    async Task<WebhookAnswer> Answer(Webhook webhook, CancellationToken cancellationToken)
    {
        var waiting = (await mediator.Send(new CountOrderEvents(webhook.After, webhook.Storefront), cancellationToken)).Value;
        return new(webhook.Id, webhook.Url, webhook.Storefront, webhook.CreatedAt, webhook.DeliveredAt, waiting, webhook.Tries,
            webhook.FailingSince, webhook.FailingSince is null ? null : webhook.NextAt, webhook.Detail);
    }

    static NewWebhook New(Webhook webhook) => new(webhook.Id, webhook.Url, webhook.Storefront, webhook.Secret);

    static Refusal Unknown(Guid id) => new(RefusalKind.NotFound, "webhook.unknown", $"There is no webhook '{id}'.");
}
