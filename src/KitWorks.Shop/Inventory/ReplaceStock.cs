using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Takes parts that nobody is promised straight out of stock, to replace some that went out before.</summary>
public sealed record ReplaceStock(IReadOnlyList<StockLine> Lines, string Reference, string Reason) : ICommand<Unit>;

/// <summary>Takes back what went out under a reference: at most what went out, less what came back before.</summary>
public sealed record ReturnStock(IReadOnlyList<StockLine> Lines, string Reference, string Reason) : ICommand<Unit>;

sealed class ReplaceStockHandler(Ledger ledger) : IRequestHandler<ReplaceStock, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(ReplaceStock command, CancellationToken cancellationToken)
    {
        if (await ledger.Unknown([.. command.Lines.Select(l => l.Sku)], cancellationToken) is { } unknown) return unknown;
        if (await ledger.Post(MovementKind.Replacement, command.Lines, command.Reference, command.Reason, cancellationToken)) return Unit.Value;
        var missing = await ledger.Missing(command.Lines, cancellationToken);
        return new Refusal(RefusalKind.Conflict, "stock.short", $"Stock is short of {string.Join(", ", missing.Select(s => $"{s.Short} × {s.Sku}"))}.");
    }
}

sealed class ReturnStockHandler(ShopDb db, Ledger ledger, IMediator mediator) : IRequestHandler<ReturnStock, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(ReturnStock command, CancellationToken cancellationToken)
    {
        var wentOut = await db.Movements.Where(m => m.Reference == command.Reference && m.OnHandChange != 0)
            .GroupBy(m => m.Sku).Select(g => new { Sku = g.Key, Out = -g.Sum(m => m.OnHandChange) })
            .ToDictionaryAsync(x => x.Sku, x => x.Out, cancellationToken);
        foreach (var line in command.Lines.GroupBy(l => l.Sku))
            if (line.Sum(l => l.Quantity) > wentOut.GetValueOrDefault(line.Key))
                return Refusal.OfField("stock.not-sent", "lines", $"{Math.Max(0, wentOut.GetValueOrDefault(line.Key))} × {line.Key} are out with {command.Reference}; no more can come back.");
        if (!await ledger.Post(MovementKind.Return, command.Lines, command.Reference, command.Reason, cancellationToken))
            return Refusal.OfField("stock.too-much", "lines", $"More than {Ledger.MostOnHand:N0} of an item cannot be kept.");
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return Unit.Value;
    }
}
