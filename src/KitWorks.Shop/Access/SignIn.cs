using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Access;

/// <summary>
/// Somebody says who they are. A no is an answer and not a refusal, because it must be remembered: too many of them lock
/// the name for some minutes.
/// </summary>
public sealed record CheckPassword(string Name, string Password) : ICommand<PasswordChecked>;

/// <summary>Whether it was them.</summary>
/// <param name="SignedIn">Who it is, with the stamp that their cookie carries; null where it was a no.</param>
/// <param name="LockedUntil">Where the name is locked, until when.</param>
public sealed record PasswordChecked(SignedIn? SignedIn, DateTimeOffset? LockedUntil);

/// <summary>Somebody who is signed in.</summary>
/// <param name="Id">Their id.</param>
/// <param name="Name">Their name.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Stamp">Changes when they must sign in again.</param>
public sealed record SignedIn(Guid Id, string Name, Role Role, string Stamp);

/// <summary>Who a cookie belongs to, if it still holds.</summary>
public sealed record FindSignedIn(Guid Id, string Stamp) : IQuery<SignedIn>;

/// <summary>Whether anybody can sign in at all.</summary>
public sealed record AnyStaff : IQuery<bool>;

sealed class SignInHandler(ShopDb db, UserManager<StaffMember> users)
    : IRequestHandler<CheckPassword, Outcome<PasswordChecked>>, IRequestHandler<FindSignedIn, Outcome<SignedIn>>, IRequestHandler<AnyStaff, Outcome<bool>>
{
    public async Task<Outcome<PasswordChecked>> Handle(CheckPassword command, CancellationToken cancellationToken)
    {
        if (await users.FindByNameAsync(command.Name) is not { EndedAt: null } member)
        {
            // As much work as for a name that there is, so that the time tells nobody which names there are.
            users.PasswordHasher.HashPassword(null!, command.Password);
            return new PasswordChecked(null, null);
        }
        if (await users.IsLockedOutAsync(member)) return new PasswordChecked(null, member.LockoutEnd);
        if (await users.CheckPasswordAsync(member, command.Password))
        {
            await users.ResetAccessFailedCountAsync(member);
            return new PasswordChecked(new(member.Id, member.UserName!, member.Role, member.SecurityStamp!), null);
        }
        await users.AccessFailedAsync(member);
        return new PasswordChecked(null, await users.IsLockedOutAsync(member) ? member.LockoutEnd : null);
    }

    public async Task<Outcome<SignedIn>> Handle(FindSignedIn query, CancellationToken cancellationToken) =>
        await db.Staff.AsNoTracking().FirstOrDefaultAsync(s => s.Id == query.Id && s.SecurityStamp == query.Stamp && s.EndedAt == null, cancellationToken) is { } member
            ? new SignedIn(member.Id, member.UserName!, member.Role, member.SecurityStamp!)
            : new Refusal(RefusalKind.Forbidden, "staff.signed-out", "Sign in again.");

    public async Task<Outcome<bool>> Handle(AnyStaff query, CancellationToken cancellationToken) => await db.Staff.AnyAsync(s => s.EndedAt == null, cancellationToken);
}
