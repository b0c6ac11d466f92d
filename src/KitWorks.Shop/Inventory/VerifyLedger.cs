using System.Data;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Adds the movements up and holds them against the balances.</summary>
public sealed record VerifyLedger : IQuery<LedgerReport>;

/// <summary>What the ledger check found.</summary>
/// <param name="Items">Items checked.</param>
/// <param name="Movements">Movements added up.</param>
/// <param name="Faults">Balances that are not what the movements say, in words; empty when all is well.</param>
public sealed record LedgerReport(int Items, long Movements, IReadOnlyList<string> Faults);

sealed class VerifyLedgerHandler(ShopDb db) : IRequestHandler<VerifyLedger, Outcome<LedgerReport>>
{
    public async Task<Outcome<LedgerReport>> Handle(VerifyLedger query, CancellationToken cancellationToken)
    {
        // One transaction that sees one moment, so that no movement is posted between the two readings.
        await using var reading = await db.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellationToken);
        var balances = await db.StockBalances.AsNoTracking().ToListAsync(cancellationToken);
        var sums = await db.Movements.GroupBy(m => m.Sku)
            .Select(g => new { Sku = g.Key, OnHand = g.Sum(m => m.OnHandChange), Reserved = g.Sum(m => m.ReservedChange), Count = g.LongCount() })
            .ToDictionaryAsync(s => s.Sku, cancellationToken);
        var faults = new List<string>();
        foreach (var balance in balances)
        {
            var (onHand, reserved) = sums.TryGetValue(balance.Sku, out var sum) ? (sum.OnHand, sum.Reserved) : (0, 0);
            if (onHand != balance.OnHand) faults.Add($"{balance.Sku}: {balance.OnHand} on hand, and the movements say {onHand}.");
            if (reserved != balance.Reserved) faults.Add($"{balance.Sku}: {balance.Reserved} reserved, and the movements say {reserved}.");
            if (balance.Reserved < 0 || balance.Reserved > balance.OnHand) faults.Add($"{balance.Sku}: {balance.Reserved} reserved of {balance.OnHand}.");
        }
        faults.AddRange(sums.Keys.Except(balances.Select(b => b.Sku)).Select(sku => $"{sku}: has movements and no balance."));
        return new LedgerReport(balances.Count, sums.Values.Sum(s => s.Count), faults);
    }
}
