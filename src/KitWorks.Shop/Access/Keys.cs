using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Access;

/// <summary>Makes a key. The secret is in the answer and nowhere else.</summary>
public sealed record CreateKey(string Name, Role Role, DateTimeOffset? ExpiresAt = null) : ICommand<NewKey>;

/// <summary>A key as it is handed out.</summary>
public sealed record NewKey(string Name, Role Role, string Secret, DateTimeOffset? ExpiresAt);

/// <summary>All keys, without their secrets.</summary>
public sealed record ListKeys : IQuery<IReadOnlyList<KeyAnswer>>;

/// <summary>A key as it is listed.</summary>
public sealed record KeyAnswer(string Name, Role Role, DateTimeOffset CreatedAt, DateTimeOffset? ExpiresAt, DateTimeOffset? RevokedAt, DateTimeOffset? LastUsedAt);

/// <summary>Ends a key at once.</summary>
public sealed record RevokeKey(string Name) : ICommand<Unit>;

/// <summary>Whose key a secret is, if it is one that works now.</summary>
public sealed record FindKey(string Secret) : IQuery<KeyHolder>;

/// <summary>The holder of a key.</summary>
public sealed record KeyHolder(string Name, Role Role);

sealed class CreateKeyValidator : AbstractValidator<CreateKey>
{
    public CreateKeyValidator() => RuleFor(c => c.Name).Matches(@"^[A-Za-z0-9 ._-]{1,100}\z")
        .WithMessage("A key's name is 1 to 100 letters, digits, spaces, dots, hyphens and underscores.")
        // Orders and idempotency keys belong to the caller's name, so no key may share the name of a caller without one.
        .Must(name => name is not (Call.Bootstrap or Call.Nobody)).WithMessage("'{PropertyValue}' stands for another caller; take another name.");
}

sealed class CreateKeyHandler(ShopDb db, TimeProvider clock) : IRequestHandler<CreateKey, Outcome<NewKey>>
{
    public async Task<Outcome<NewKey>> Handle(CreateKey command, CancellationToken cancellationToken)
    {
        var normalised = command.Name.ToUpperInvariant();
        if (await db.ApiKeys.AnyAsync(k => k.Name == command.Name, cancellationToken) || await db.Staff.AnyAsync(s => s.NormalizedUserName == normalised, cancellationToken))
            return new Refusal(RefusalKind.Conflict, "key.exists", $"There is a key, or somebody, named '{command.Name}' already; names are not used twice.");
        if (command.ExpiresAt <= clock.GetUtcNow())
            return Refusal.OfField("key.expiry", "expiresAt", $"A key that expires at {command.ExpiresAt:u} never works; name a time that is to come, or none.");
        var secret = ApiKey.NewSecret();
        db.ApiKeys.Add(new()
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()),
            Name = command.Name,
            Role = command.Role,
            Hash = ApiKey.HashOf(secret),
            CreatedAt = clock.GetUtcNow(),
            ExpiresAt = command.ExpiresAt,
        });
        return new NewKey(command.Name, command.Role, secret, command.ExpiresAt);
    }
}

sealed class ListKeysHandler(ShopDb db, KeyUses uses) : IRequestHandler<ListKeys, Outcome<IReadOnlyList<KeyAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<KeyAnswer>>> Handle(ListKeys query, CancellationToken cancellationToken) =>
        (await db.ApiKeys.AsNoTracking().OrderBy(k => k.Name).ToListAsync(cancellationToken))
            .ConvertAll(k => new KeyAnswer(k.Name, k.Role, k.CreatedAt, k.ExpiresAt, k.RevokedAt, uses.LastOf(k.Id) ?? k.LastUsedAt));
}

sealed class RevokeKeyHandler(ShopDb db, TimeProvider clock) : IRequestHandler<RevokeKey, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(RevokeKey command, CancellationToken cancellationToken)
    {
        if (await db.ApiKeys.FirstOrDefaultAsync(k => k.Name == command.Name, cancellationToken) is not { } key)
            return new Refusal(RefusalKind.NotFound, "key.unknown", $"There is no key named '{command.Name}'.");
        key.RevokedAt ??= clock.GetUtcNow();
        return Unit.Value;
    }
}

sealed class FindKeyHandler(ShopDb db, KnownKeys known, KeyUses uses, TimeProvider clock) : IRequestHandler<FindKey, Outcome<KeyHolder>>
{
    public async Task<Outcome<KeyHolder>> Handle(FindKey query, CancellationToken cancellationToken)
    {
        var hash = ApiKey.HashOf(query.Secret);
        var seen = known.Round;
        var now = clock.GetUtcNow();
        // Found by the hash of the secret: how long the look-up takes tells nothing about the secret.
        if (await db.ApiKeys.AsNoTracking().FirstOrDefaultAsync(k => k.Hash == hash, cancellationToken) is not { } key
            || key.RevokedAt is not null || key.ExpiresAt <= now)
            return new Refusal(RefusalKind.Forbidden, "access.key", "This key is unknown, expired or revoked.");
        var holder = new KeyHolder(key.Name, key.Role);
        uses.Note(key.Id);
        known.Keep(hash, holder, key.ExpiresAt, seen);
        return holder;
    }
}
