using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>Opens the bundles of orders, each with a code of its own. The answers are in the order of what is asked.</summary>
public sealed record OpenBundles(IReadOnlyList<BundlesToOpen> Orders) : ICommand<IReadOnlyList<IReadOnlyList<BundleAnswer>>>;

/// <summary>An order whose bundles are opened. Those of it that were opened before and are not packed make way where it is done anew.</summary>
public sealed record BundlesToOpen(Guid OrderId, int OrderNumber, BundleContents Contents, int Quantity, bool Anew = false);

/// <summary>The bundles of a kit, their contents written out: long work that needs no database.</summary>
public sealed class BundleContents(Kit kit)
{
    internal Kit Kit { get; } = kit;
    internal IReadOnlyList<string> Written { get; } = [.. kit.Bundles.Select(b => StoredJson.Write(b.Contents))];
}

sealed class OpenBundlesHandler(ShopDb db) : IRequestHandler<OpenBundles, Outcome<IReadOnlyList<IReadOnlyList<BundleAnswer>>>>
{
    public async Task<Outcome<IReadOnlyList<IReadOnlyList<BundleAnswer>>>> Handle(OpenBundles command, CancellationToken cancellationToken)
    {
        var opened = new List<PackedBundle>();
        var answers = new List<IReadOnlyList<BundleAnswer>>();
        foreach (var order in command.Orders)
        {
            if (order.Anew) await db.Bundles.Where(b => b.OrderId == order.OrderId && b.Status == BundleStatus.Open).ExecuteDeleteAsync(cancellationToken);
            var bundles = Of(order).ToList();
            opened.AddRange(bundles.Select(b => b.Row));
            answers.Add(bundles.ConvertAll(b => GetBundleHandler.Answer(b.Row, b.Of.Contents)));
        }
        db.AddAll(opened);
        return answers;
    }

    static IEnumerable<(PackedBundle Row, Bundle Of)> Of(BundlesToOpen order)
    {
        var kit = order.Contents.Kit;
        var perKit = kit.Bundles.Length;
        for (var i = 0; i < order.Quantity; i++)
            foreach (var (place, bundle) in kit.Bundles.Index())
            {
                var number = i * perKit + bundle.Number;
                yield return (new()
                {
                    Code = BundleCode.Of(order.OrderNumber, number),
                    OrderId = order.OrderId,
                    OrderNumber = order.OrderNumber,
                    Number = number,
                    OutOf = perKit * order.Quantity,
                    KitNumber = i + 1,
                    Kits = order.Quantity,
                    Tier = bundle.Tier,
                    TierName = kit.Tiers[bundle.Tier].Name,
                    Kind = bundle.Kind,
                    Contents = order.Contents.Written[place],
                    MassGrams = bundle.MassGrams,
                    LengthTenths = bundle.Length.Tenths,
                }, bundle);
            }
    }
}
