using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Planning;

/// <summary>Goods that were expected came in: these lines, or all that is outstanding. They are received into stock under the purchase's reference.</summary>
public sealed record ReceiveExpected(Guid Id, IReadOnlyList<StockLine>? Lines) : ICommand<ExpectedReceipt>;

/// <summary>Goods on their way are due on another day.</summary>
public sealed record RescheduleExpected(Guid Id, DateOnly ExpectedOn) : ICommand<ExpectedReceipt>;

/// <summary>What is outstanding will not come.</summary>
public sealed record CloseExpected(Guid Id) : ICommand<ExpectedReceipt>;

sealed class RescheduleExpectedValidator : AbstractValidator<RescheduleExpected>
{
    public RescheduleExpectedValidator() =>
        RuleFor(c => c.ExpectedOn).InclusiveBetween(new(2000, 1, 1), new(2200, 1, 1)).WithMessage("Give the day when it is due, such as 2026-12-04.");
}

sealed class ReceiveExpectedHandler(ShopDb db, IMediator mediator) : IRequestHandler<ReceiveExpected, Outcome<ExpectedReceipt>>
{
    public async Task<Outcome<ExpectedReceipt>> Handle(ReceiveExpected command, CancellationToken cancellationToken)
    {
        if (!(await db.OpenPurchase(command.Id, cancellationToken)).Succeeds(out var purchase, out var refusal)) return refusal;
        var lines = command.Lines ?? [.. purchase.Lines.Where(l => l.Outstanding > 0).Select(l => new StockLine(l.Sku, l.Outstanding))];
        for (var i = 0; i < lines.Count; i++)
            if (purchase.Lines.All(l => l.Sku != lines[i].Sku))
                return Refusal.OfField("expected.not-ordered", $"lines/{i}/sku", $"'{lines[i].Sku}' is not on {purchase.Reference}; receive it with POST /api/stock/receipts.");
        if (!(await mediator.Send(new ReceiveStock(lines, purchase.Reference), cancellationToken)).Succeeds(out _, out refusal)) return refusal;
        purchase.Receive(lines.GroupBy(l => l.Sku).ToDictionary(g => g.Key, g => g.Sum(l => l.Quantity)));
        return ExpectedReceipt.Of(purchase);
    }
}

sealed class RescheduleExpectedHandler(ShopDb db) : IRequestHandler<RescheduleExpected, Outcome<ExpectedReceipt>>
{
    public async Task<Outcome<ExpectedReceipt>> Handle(RescheduleExpected command, CancellationToken cancellationToken)
    {
        if (!(await db.OpenPurchase(command.Id, cancellationToken)).Succeeds(out var purchase, out var refusal)) return refusal;
        purchase.Expect(command.ExpectedOn);
        return ExpectedReceipt.Of(purchase);
    }
}

sealed class CloseExpectedHandler(ShopDb db) : IRequestHandler<CloseExpected, Outcome<ExpectedReceipt>>
{
    public async Task<Outcome<ExpectedReceipt>> Handle(CloseExpected command, CancellationToken cancellationToken)
    {
        if (!(await db.OpenPurchase(command.Id, cancellationToken)).Succeeds(out var purchase, out var refusal)) return refusal;
        purchase.Close();
        return ExpectedReceipt.Of(purchase);
    }
}

static class PurchaseQueries
{
    public static async Task<Outcome<Purchase>> OpenPurchase(this ShopDb db, Guid id, CancellationToken cancellationToken) =>
        await db.Purchases.FirstOrDefaultAsync(p => p.Id == id, cancellationToken) is not { } purchase
            ? new Refusal(RefusalKind.NotFound, "expected.unknown", $"No goods are expected as '{id}'.")
            : purchase.IsClosed
                ? new Refusal(RefusalKind.Conflict, "expected.closed", $"Nothing more is expected of {purchase.Reference}. Receive what came with POST /api/stock/receipts.")
                : purchase;
}
