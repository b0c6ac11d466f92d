using KitWorks.Geometry;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>A number of one stock item.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Quantity">How many.</param>
public sealed record StockLine(string Sku, int Quantity);

/// <summary>What is missing of one stock item.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Short">How many more it takes.</param>
public sealed record Shortage(string Sku, int Short);

/// <summary>
/// The only way a balance changes: a movement and its effect, in the transaction of the command that asks for them, all of
/// the lines or none.
/// </summary>
sealed class Ledger(ShopDb db, Call call, TimeProvider clock)
{
    /// <summary>The most of one item that a shelf is taken to hold, so that a balance stays a whole number of 32 bits.</summary>
    public const int MostOnHand = 2_000_000_000;

    /// <summary>Writes movements and moves the balances; false, with nothing changed, where a balance would leave its bounds.</summary>
    public Task<bool> Post(MovementKind kind, IEnumerable<StockLine> lines, string reference, string? reason, CancellationToken cancellationToken) =>
        new Posting([.. Movements(kind, lines, reference, reason, call.Actor)]).Write(db, cancellationToken);

    /// <summary>As above for several references at once, each with whoever asks for it: all of them or none.</summary>
    public Task<bool> Post(MovementKind kind, IReadOnlyList<StockWish> wishes, CancellationToken cancellationToken) =>
        new Posting([.. wishes.SelectMany(w => Movements(kind, w.Lines, w.Reference, null, w.Actor))]).Write(db, cancellationToken);

    IEnumerable<Movement> Movements(MovementKind kind, IEnumerable<StockLine> lines, string reference, string? reason, string actor)
    {
        var now = clock.GetUtcNow();
        foreach (var line in lines.GroupBy(l => l.Sku).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var (onHand, reserved) = Effect(kind, line.Sum(l => l.Quantity));
            yield return new()
            {
                Sku = line.Key, Kind = kind, OnHandChange = onHand, ReservedChange = reserved, Reference = reference, Reason = reason, Actor = actor, At = now,
            };
        }
    }

    /// <summary>What is missing to take these lines; an unknown item is missing whole.</summary>
    public async Task<List<Shortage>> Missing(IReadOnlyCollection<StockLine> lines, CancellationToken cancellationToken)
    {
        var wanted = lines.GroupBy(l => l.Sku, (sku, of) => new StockLine(sku, of.Sum(l => l.Quantity))).ToList();
        var skus = wanted.ConvertAll(l => l.Sku);
        // Untracked: Post changes the rows past the context, which would go on answering with what it read first.
        var available = await db.StockBalances.AsNoTracking().Where(b => skus.Contains(b.Sku))
            .ToDictionaryAsync(b => b.Sku, b => b.OnHand - b.Reserved, cancellationToken);
        return [.. wanted.Select(l => new Shortage(l.Sku, l.Quantity - available.GetValueOrDefault(l.Sku))).Where(s => s.Short > 0)];
    }

    /// <summary>The refusal for lines whose items are not in stock at all, or null.</summary>
    public async Task<Refusal?> Unknown(IReadOnlyList<string> skus, CancellationToken cancellationToken)
    {
        var known = await db.StockItems.Where(i => skus.Contains(i.Sku)).Select(i => i.Sku).ToListAsync(cancellationToken);
        var errors = skus.Select((sku, i) => (sku, i)).Where(x => !known.Contains(x.sku))
            .Select(x => new FieldError($"lines/{x.i}/sku", $"There is no stock item '{x.sku}'.")).ToList();
        return errors.Count == 0 ? null : new(RefusalKind.Impossible, "stock.unknown-sku", errors[0].Detail) { Errors = [.. errors] };
    }

    static (int OnHand, int Reserved) Effect(MovementKind kind, int quantity) => kind switch
    {
        MovementKind.Receipt or MovementKind.Count or MovementKind.Adjustment or MovementKind.Return => (quantity, 0),
        MovementKind.Reserve => (0, quantity),
        MovementKind.Release => (0, -quantity),
        MovementKind.Consume => (-quantity, -quantity),
        MovementKind.Replacement => (-quantity, 0),
    };
}
