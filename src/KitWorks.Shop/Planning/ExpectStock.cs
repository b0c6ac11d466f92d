using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Planning;

/// <summary>Writes down goods that are bought and when they are due.</summary>
public sealed record ExpectStock(string Reference, string Supplier, DateOnly ExpectedOn, IReadOnlyList<StockLine> Lines) : ICommand<ExpectedReceipt>;

/// <summary>Goods on their way.</summary>
public sealed record ExpectedReceipt(Guid Id, string Reference, string Supplier, DateOnly ExpectedOn, bool Closed, IReadOnlyList<ExpectedLine> Lines)
{
    internal static ExpectedReceipt Of(Purchase p) => new(
        p.Id, p.Reference, p.Supplier, p.ExpectedOn, p.IsClosed,
        [.. p.Lines.OrderBy(l => l.Sku, StringComparer.Ordinal).Select(l => new ExpectedLine(l.Sku, l.Ordered, l.Received, p.IsClosed ? 0 : l.Outstanding))]);
}

/// <summary>One item on its way.</summary>
public sealed record ExpectedLine(string Sku, int Ordered, int Received, int Outstanding);

sealed class ExpectStockValidator : AbstractValidator<ExpectStock>
{
    public ExpectStockValidator()
    {
        RuleFor(c => c.Reference).NotEmpty().WithMessage("Give the number of the order to the supplier, or whatever names it.").MaximumLength(100).WithMessage("A reference is at most 100 characters.");
        RuleFor(c => c.Supplier).MaximumLength(200).WithMessage("A supplier's name is at most 200 characters.");
        RuleFor(c => c.ExpectedOn).InclusiveBetween(new(2000, 1, 1), new(2200, 1, 1)).WithMessage("Give the day when it is due, such as 2026-12-04.");
        RuleFor(c => c.Lines).NotEmpty().WithMessage("Name one item or more.").Must(l => l.Count <= 500).WithMessage("A purchase has at most 500 lines.")
            .Must(l => l.DistinctBy(x => x.Sku).Count() == l.Count).WithMessage("Name each item once.");
        RuleForEach(c => c.Lines).ChildRules(line =>
            line.RuleFor(l => l.Quantity).InclusiveBetween(1, 1_000_000).WithMessage("'{PropertyValue}' is not a quantity; it is 1 to 1,000,000."));
    }
}

sealed class ExpectStockHandler(ShopDb db, IMediator mediator, TimeProvider clock) : IRequestHandler<ExpectStock, Outcome<ExpectedReceipt>>
{
    public async Task<Outcome<ExpectedReceipt>> Handle(ExpectStock command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new KnownItems([.. command.Lines.Select(l => l.Sku)]), cancellationToken)).Succeeds(out _, out var refusal)) return refusal;
        if (await db.Purchases.AnyAsync(p => p.Reference == command.Reference, cancellationToken))
            return Refusal.OfField("expected.reference", "reference", $"'{command.Reference}' is written down already; give another reference.") with { Kind = RefusalKind.Conflict };
        var id = Guid.CreateVersion7(clock.Moment());
        var purchase = new Purchase { Id = id, Reference = command.Reference, Supplier = command.Supplier, ExpectedOn = command.ExpectedOn }
            .With(command.Lines.Select(l => new PurchaseLine { PurchaseId = id, Sku = l.Sku, Ordered = l.Quantity }));
        db.Purchases.Add(purchase);
        return ExpectedReceipt.Of(purchase);
    }
}
