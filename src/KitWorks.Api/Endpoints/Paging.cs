using System.Text;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.WebUtilities;

namespace KitWorks.Api.Endpoints;

/// <summary>Lists: <c>?limit=</c> and <c>?after=</c>, an opaque cursor.</summary>
static class Paging
{
    const int Most = 200, Usual = 50;

    public static Task<IResult> Ask<T>(
        int? limit, string? after, IMediator mediator, Func<int, string?, IRequest<Outcome<Page<T>>>> query, CancellationToken cancellationToken) =>
        Ask(limit, after, mediator, query, item => item, cancellationToken);

    /// <summary>As above, each item being answered as a view of it.</summary>
    public static async Task<IResult> Ask<T, TView>(
        int? limit, string? after, IMediator mediator, Func<int, string?, IRequest<Outcome<Page<T>>>> query, Func<T, TView> view, CancellationToken cancellationToken)
    {
        if (limit is < 1 or > Most)
            return Problems.Of(StatusCodes.Status400BadRequest, "list.limit", $"A limit of {limit} cannot be served; it is 1 to {Most}.");
        if (!TryOpen(after, out var from))
            return Problems.Of(StatusCodes.Status400BadRequest, "list.after", "This cursor is not one that a list gave; take it from the field next.");
        return (await mediator.Send(query(limit ?? Usual, from), cancellationToken)).Ok(page => new Page<TView>(
            [.. page.Items.Select(view)], page.Next is null ? null : WebEncoders.Base64UrlEncode(Encoding.UTF8.GetBytes(page.Next))));
    }

    static bool TryOpen(string? cursor, out string? from)
    {
        from = null;
        if (string.IsNullOrEmpty(cursor)) return true;
        try
        {
            from = Encoding.UTF8.GetString(WebEncoders.Base64UrlDecode(cursor));
            return from.Length <= 100;
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
