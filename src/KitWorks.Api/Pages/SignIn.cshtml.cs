using KitWorks.Api.Access;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace KitWorks.Api.Pages;

/// <summary>Where the shop's people say who they are.</summary>
sealed class SignInModel(IMediator mediator, TimeProvider clock) : PageModel
{
    public bool AnybodyYet { get; private set; } = true;
    public string? Name { get; private set; }
    public string? Wrong { get; private set; }

    public async Task OnGet(CancellationToken cancellationToken) => AnybodyYet = (await mediator.Send(new AnyStaff(), cancellationToken)).Value;

    public async Task<IActionResult> OnPost(string? name, string? password, string? to, CancellationToken cancellationToken)
    {
        Name = name;
        var answer = (await mediator.Send(new CheckPassword(name ?? "", password ?? ""), cancellationToken)).Value;
        if (answer.SignedIn is { } who)
        {
            await StaffCookie.SignIn(HttpContext, who);
            return LocalRedirect(Url.IsLocalUrl(to) ? to : "/");
        }
        Wrong = answer.LockedUntil is { } until
            ? $"Too many wrong passwords. Try again in {Math.Max(1, Math.Ceiling((until - clock.GetUtcNow()).TotalMinutes)):0} minutes, or have an admin set a new one."
            : "This name and password do not go together. Check both; capitals count.";
        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return Page();
    }
}
