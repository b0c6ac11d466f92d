using Microsoft.Data.Sqlite;

namespace KitWorks.Benchmarks.Orders;

/// <summary>The same rows in the same tables, in prepared statements on one connection, a set in each; one order a commit.</summary>
sealed class RawSqlite(string file, SampleOrder sample)
{
    public ICaller Open() => new RawCaller(file, sample);

    /// <summary>Fills the tables with old orders and movements.</summary>
    public async Task Fill()
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandTimeout = 600;
        command.CommandText = """
            BEGIN;
            INSERT INTO orders ("Id", "Number", "Owner", "Status", "Priority", "Quantity", "CustomerName", "DesignId", "StockLines", "Price", "PlacedAt", "Version")
            SELECT hex(randomblob(16)), 10000000 + value, 'old', 'Shipped', 0, 1, 'A customer', '0', '[]', '{}', 0, 3 FROM generate_series(1, 100000);
            INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Actor", "At")
            SELECT printf('hot-%02d', value % 20), 'Reserve', 0, 1, 'order ' || (10000000 + value / 10), 'old', 0 FROM generate_series(1, 1000000);
            COMMIT;
            """.Replace("generate_series(1, 100000)", Numbers(100_000), StringComparison.Ordinal).Replace("generate_series(1, 1000000)", Numbers(1_000_000), StringComparison.Ordinal);
        await command.ExecuteNonQueryAsync();
    }

    static string Numbers(int most) => $"(WITH RECURSIVE n(value) AS (SELECT 1 UNION ALL SELECT value + 1 FROM n WHERE value < {most}) SELECT value FROM n)";

    sealed class RawCaller : ICaller
    {
        readonly SqliteConnection connection;
        readonly SampleOrder sample;
        readonly SqliteCommand number, balances, movements, order, kit, events, bundles, answer;

        public RawCaller(string file, SampleOrder sample)
        {
            this.sample = sample;
            connection = new($"Data Source={file};Pooling=False");
            connection.Open();
            Command("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON").ExecuteNonQuery();
            var lines = System.Text.Json.JsonSerializer.Serialize(sample.Skus.Zip(sample.Quantities, (s, q) => new object[] { s, q }));
            number = Command("""UPDATE counters SET "Value" = "Value" + 1 WHERE "Name" = 'order' RETURNING "Value" """);
            balances = Command("""
                WITH lines AS MATERIALIZED (SELECT value ->> 0 AS item, value ->> 1 AS quantity FROM json_each(@lines))
                UPDATE stock_balances SET "Reserved" = "Reserved" + lines.quantity FROM lines WHERE "Sku" = lines.item AND "OnHand" - "Reserved" >= lines.quantity
                """, ("@lines", lines));
            movements = Command("""
                INSERT INTO stock_movements ("Sku", "Kind", "OnHandChange", "ReservedChange", "Reference", "Actor", "At")
                SELECT value ->> 0, 'Reserve', 0, value ->> 1, 'order ' || @number, 'benchmark', 0 FROM json_each(@lines)
                """, ("@lines", lines), ("@number", 0));
            order = Command("""
                INSERT INTO orders ("Id", "Number", "Owner", "Status", "Priority", "Quantity", "CustomerName", "DesignId", "StockLines", "Price", "PlacedAt", "Version")
                VALUES (@id, @number, 'benchmark', 'Reserved', 0, 1, 'A customer', @design, @stock, @price, 0, 1)
                """, ("@id", ""), ("@number", 0), ("@design", sample.DesignId), ("@stock", sample.StockLines), ("@price", sample.Price));
            kit = Command("""INSERT INTO order_kits ("OrderId", "Packed") VALUES (@id, @kit)""", ("@id", ""), ("@kit", sample.Kit));
            events = Command("""INSERT INTO order_events ("Status", "Actor", "At", "OrderId") VALUES ('Waiting', 'benchmark', 0, @id), ('Reserved', 'benchmark', 0, @id)""", ("@id", ""));
            bundles = Command("""
                INSERT INTO bundles ("Code", "OrderId", "OrderNumber", "Number", "OutOf", "KitNumber", "Kits", "Tier", "TierName", "Kind", "Contents", "MassGrams", "LengthTenths", "Status")
                SELECT @number || '-' || (value ->> 'Number'), @id, @number, value ->> 'Number', value ->> 'OutOf', 1, 1, value ->> 'Tier', value ->> 'TierName', 'Struts',
                    value ->> 'Contents', value ->> 'MassGrams', value ->> 'LengthTenths', 'Open' FROM json_each(@bundles)
                """, ("@id", ""), ("@number", 0), ("@bundles", sample.Bundles));
            answer = Command("""INSERT INTO remembered_answers ("Caller", "Key", "RequestHash", "At", "Value") VALUES ('raw', @id, @hash, 0, @answer)""",
                ("@id", ""), ("@hash", new string('0', 64)), ("@answer", sample.Answer));
        }

        public Task Order()
        {
            var id = Guid.NewGuid().ToString();
            using var transaction = connection.BeginTransaction();
            foreach (var command in (SqliteCommand[])[number, balances, movements, order, kit, events, bundles, answer]) command.Transaction = transaction;
            var taken = Convert.ToInt32(number.ExecuteScalar());
            if (balances.ExecuteNonQuery() != sample.Skus.Length) throw new InvalidOperationException("Sold out.");
            movements.Parameters["@number"].Value = order.Parameters["@number"].Value = bundles.Parameters["@number"].Value = taken;
            foreach (var command in (SqliteCommand[])[order, kit, events, bundles, answer]) command.Parameters["@id"].Value = id;
            movements.ExecuteNonQuery();
            order.ExecuteNonQuery();
            kit.ExecuteNonQuery();
            events.ExecuteNonQuery();
            bundles.ExecuteNonQuery();
            answer.ExecuteNonQuery();
            transaction.Commit();
            return Task.CompletedTask;
        }

        public ValueTask DisposeAsync() => connection.DisposeAsync();

        SqliteCommand Command(string text, params (string Name, object Value)[] parameters)
        {
            var command = connection.CreateCommand();
            command.CommandText = text;
            foreach (var (name, value) in parameters) command.Parameters.AddWithValue(name, value);
            return command;
        }
    }
}
