using System.CommandLine;
using KitWorks.Shop;
using KitWorks.Shop.Access;

namespace KitWorks.Api.Verbs;

/// <summary><c>keys create|list|revoke</c>: the keys to the HTTP interface.</summary>
static class KeysVerb
{
    public static Command Command() => new("keys", "Make, list and revoke keys") { Create(), List(), Revoke() };

    static Command Create()
    {
        var name = new Argument<string>("name") { Description = "Whose key it is" };
        var role = new Option<Role>("--role") { Description = "What it may do", DefaultValueFactory = _ => Role.Storefront };
        var days = new Option<int?>("--days") { Description = "For how many days it works; without end if not said" };
        var command = new Command("create", "Make a key; its secret is shown once") { name, role, days };
        command.SetAction((parsed, cancellationToken) => ConsoleShop.Ask(async (mediator, clock) =>
        {
            var expiresAt = parsed.GetValue(days) is { } d ? clock.GetUtcNow().AddDays(d) : (DateTimeOffset?)null;
            return ConsoleShop.Say(await mediator.Send(new CreateKey(parsed.GetRequiredValue(name), parsed.GetValue(role), expiresAt), cancellationToken), key => key.Secret);
        }, cancellationToken));
        return command;
    }

    static Command List()
    {
        var command = new Command("list", "List the keys, without their secrets");
        command.SetAction((_, cancellationToken) => ConsoleShop.Ask(async (mediator, _) => ConsoleShop.Say(
            await mediator.Send(new ListKeys(), cancellationToken),
            keys => keys.Count == 0 ? "There are no keys yet." : string.Join('\n', keys.Select(k =>
                $"{k.Name,-24} {k.Role,-10} made {k.CreatedAt:yyyy-MM-dd}{(k.ExpiresAt is { } e ? $", until {e:yyyy-MM-dd}" : "")}{(k.RevokedAt is { } r ? $", revoked {r:yyyy-MM-dd}" : "")}{(k.LastUsedAt is { } u ? $", last used {u:yyyy-MM-dd HH:mm}" : "")}"))),
            cancellationToken));
        return command;
    }

    static Command Revoke()
    {
        var name = new Argument<string>("name") { Description = "Whose key it is" };
        var command = new Command("revoke", "End a key at once") { name };
        command.SetAction((parsed, cancellationToken) => ConsoleShop.Ask(async (mediator, _) => ConsoleShop.Say(
            await mediator.Send(new RevokeKey(parsed.GetRequiredValue(name)), cancellationToken), _ => "Revoked."), cancellationToken));
        return command;
    }
}
