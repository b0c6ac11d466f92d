using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Access;

/// <summary>Lets a person sign in at the bench.</summary>
public sealed record CreateStaff(string Name, Role Role, string Password) : ICommand<StaffAnswer>;

/// <summary>Everybody who may sign in, or could.</summary>
public sealed record ListStaff : IQuery<IReadOnlyList<StaffAnswer>>;

/// <summary>Gives a person a new password; wherever they are signed in, that ends.</summary>
public sealed record SetPassword(string Name, string Password) : ICommand<StaffAnswer>;

/// <summary>Ends a person's access at once.</summary>
public sealed record EndStaff(string Name) : ICommand<StaffAnswer>;

/// <summary>One of the shop's people.</summary>
public sealed record StaffAnswer(Guid Id, string Name, Role Role, DateTimeOffset CreatedAt, DateTimeOffset? EndedAt);

sealed class CreateStaffValidator : AbstractValidator<CreateStaff>
{
    public CreateStaffValidator()
    {
        RuleFor(c => c.Name).Matches(@"^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,59}\z").WithMessage("A name is 1 to 60 letters, digits, spaces, dots, hyphens and underscores.")
            .Must(name => name is not (Call.Bootstrap or Call.Nobody)).WithMessage("'{PropertyValue}' stands for another caller; take another name.");
        RuleFor(c => c.Role).Must(r => r is Role.Bench or Role.Admin).WithMessage("Staff are of role bench or admin.");
        RuleFor(c => c.Password).Password();
    }
}

sealed class SetPasswordValidator : AbstractValidator<SetPassword>
{
    public SetPasswordValidator() => RuleFor(c => c.Password).Password();
}

static class PasswordRules
{
    /// <summary>Length, and no rules of composition: NIST SP 800-63B-4, section 3.1.1.2, from memory.</summary>
    public static void Password<T>(this IRuleBuilder<T, string> rule) => rule.Must(p => p?.Length is >= 10 and <= 200)
        .WithMessage("A password is 10 to 200 characters; a few words in a row are easy to keep.");
}

sealed class StaffHandler(ShopDb db, UserManager<StaffMember> users, TimeProvider clock)
    : IRequestHandler<CreateStaff, Outcome<StaffAnswer>>, IRequestHandler<SetPassword, Outcome<StaffAnswer>>, IRequestHandler<EndStaff, Outcome<StaffAnswer>>,
      IRequestHandler<ListStaff, Outcome<IReadOnlyList<StaffAnswer>>>
{
    public async Task<Outcome<StaffAnswer>> Handle(CreateStaff command, CancellationToken cancellationToken)
    {
        // The histories name people and keys alike, and idempotency keys belong to a caller's name.
        if (await users.FindByNameAsync(command.Name) is not null || await db.ApiKeys.AnyAsync(k => k.Name == command.Name, cancellationToken))
            return new Refusal(RefusalKind.Conflict, "staff.exists", $"There is somebody, or a key, named '{command.Name}' already; names are not used twice.") { Errors = [new("name", "Take another name.")] };
        var member = new StaffMember { Id = Guid.CreateVersion7(clock.GetUtcNow()), UserName = command.Name, Role = command.Role, CreatedAt = clock.GetUtcNow(), LockoutEnabled = true };
        Must(await users.CreateAsync(member, command.Password));
        return Answer(member);
    }

    public async Task<Outcome<StaffAnswer>> Handle(SetPassword command, CancellationToken cancellationToken)
    {
        if (await users.FindByNameAsync(command.Name) is not { } member) return Unknown(command.Name);
        Must(await users.RemovePasswordAsync(member));
        Must(await users.AddPasswordAsync(member, command.Password));
        Must(await users.SetLockoutEndDateAsync(member, null));
        return Answer(member);
    }

    public async Task<Outcome<StaffAnswer>> Handle(EndStaff command, CancellationToken cancellationToken)
    {
        if (await users.FindByNameAsync(command.Name) is not { } member) return Unknown(command.Name);
        if (member.Role == Role.Admin && !await db.Staff.AnyAsync(s => s.Role == Role.Admin && s.EndedAt == null && s.Id != member.Id, cancellationToken))
            return new Refusal(RefusalKind.Conflict, "staff.last-admin", $"{member.UserName} is the last admin. Make another one first.");
        member.EndedAt ??= clock.GetUtcNow();
        Must(await users.UpdateSecurityStampAsync(member));
        return Answer(member);
    }

    public async Task<Outcome<IReadOnlyList<StaffAnswer>>> Handle(ListStaff query, CancellationToken cancellationToken) =>
        await db.Staff.AsNoTracking().OrderBy(s => s.NormalizedUserName)
            .Select(s => new StaffAnswer(s.Id, s.UserName!, s.Role, s.CreatedAt, s.EndedAt)).ToListAsync(cancellationToken);

    public static StaffAnswer Answer(StaffMember s) => new(s.Id, s.UserName!, s.Role, s.CreatedAt, s.EndedAt);

    static Refusal Unknown(string name) => new(RefusalKind.NotFound, "staff.unknown", $"There is nobody named '{name}'.");

    /// <summary>What Identity may refuse has been checked before; what it still refuses is a bug.</summary>
    static void Must(IdentityResult result)
    {
        if (!result.Succeeded) throw new InvalidOperationException(string.Join(' ', result.Errors.Select(e => e.Description)));
    }
}
