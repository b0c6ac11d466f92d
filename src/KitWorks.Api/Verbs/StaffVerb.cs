using System.CommandLine;
using System.Security.Cryptography;
using KitWorks.Shop;
using KitWorks.Shop.Access;

namespace KitWorks.Api.Verbs;

/// <summary><c>staff create|list|password|end</c>: the people who sign in at the bench.</summary>
static class StaffVerb
{
    /// <summary>What a password is made of: letters and digits that nobody takes for one another.</summary>
    const string Readable = "abcdefghjkmnpqrstuvwxyz23456789";

    public static Command Command() => new("staff", "Let people sign in at the bench, list them, and end it") { Create(), List(), Password(), End() };

    /// <summary>A password to be read off a screen and typed once: 16 of 31 characters, 79 bits.</summary>
    public static string NewPassword() => string.Join('-', RandomNumberGenerator.GetString(Readable, 16).Chunk(4).Select(four => new string(four)));

    static Command Create()
    {
        var name = Name();
        var role = new Option<Role>("--role") { Description = "What they may do: bench or admin", DefaultValueFactory = _ => Role.Bench };
        var command = new Command("create", "Let somebody sign in; the password is shown once") { name, role };
        command.SetAction((parsed, cancellationToken) => ConsoleShop.Ask(async (mediator, _) =>
        {
            var password = NewPassword();
            return ConsoleShop.Say(await mediator.Send(new CreateStaff(parsed.GetRequiredValue(name), parsed.GetValue(role), password), cancellationToken), _ => password);
        }, cancellationToken));
        return command;
    }

    static Command List()
    {
        var command = new Command("list", "List everybody");
        command.SetAction((_, cancellationToken) => ConsoleShop.Ask(async (mediator, _) => ConsoleShop.Say(
            await mediator.Send(new ListStaff(), cancellationToken),
            staff => staff.Count == 0 ? "Nobody can sign in yet." : string.Join('\n', staff.Select(s =>
                $"{s.Name,-24} {s.Role,-10} since {s.CreatedAt:yyyy-MM-dd}{(s.EndedAt is { } e ? $", ended {e:yyyy-MM-dd}" : "")}"))),
            cancellationToken));
        return command;
    }

    static Command Password()
    {
        var name = Name();
        var command = new Command("password", "Give somebody a new password; it is shown once") { name };
        command.SetAction((parsed, cancellationToken) => ConsoleShop.Ask(async (mediator, _) =>
        {
            var password = NewPassword();
            return ConsoleShop.Say(await mediator.Send(new SetPassword(parsed.GetRequiredValue(name), password), cancellationToken), _ => password);
        }, cancellationToken));
        return command;
    }

    static Command End()
    {
        var name = Name();
        var command = new Command("end", "End somebody's access at once") { name };
        command.SetAction((parsed, cancellationToken) => ConsoleShop.Ask(async (mediator, _) => ConsoleShop.Say(
            await mediator.Send(new EndStaff(parsed.GetRequiredValue(name)), cancellationToken), _ => "Ended."), cancellationToken));
        return command;
    }

    static Argument<string> Name() => new("name") { Description = "Their name" };
}
