using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>A bundle's code was read at a packing station: the bundle is packed.</summary>
/// <param name="Code">The code on its label.</param>
/// <param name="Station">Where it was read.</param>
/// <param name="OrderId">The order being packed there; a bundle of another order is refused. Null to take any.</param>
/// <param name="Tier">The tier being packed there; a bundle of another tier is refused. Null to take any.</param>
public sealed record ScanBundle(string Code, string Station, Guid? OrderId = null, int? Tier = null) : ICommand<ScanAnswer>;

/// <summary>What was scanned, and what the order still needs.</summary>
/// <param name="Bundle">The bundle, packed now.</param>
/// <param name="OrderNumber">Its order.</param>
/// <param name="OrderStatus">Where the order stands now.</param>
/// <param name="StillOpen">The codes of the order's bundles that are not packed yet.</param>
public sealed record ScanAnswer(BundleAnswer Bundle, int OrderNumber, OrderStatus OrderStatus, IReadOnlyList<string> StillOpen);

sealed class ScanBundleValidator : AbstractValidator<ScanBundle>
{
    public ScanBundleValidator()
    {
        RuleFor(c => c.Code).NotEmpty().WithMessage("Give the code that was read.").MaximumLength(200).WithMessage("A code is at most 200 characters.");
        RuleFor(c => c.Station).NotEmpty().WithMessage("Say which station read it.").MaximumLength(100).WithMessage("A station's name is at most 100 characters.");
    }
}

sealed class ScanBundleHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<ScanBundle, Outcome<ScanAnswer>>
{
    /// <summary>The code as a scanner gives it: by itself, or as the address in the label's QR code.</summary>
    public static string CodeIn(string scanned) => scanned.Trim() is var text && text.LastIndexOf("/b/", StringComparison.Ordinal) is >= 0 and var at
        ? text[(at + 3)..].ToUpperInvariant()
        : text.ToUpperInvariant();

    public async Task<Outcome<ScanAnswer>> Handle(ScanBundle command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetBundle(CodeIn(command.Code)), cancellationToken)).Succeeds(out var scanned, out var refusal))
            return refusal with { Kind = RefusalKind.Impossible, Errors = [new("code", refusal.Detail)] };
        var order = await db.Orders.SingleAsync(o => o.Id == scanned.OrderId, cancellationToken);
        if (command.OrderId is { } expected && expected != order.Id)
            return new Refusal(RefusalKind.Conflict, "bundle.other-order", $"Bundle {scanned.Code} is for order {order.Number}, not the one being packed. Nothing was changed.");
        if (command.Tier is { } tier && tier != scanned.Tier)
            return new Refusal(RefusalKind.Conflict, "bundle.other-tier", $"Bundle {scanned.Code} is for tier {scanned.Tier}, {scanned.TierName}, not for tier {tier}, which is being packed. Nothing was changed.");
        if (scanned.Status == BundleStatus.Open && order.Status is not (OrderStatus.Reserved or OrderStatus.Picking))
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.Status.ToString().ToLowerInvariant()} and cannot be packed. Nothing was changed.");

        if (!(await mediator.Send(new PackBundle(scanned.Code), cancellationToken)).Succeeds(out var packed, out refusal)) return refusal;
        var open = (await mediator.Send(new ListBundles(order.Id), cancellationToken)).Value
            .Where(b => b.Status == BundleStatus.Open).Select(b => b.Code).ToList();
        var status = open.Count == 0 ? OrderStatus.Packed : OrderStatus.Picking;
        if (order.Status != status) order.Become(status, call.Actor, clock.Moment());
        return new ScanAnswer(packed, order.Number, order.Status, open);
    }
}
