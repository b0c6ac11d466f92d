using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Puts the balance of one item right by a number, with a reason.</summary>
public sealed record AdjustStock(string Sku, int Quantity, string Reason) : ICommand<StockBalanceAnswer>;

/// <summary>Sets on hand to what was counted on the shelf.</summary>
public sealed record CountStock(IReadOnlyList<CountedLine> Lines, string Reason) : ICommand<StockCounted>;

/// <summary>What was counted of one item.</summary>
public sealed record CountedLine(string Sku, int Counted);

/// <summary>The balance of an item.</summary>
public sealed record StockBalanceAnswer(string Sku, int OnHand, int Reserved, int Available);

/// <summary>What a count changed, item by item.</summary>
public sealed record StockCounted(IReadOnlyList<CountDifference> Lines);

/// <summary>Counted less what was thought to be there.</summary>
public sealed record CountDifference(string Sku, int Counted, int Difference);

sealed class AdjustStockValidator : AbstractValidator<AdjustStock>
{
    public AdjustStockValidator()
    {
        RuleFor(c => c.Sku).NotEmpty().WithMessage("Say which stock item.");
        RuleFor(c => c.Quantity).Must(q => q is not 0 and >= -1_000_000 and <= 1_000_000)
            .WithMessage("'{PropertyValue}' adjusts nothing or too much; it is −1,000,000 to 1,000,000 and not 0.");
        RuleFor(c => c.Reason).NotEmpty().WithMessage("Say why, for the ledger.").MaximumLength(200).WithMessage("A reason is at most 200 characters.");
    }
}

sealed class CountStockValidator : AbstractValidator<CountStock>
{
    public CountStockValidator()
    {
        RuleFor(c => c.Lines).NotEmpty().WithMessage("A count has one line or more.")
            .Must(l => l.Count <= 500).WithMessage("A count has at most 500 lines.")
            .Must(l => l.DistinctBy(x => x.Sku).Count() == l.Count).WithMessage("An item stands in a count once.");
        RuleForEach(c => c.Lines).ChildRules(line =>
            line.RuleFor(l => l.Counted).InclusiveBetween(0, 10_000_000).WithMessage("'{PropertyValue}' cannot be counted; it is 0 to 10,000,000."));
        RuleFor(c => c.Reason).NotEmpty().WithMessage("Say why, for the ledger.").MaximumLength(200).WithMessage("A reason is at most 200 characters.");
    }
}

sealed class AdjustStockHandler(ShopDb db, Ledger ledger, IMediator mediator) : IRequestHandler<AdjustStock, Outcome<StockBalanceAnswer>>
{
    public async Task<Outcome<StockBalanceAnswer>> Handle(AdjustStock command, CancellationToken cancellationToken)
    {
        if (await Balance(command.Sku, cancellationToken) is not { } before)
            return Refusal.OfField("stock.unknown-sku", "sku", $"There is no stock item '{command.Sku}'.");
        if (!await ledger.Post(MovementKind.Adjustment, [new(command.Sku, command.Quantity)], command.Reason, command.Reason, cancellationToken))
            return command.Quantity > 0 ? Refusal.OfField("stock.too-much", "quantity", $"More than {Ledger.MostOnHand:N0} of an item cannot be kept.")
                : Refusal.OfField("stock.reserved", "quantity",
                $"{before.OnHand} are on hand and {before.Reserved} of them promised; {before.Available} can be taken off. Cancel an order first.");
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return (await Balance(command.Sku, cancellationToken))!;
    }

    Task<StockBalanceAnswer?> Balance(string sku, CancellationToken cancellationToken) => db.StockBalances.Where(b => b.Sku == sku)
        .Select(b => new StockBalanceAnswer(b.Sku, b.OnHand, b.Reserved, b.OnHand - b.Reserved)).FirstOrDefaultAsync(cancellationToken);
}

sealed class CountStockHandler(ShopDb db, Ledger ledger, IMediator mediator) : IRequestHandler<CountStock, Outcome<StockCounted>>
{
    public async Task<Outcome<StockCounted>> Handle(CountStock command, CancellationToken cancellationToken)
    {
        if (await ledger.Unknown([.. command.Lines.Select(l => l.Sku)], cancellationToken) is { } refusal) return refusal;
        var differences = new List<CountDifference>();
        foreach (var (line, place) in command.Lines.Select((l, i) => (l, i)).OrderBy(x => x.l.Sku, StringComparer.Ordinal))
        {
            var before = await db.StockBalances.AsNoTracking().SingleAsync(b => b.Sku == line.Sku, cancellationToken);
            if (!await ledger.Post(MovementKind.Count, [new(line.Sku, line.Counted - before.OnHand)], command.Reason, command.Reason, cancellationToken))
                return Refusal.OfField("stock.reserved", $"lines/{place}/counted",
                    $"{line.Counted} of {line.Sku} were counted, and {before.Reserved} are promised to orders. Cancel an order first.");
            differences.Add(new(line.Sku, line.Counted, line.Counted - before.OnHand));
        }
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return new StockCounted(differences);
    }
}
