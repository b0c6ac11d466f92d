using Npgsql;
using NpgsqlTypes;

namespace KitWorks.Benchmarks.Orders;

/// <summary>
/// The same rows in the same tables by one SQL function a call: it locks the balances in SKU order, moves them in one
/// update, and writes the rest a set at a time. Its own transaction, its own commit.
/// </summary>
sealed class RawPostgreSql(NpgsqlDataSource source, SampleOrder sample)
{
    const string Function = """
        CREATE OR REPLACE FUNCTION place_raw(order_id uuid, skus text[], quantities int[], design text, stock text, price text, kit bytea, bundles_ jsonb, answer text)
        RETURNS int LANGUAGE plpgsql AS $$
        DECLARE number_ int; moved int;
        BEGIN
            PERFORM 1 FROM stock_balances WHERE "Sku" = ANY(skus) ORDER BY "Sku" FOR NO KEY UPDATE;
            UPDATE stock_balances AS b SET "Reserved" = b."Reserved" + l.quantity FROM unnest(skus, quantities) AS l(sku, quantity)
            WHERE b."Sku" = l.sku AND b."OnHand" - b."Reserved" >= l.quantity;
            GET DIAGNOSTICS moved = ROW_COUNT;
            IF moved <> cardinality(skus) THEN RAISE EXCEPTION 'sold out'; END IF;
            UPDATE counters SET "Value" = "Value" + 1 WHERE "Name" = 'order' RETURNING "Value" INTO number_;
            INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Actor", "At")
            SELECT l.sku, 'Reserve', 0, l.quantity, 'order ' || number_, 'benchmark', 0 FROM unnest(skus, quantities) AS l(sku, quantity);
            INSERT INTO orders ("Id", "Number", "Owner", "Status", "Priority", "Quantity", "CustomerName", "DesignId", "StockLines", "Price", "PlacedAt", "Version")
            VALUES (order_id, number_, 'benchmark', 'Reserved', 0, 1, 'A customer', design, stock, price, 0, 1);
            INSERT INTO order_kits ("OrderId", "Packed") VALUES (order_id, kit);
            INSERT INTO order_events ("Status", "Actor", "At", "OrderId") VALUES ('Waiting', 'benchmark', 0, order_id), ('Reserved', 'benchmark', 0, order_id);
            INSERT INTO bundles ("Code", "OrderId", "OrderNumber", "Number", "OutOf", "KitNumber", "Kits", "Tier", "TierName", "Kind", "Contents", "MassGrams", "LengthTenths", "Status")
            SELECT number_ || '-' || b."Number", order_id, number_, b."Number", b."OutOf", 1, 1, b."Tier", b."TierName", 'Struts', b."Contents", b."MassGrams", b."LengthTenths", 'Open'
            FROM jsonb_to_recordset(bundles_) AS b("Number" int, "OutOf" int, "Tier" int, "TierName" text, "Contents" text, "MassGrams" int, "LengthTenths" int);
            INSERT INTO remembered_answers ("Caller", "Key", "RequestHash", "At", "Value") VALUES ('raw', order_id::text, repeat('0', 64), 0, answer);
            RETURN number_;
        END $$
        """;

    public static async Task<RawPostgreSql> Make(string connection, SampleOrder sample)
    {
        var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(Function);
        await command.ExecuteNonQueryAsync();
        return new(source, sample);
    }

    public ICaller Open() => new RawCaller(source.OpenConnection(), sample);

    /// <summary>Fills the tables with old orders and movements.</summary>
    public async Task Fill()
    {
        await using var command = source.CreateCommand("""
            INSERT INTO orders ("Id", "Number", "Owner", "Status", "Priority", "Quantity", "CustomerName", "DesignId", "StockLines", "Price", "PlacedAt", "Version")
            SELECT gen_random_uuid(), 10000000 + n, 'old', 'Shipped', 0, 1, 'A customer', '0', '[]', '{}', 0, 3 FROM generate_series(1, 100000) AS n;
            INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Actor", "At")
            SELECT 'hot-' || lpad((n % 20)::text, 2, '0'), 'Reserve', 0, 1, 'order ' || (10000000 + n / 10), 'old', 0 FROM generate_series(1, 1000000) AS n;
            ANALYZE
            """);
        command.CommandTimeout = 600;
        await command.ExecuteNonQueryAsync();
    }

    sealed class RawCaller : ICaller
    {
        readonly NpgsqlConnection connection;
        readonly NpgsqlCommand place;

        public RawCaller(NpgsqlConnection connection, SampleOrder sample)
        {
            this.connection = connection;
            place = new("SELECT place_raw($1, $2, $3, $4, $5, $6, $7, $8, $9)", connection)
            {
                Parameters =
                {
                    new() { Value = Guid.Empty }, new() { Value = sample.Skus }, new() { Value = sample.Quantities }, new() { Value = sample.DesignId },
                    new() { Value = sample.StockLines }, new() { Value = sample.Price }, new() { Value = sample.Kit },
                    new() { Value = sample.Bundles, NpgsqlDbType = NpgsqlDbType.Jsonb }, new() { Value = sample.Answer },
                },
            };
            place.Prepare();
        }

        public async Task Order()
        {
            place.Parameters[0].Value = Guid.NewGuid();
            await place.ExecuteScalarAsync();
        }

        public async ValueTask DisposeAsync()
        {
            await place.DisposeAsync();
            await connection.DisposeAsync();
        }
    }
}
