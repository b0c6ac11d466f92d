using KitWorks.Api.Access;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages;

/// <summary>Makes the first account of a new shop, with the admin key of its settings; closed as soon as there is one.</summary>
sealed class FirstModel(IMediator mediator, Call call, IConfiguration configuration) : BenchPage(mediator)
{
    readonly IMediator mediator = mediator;

    public bool IsOpen { get; private set; }
    public string? WhyNot { get; private set; }
    public string? Name { get; private set; }

    public Task OnGet() => Look();

    public async Task<IActionResult> OnPost(string? key, string? name, string? password)
    {
        Name = name;
        await Look();
        if (!IsOpen) return Page();
        if (!BootstrapKey.Is(key ?? "", configuration))
        {
            Refuse(new(RefusalKind.Forbidden, "access.key", "This is not the admin key of the settings."));
            return Page();
        }
        (call.Actor, call.Role) = (Call.Bootstrap, Role.Admin);
        return await Did(new CreateStaff(name ?? "", Role.Admin, password ?? ""))
            ? Next("The account is made. Sign in with it.", "/sign-in")
            : Page();
    }

    async Task Look()
    {
        WhyNot = (await mediator.Send(new AnyStaff(), Aborted)).Value ? "There is an account already; an admin makes the next ones, under Shop."
            : !BootstrapKey.IsSet(configuration) ? "The service was started without an admin key. Set Access:BootstrapAdminKey and start it again, or make the account with: staff create <name> --role admin."
            : null;
        IsOpen = WhyNot is null;
    }
}
