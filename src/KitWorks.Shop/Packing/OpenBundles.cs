using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>Opens the bundles of an order, each with a code of its own. Bundles that were opened before and not packed make way.</summary>
public sealed record OpenBundles(Guid OrderId, int OrderNumber, Kit Kit, int Quantity, bool Anew = false) : ICommand<IReadOnlyList<BundleAnswer>>;

sealed class OpenBundlesHandler(ShopDb db) : IRequestHandler<OpenBundles, Outcome<IReadOnlyList<BundleAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<BundleAnswer>>> Handle(OpenBundles command, CancellationToken cancellationToken)
    {
        if (command.Anew) await db.Bundles.Where(b => b.OrderId == command.OrderId && b.Status == BundleStatus.Open).ExecuteDeleteAsync(cancellationToken);
        var perKit = command.Kit.Bundles.Length;
        var bundles = new List<PackedBundle>(perKit * command.Quantity);
        for (var kit = 0; kit < command.Quantity; kit++)
            foreach (var bundle in command.Kit.Bundles)
            {
                var number = kit * perKit + bundle.Number;
                bundles.Add(new()
                {
                    Code = BundleCode.Of(command.OrderNumber, number),
                    OrderId = command.OrderId,
                    OrderNumber = command.OrderNumber,
                    Number = number,
                    OutOf = perKit * command.Quantity,
                    KitNumber = kit + 1,
                    Kits = command.Quantity,
                    Tier = bundle.Tier,
                    TierName = command.Kit.Tiers[bundle.Tier].Name,
                    Kind = bundle.Kind,
                    Contents = StoredJson.Write(bundle.Contents),
                    MassGrams = bundle.MassGrams,
                    LengthTenths = bundle.Length.Tenths,
                });
            }
        db.Bundles.AddRange(bundles);
        return bundles.ConvertAll(GetBundleHandler.Answer);
    }
}
