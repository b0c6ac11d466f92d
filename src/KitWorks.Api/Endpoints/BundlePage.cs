using System.Net;
using System.Text;
using KitWorks.Shop.Packing;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>The page that the QR code on a bundle's label opens. It says what is in the bundle, and nothing of the customer.</summary>
static class BundlePage
{
    public static void MapBundlePage(this IEndpointRouteBuilder app) =>
        app.MapGet("/b/{code}", async (string code, IMediator mediator, CancellationToken cancellationToken) =>
        {
            var found = (await mediator.Send(new GetBundle(code.ToUpperInvariant()), cancellationToken)).Succeeds(out var bundle, out var refusal);
            return TypedResults.Content(
                found ? Page($"Bundle {bundle!.Code}", Body(bundle)) : Page("No such bundle", $"<h1>No such bundle</h1><p>{WebUtility.HtmlEncode(refusal!.Detail)}</p>"),
                "text/html; charset=utf-8", statusCode: found ? 200 : 404);
        }).ExcludeFromDescription();

    static string Body(BundleAnswer bundle)
    {
        var html = new StringBuilder($"<p class=tier>Tier {bundle.Tier} · {WebUtility.HtmlEncode(bundle.TierName)}</p><h1>{bundle.Kind}</h1><ul>");
        foreach (var item in bundle.Contents)
            html.Append($"<li><b>{item.Count} ×</b> {WebUtility.HtmlEncode(item.Description)}</li>");
        return html.Append($"</ul><p>Bundle {bundle.Number} of {bundle.OutOf} in order {bundle.OrderNumber}, kit {bundle.KitNumber} of {bundle.Kits}.<br>Code <b>{bundle.Code}</b>, {bundle.MassGrams / 1000m:0.0#} kg.</p>").ToString();
    }

    static string Page(string title, string body) => $$"""
        <!doctype html>
        <html lang="en">
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width">
        <title>{{WebUtility.HtmlEncode(title)}}</title>
        <style>
          :root { color-scheme: light dark; font: 1.125rem/1.5 system-ui, sans-serif }
          body { max-width: 34rem; margin: 2rem auto; padding: 0 1rem }
          h1 { margin: 0 0 .5rem; font-size: 2.25rem; line-height: 1.1 }
          .tier { margin: 0; font-weight: 600 }
          ul { padding: 0; list-style: none; border-block: 1px solid color-mix(in srgb, currentColor 30%, transparent) }
          li { padding: .5rem 0; font-size: 1.25rem }
        </style>
        {{body}}
        </html>
        """;
}
