using KitWorks.Api.Access;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace KitWorks.Api.Pages;

/// <summary>Ends a sign-in on this device.</summary>
sealed class SignOutModel : PageModel
{
    public IActionResult OnGet() => LocalRedirect("/");

    public async Task<IActionResult> OnPost()
    {
        await HttpContext.SignOutAsync(StaffCookie.SchemeName);
        return LocalRedirect("/sign-in");
    }
}
