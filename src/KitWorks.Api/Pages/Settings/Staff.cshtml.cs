using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Settings;

/// <summary>Who signs in at the bench.</summary>
sealed class StaffModel(IMediator mediator) : BenchPage(mediator)
{
    public IReadOnlyList<StaffAnswer> Members { get; private set; } = [];

    public async Task OnGet() => Members = await Ask(new ListStaff()) ?? [];

    public Task<IActionResult> OnPost(string? name, Role role, string? password) => Change(new CreateStaff(name ?? "", role, password ?? ""), $"{name} can sign in.");

    public Task<IActionResult> OnPostPassword(string? name, string? password) => Change(new SetPassword(name ?? "", password ?? ""), $"{name} has a new password.");

    public Task<IActionResult> OnPostEnd(string? name) => Change(new EndStaff(name ?? ""), $"{name} can no longer sign in.");

    async Task<IActionResult> Change(IRequest<Outcome<StaffAnswer>> command, string done)
    {
        if (await Did(command)) return Next(done, "/settings/staff");
        var refused = Refused!;
        await OnGet();
        Refuse(refused);
        return Page();
    }
}
