using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Settings;

/// <summary>The keys of storefronts and other programs.</summary>
sealed class KeysModel(IMediator mediator, TimeProvider clock) : BenchPage(mediator)
{
    public IReadOnlyList<KeyAnswer> Keys { get; private set; } = [];

    /// <summary>The key just made, the one time that its secret is shown; it is on no redirect and in no cookie.</summary>
    public NewKey? Made { get; private set; }

    public async Task OnGet() => Keys = await Ask(new ListKeys()) ?? [];

    public async Task OnPost(string? name, Role role, int? days)
    {
        Made = await Ask(new CreateKey(name ?? "", role, days is { } d ? clock.GetUtcNow().AddDays(d) : null));
        Keys = await Ask(new ListKeys()) ?? Keys;
    }

    public async Task<IActionResult> OnPostRevoke(string? name)
    {
        if (await Did(new RevokeKey(name ?? ""))) return Next($"The key of {name} is revoked.", "/settings/keys");
        await OnGet();
        return Page();
    }
}
