using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using MediatR;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace KitWorks.Api.Pages;

/// <summary>The page that the QR code on a bundle's label opens, for anybody. It says what is in the bundle, and nothing of the customer.</summary>
sealed class BundleModel(IMediator mediator) : PageModel
{
    public BundleAnswer? Bundle { get; private set; }
    public IReadOnlyDictionary<string, Tag> Tags { get; private set; } = new Dictionary<string, Tag>();
    public string? Why { get; private set; }

    public string Words => Bundle!.Kind switch
    {
        BundleKind.Struts => "Struts",
        BundleKind.Hubs => "Hubs",
        BundleKind.Ties => "Ties",
        BundleKind.Stakes => "Stakes",
        BundleKind.Cover => "Cover",
    };

    public async Task OnGet(string code, CancellationToken cancellationToken)
    {
        if ((await mediator.Send(new GetBundle(code.ToUpperInvariant()), cancellationToken)).Succeeds(out var bundle, out var refusal))
        {
            Bundle = bundle;
            Tags = (await mediator.Send(new GetBundleTags(bundle.Code), cancellationToken)).Value;
            return;
        }
        Why = refusal.Detail;
        Response.StatusCode = StatusCodes.Status404NotFound;
    }
}
