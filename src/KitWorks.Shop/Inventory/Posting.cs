using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>
/// Movements and what they do to the balances, written a set at a time: line by line costs a round trip each. One
/// conditional update moves all the balances or none; a balance that would leave its bounds, or is not there, stops them all.
/// </summary>
sealed record Posting(IReadOnlyList<Movement> Movements)
{
    public async Task<bool> Write(ShopDb db, CancellationToken cancellationToken)
    {
        // In SKU order, so that whoever writes past the lane takes the rows in the same order.
        var changes = Movements.GroupBy(m => m.Sku).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new BalanceChange(g.Key, g.Sum(m => m.OnHandChange), g.Sum(m => m.ReservedChange))).ToList();
        if (changes.Count == 0) return true;
        var moved = db.Database.IsPostgreSql() ? await MovePostgreSql(db, changes, cancellationToken) : await MoveSqlite(db, changes, cancellationToken);
        if (moved == 0) return false;
        if (moved != changes.Count)
            throw new InvalidOperationException($"{Movements[0].Reference}: {moved} of {changes.Count} balances were moved; something else changes them past the ledger.");
        db.AddAll(Movements);
        return true;
    }

    static Task<int> MoveSqlite(ShopDb db, List<BalanceChange> changes, CancellationToken cancellationToken)
    {
        var lines = StoredJson.Write(changes.Select(c => new object[] { c.Sku, c.OnHand, c.Reserved }));
        return db.Database.ExecuteSqlAsync($"""
            WITH lines AS MATERIALIZED (SELECT value ->> 0 AS sku, value ->> 1 AS on_hand, value ->> 2 AS reserved FROM json_each({lines}))
            UPDATE stock_balances AS s SET "OnHand" = s."OnHand" + lines.on_hand, "Reserved" = s."Reserved" + lines.reserved
            FROM lines
            WHERE s."Sku" = lines.sku AND {changes.Count} = (
                SELECT count(*) FROM lines JOIN stock_balances AS b ON b."Sku" = lines.sku
                WHERE b."Reserved" + lines.reserved BETWEEN 0 AND b."OnHand" + lines.on_hand AND b."OnHand" + lines.on_hand <= {Ledger.MostOnHand})
            """, cancellationToken);
    }

    static Task<int> MovePostgreSql(ShopDb db, List<BalanceChange> changes, CancellationToken cancellationToken)
    {
        var skus = changes.Select(c => c.Sku).ToArray();
        var onHand = changes.Select(c => c.OnHand).ToArray();
        var reserved = changes.Select(c => c.Reserved).ToArray();
        return db.Database.ExecuteSqlAsync($"""
            WITH lines AS MATERIALIZED (SELECT * FROM unnest({skus}, {onHand}, {reserved}) AS l(sku, on_hand, reserved)),
            fitting AS (
                SELECT count(*) AS n FROM lines JOIN stock_balances AS b ON b."Sku" = lines.sku
                WHERE b."Reserved" + lines.reserved BETWEEN 0 AND b."OnHand"::bigint + lines.on_hand AND b."OnHand"::bigint + lines.on_hand <= {Ledger.MostOnHand})
            UPDATE stock_balances AS b SET "OnHand" = b."OnHand" + lines.on_hand, "Reserved" = b."Reserved" + lines.reserved
            FROM lines WHERE b."Sku" = lines.sku AND (SELECT n FROM fitting) = {changes.Count}
            """, cancellationToken);
    }

    /// <summary>What the movements of one item do to its balance.</summary>
    sealed record BalanceChange(string Sku, int OnHand, int Reserved);
}
