using System.Security.Cryptography;
using System.Text;
using KitWorks.Geometry;
using KitWorks.Shop;
using MediatR;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace KitWorks.Api.Pages;

/// <summary>A page of the bench: it asks the shop by the same messages as the interface does, and shows a refusal where it stands.</summary>
abstract class BenchPage(IMediator mediator) : PageModel
{
    /// <summary>What went wrong, for the box at the head of the page.</summary>
    public Refusal? Refused { get; protected set; }

    /// <summary>Whether the page shows a refusal at a place of its own.</summary>
    public virtual bool PlacesRefusals => false;

    /// <summary>What was just done, kept over the redirect after it.</summary>
    [TempData]
    public string? Done { get; set; }

    protected CancellationToken Aborted => HttpContext.RequestAborted;

    /// <summary>The value, or null with <see cref="Refused"/> set.</summary>
    protected async Task<T?> Ask<T>(IRequest<Outcome<T>> message) where T : class
    {
        if ((await mediator.Send(message, Aborted)).Succeeds(out var value, out var refusal)) return value;
        Refuse(refusal);
        return null;
    }

    /// <summary>Whether a change was made; a refusal is shown.</summary>
    protected async Task<bool> Did<T>(IRequest<Outcome<T>> command)
    {
        var refusal = (await mediator.Send(command, Aborted)).Refusal;
        if (refusal is not null) Refuse(refusal);
        return refusal is null;
    }

    protected void Refuse(Refusal refusal)
    {
        Refused = refusal;
        Response.StatusCode = refusal.Kind switch
        {
            RefusalKind.NotFound => StatusCodes.Status404NotFound,
            RefusalKind.Conflict => StatusCodes.Status409Conflict,
            RefusalKind.Forbidden => StatusCodes.Status403Forbidden,
            RefusalKind.Malformed or RefusalKind.Impossible => StatusCodes.Status422UnprocessableEntity,
        };
    }

    /// <summary>Says what was done on the page that comes next.</summary>
    protected IActionResult Next(string done, string address)
    {
        Done = done;
        return LocalRedirect(address);
    }

    /// <summary>A form that carries a <c>once</c> field does nothing twice, however often its button is pressed.</summary>
    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        if (HttpMethods.IsPost(Request.Method) && Request.HasFormContentType && Request.Form["once"].ToString() is { Length: > 0 and <= 100 } key)
        {
            var form = string.Join('\n', Request.Form.Where(f => !f.Key.StartsWith("__", StringComparison.Ordinal)).OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key}={f.Value}"));
            HttpContext.RequestServices.GetRequiredService<Call>().OnceOnly =
                new("page " + key, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Request.Path}{Request.QueryString}\n{form}"))));
        }
        await next();
    }
}
