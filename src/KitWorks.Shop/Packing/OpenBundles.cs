using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Packing;

/// <summary>Opens the bundles of an order, each with a code of its own.</summary>
public sealed record OpenBundles(Guid OrderId, int OrderNumber, Kit Kit, int Quantity) : ICommand<Unit>;

sealed class OpenBundlesHandler(ShopDb db) : IRequestHandler<OpenBundles, Outcome<Unit>>
{
    public Task<Outcome<Unit>> Handle(OpenBundles command, CancellationToken cancellationToken)
    {
        var perKit = command.Kit.Bundles.Length;
        for (var kit = 0; kit < command.Quantity; kit++)
            foreach (var bundle in command.Kit.Bundles)
            {
                var number = kit * perKit + bundle.Number;
                db.Bundles.Add(new()
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
        return Task.FromResult<Outcome<Unit>>(Unit.Value);
    }
}
