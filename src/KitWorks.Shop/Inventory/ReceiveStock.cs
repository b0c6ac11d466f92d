using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Inventory;

/// <summary>Goods that came in.</summary>
public sealed record ReceiveStock(IReadOnlyList<StockLine> Lines, string Reference) : ICommand<StockReceived>;

/// <summary>What was received, and which waiting orders it served.</summary>
public sealed record StockReceived(IReadOnlyList<StockLine> Lines, string Reference);

/// <summary>Stock became available: by a receipt, a count, an adjustment or a release. Sent inside the same transaction.</summary>
public sealed record StockBecameAvailable : INotification;

sealed class ReceiveStockValidator : AbstractValidator<ReceiveStock>
{
    public ReceiveStockValidator()
    {
        RuleFor(c => c.Lines).NotEmpty().WithMessage("A receipt has one line or more.")
            .Must(l => l.Count <= 500).WithMessage("A receipt has at most 500 lines.");
        RuleForEach(c => c.Lines).ChildRules(line =>
            line.RuleFor(l => l.Quantity).InclusiveBetween(1, 1_000_000).WithMessage("'{PropertyValue}' is not a quantity received; it is 1 to 1,000,000."));
        RuleFor(c => c.Reference).NotEmpty().WithMessage("Give the delivery note or whatever names this receipt.")
            .MaximumLength(100).WithMessage("A reference is at most 100 characters.");
    }
}

sealed class ReceiveStockHandler(Ledger ledger, IMediator mediator) : IRequestHandler<ReceiveStock, Outcome<StockReceived>>
{
    public async Task<Outcome<StockReceived>> Handle(ReceiveStock command, CancellationToken cancellationToken)
    {
        if (await ledger.Unknown([.. command.Lines.Select(l => l.Sku)], cancellationToken) is { } refusal) return refusal;
        if (!await ledger.Post(MovementKind.Receipt, command.Lines, command.Reference, null, cancellationToken))
            return Refusal.OfField("stock.too-much", "lines", $"More than {Ledger.MostOnHand:N0} of an item cannot be kept. Check the quantities.");
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return new StockReceived(command.Lines, command.Reference);
    }
}
