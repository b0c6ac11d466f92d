using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>What a movement does to one balance.</summary>
sealed record BalanceChange(string Sku, int OnHand, int Reserved);

/// <summary>
/// Changes of balances and their movements, written a set at a time: line by line costs a round trip each. One conditional
/// update moves all the balances or none; a balance that would leave its bounds, or is not there, stops them all.
/// </summary>
sealed record Posting(MovementKind Kind, IReadOnlyList<BalanceChange> Changes, string Reference, string? Reason, string Actor, DateTimeOffset At)
{
    public async Task<bool> Write(ShopDb db, CancellationToken cancellationToken)
    {
        if (Changes.Count == 0) return true;
        var moved = db.Database.IsPostgreSql() ? await WritePostgreSql(db, cancellationToken) : await WriteSqlite(db, cancellationToken);
        if (moved != 0 && moved != Changes.Count)
            throw new InvalidOperationException($"{Reference}: {moved} of {Changes.Count} balances were moved; something else changes them past the ledger.");
        return moved != 0;
    }

    async Task<int> WriteSqlite(ShopDb db, CancellationToken cancellationToken)
    {
        var lines = StoredJson.Write(Changes.Select(c => new object[] { c.Sku, c.OnHand, c.Reserved }));
        var moved = await db.Database.ExecuteSqlAsync($"""
            WITH lines AS MATERIALIZED (SELECT value ->> 0 AS sku, value ->> 1 AS on_hand, value ->> 2 AS reserved FROM json_each({lines}))
            UPDATE stock_balances AS s SET "OnHand" = s."OnHand" + lines.on_hand, "Reserved" = s."Reserved" + lines.reserved
            FROM lines
            WHERE s."Sku" = lines.sku AND {Changes.Count} = (
                SELECT count(*) FROM lines JOIN stock_balances AS b ON b."Sku" = lines.sku
                WHERE b."Reserved" + lines.reserved BETWEEN 0 AND b."OnHand" + lines.on_hand AND b."OnHand" + lines.on_hand <= {Ledger.MostOnHand})
            """, cancellationToken);
        if (moved == 0) return 0;
        return await db.Database.ExecuteSqlAsync($"""
            INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Reason", "Actor", "At")
            SELECT value ->> 0, {Kind.ToString()}, value ->> 1, value ->> 2, {Reference}, {Reason}, {Actor}, {At.ToUnixTimeMilliseconds()} FROM json_each({lines})
            """, cancellationToken);
    }

    Task<int> WritePostgreSql(ShopDb db, CancellationToken cancellationToken)
    {
        var skus = Changes.Select(c => c.Sku).ToArray();
        var onHand = Changes.Select(c => c.OnHand).ToArray();
        var reserved = Changes.Select(c => c.Reserved).ToArray();
        return db.Database.ExecuteSqlAsync($"""
            WITH lines AS MATERIALIZED (SELECT * FROM unnest({skus}, {onHand}, {reserved}) AS l(sku, on_hand, reserved)),
            fitting AS (
                SELECT count(*) AS n FROM lines JOIN stock_balances AS b ON b."Sku" = lines.sku
                WHERE b."Reserved" + lines.reserved BETWEEN 0 AND b."OnHand"::bigint + lines.on_hand AND b."OnHand"::bigint + lines.on_hand <= {Ledger.MostOnHand}),
            moved AS (
                UPDATE stock_balances AS b SET "OnHand" = b."OnHand" + lines.on_hand, "Reserved" = b."Reserved" + lines.reserved
                FROM lines WHERE b."Sku" = lines.sku AND (SELECT n FROM fitting) = {Changes.Count}
                RETURNING b."Sku", lines.on_hand, lines.reserved)
            INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Reason", "Actor", "At")
            SELECT "Sku", {Kind.ToString()}, on_hand, reserved, {Reference}, {Reason}, {Actor}, {At.ToUnixTimeMilliseconds()} FROM moved
            """, cancellationToken);
    }
}
