using System.Collections.Concurrent;
using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace KitWorks.Shop.Storage;

/// <summary>
/// Writes many new rows of a table past change tracking, which costs more than the database does: on PostgreSQL in one
/// statement a table, a column an array, and all tables in one round trip; on SQLite by one prepared statement a table, a row
/// a run, for there nothing travels.
/// </summary>
sealed class SetWriting
{
    static readonly ConcurrentDictionary<(bool IsPostgreSql, Type Row), Table> Tables = new();

    readonly List<(Type Row, IReadOnlyList<object> Rows)> waiting = [];

    /// <summary>Rows for the next <see cref="Write"/>; tables are written in the order in which their rows came.</summary>
    public void Add<T>(IReadOnlyList<T> rows) where T : class
    {
        if (rows.Count > 0) waiting.Add((typeof(T), rows));
    }

    public void Forget() => waiting.Clear();

    /// <summary>Inserts what waits, in the transaction that the context is in.</summary>
    /// <exception cref="DbUpdateException">The database refuses a row.</exception>
    public async Task<int> Write(ShopDb db, CancellationToken cancellationToken)
    {
        if (waiting.Count == 0) return 0;
        var isPostgreSql = db.Database.IsPostgreSql();
        var sets = waiting.ConvertAll(w => (Tables.GetOrAdd((isPostgreSql, w.Row), key => new(db.Model.FindEntityType(key.Row)!, key.IsPostgreSql)), w.Rows));
        waiting.Clear();
        var connection = db.Database.GetDbConnection();
        var transaction = db.Database.CurrentTransaction!.GetDbTransaction();
        try
        {
            if (isPostgreSql) await InsertArrays(connection, transaction, sets, cancellationToken);
            else await InsertOneByOne(connection, transaction, sets, cancellationToken);
        }
        catch (DbException refused)
        {
            throw new DbUpdateException("Rows could not be written.", refused);
        }
        return sets.Sum(s => s.Rows.Count);
    }

    static async Task InsertArrays(DbConnection connection, DbTransaction transaction, List<(Table, IReadOnlyList<object>)> sets, CancellationToken cancellationToken)
    {
        await using var batch = connection.CreateBatch();
        batch.Transaction = transaction;
        foreach (var (table, rows) in sets)
        {
            var command = batch.CreateBatchCommand();
            command.CommandText = table.Insert;
            foreach (var column in table.Columns)
            {
                var values = Array.CreateInstance(column.ArrayOf, rows.Count);
                for (var i = 0; i < rows.Count; i++) values.SetValue(column.Of(rows[i]), i);
                Add(command.Parameters, command.CreateParameter(), column.Parameter, values);
            }
            batch.BatchCommands.Add(command);
        }
        await batch.ExecuteNonQueryAsync(cancellationToken);
    }

    static async Task InsertOneByOne(DbConnection connection, DbTransaction transaction, List<(Table, IReadOnlyList<object>)> sets, CancellationToken cancellationToken)
    {
        foreach (var (table, rows) in sets)
        {
            await using var command = connection.CreateCommand();
            (command.Transaction, command.CommandText) = (transaction, table.Insert);
            foreach (var column in table.Columns) Add(command.Parameters, command.CreateParameter(), column.Parameter, DBNull.Value);
            foreach (var row in rows)
            {
                for (var i = 0; i < table.Columns.Count; i++) command.Parameters[i].Value = table.Columns[i].Of(row) ?? DBNull.Value;
                await command.ExecuteNonQueryAsync(cancellationToken);
            }
        }
    }

    static void Add(DbParameterCollection parameters, DbParameter parameter, string name, object value)
    {
        (parameter.ParameterName, parameter.Value) = (name, value);
        parameters.Add(parameter);
    }

    /// <summary>A table as the model maps it, without what the database counts up by itself.</summary>
    sealed class Table
    {
        public Table(IEntityType type, bool isPostgreSql)
        {
            var table = type.GetTableName()!;
            Columns = [.. type.GetProperties().Where(p => p.ValueGenerated == ValueGenerated.Never || !p.ClrType.IsAssignableTo(typeof(long)))
                .Select((p, i) => new Column(p, $"@p{i}"))];
            var names = string.Join(", ", Columns.Select(c => $"\"{c.Name}\""));
            Insert = isPostgreSql
                ? $"INSERT INTO {table} ({names}) SELECT * FROM unnest({string.Join(", ", Columns.Select(c => $"{c.Parameter}::{c.StoreType}[]"))})"
                : $"INSERT INTO {table} ({names}) VALUES ({string.Join(", ", Columns.Select(c => c.Parameter))})";
        }

        public IReadOnlyList<Column> Columns { get; }
        public string Insert { get; }
    }

    sealed class Column
    {
        readonly IProperty property;
        readonly Func<object?, object?>? convert;

        public Column(IProperty property, string parameter)
        {
            (this.property, Parameter) = (property, parameter);
            var mapping = property.GetRelationalTypeMapping();
            (Name, StoreType, convert) = (property.GetColumnName(), mapping.StoreType, mapping.Converter?.ConvertToProvider);
            var stored = mapping.Converter?.ProviderClrType ?? property.ClrType;
            ArrayOf = property.IsNullable && stored.IsValueType && Nullable.GetUnderlyingType(stored) is null ? typeof(Nullable<>).MakeGenericType(stored) : stored;
        }

        public string Name { get; }
        public string Parameter { get; }
        public string StoreType { get; }
        public Type ArrayOf { get; }

        public object? Of(object row)
        {
            var value = property.GetGetter().GetClrValue(row);
            return convert is null || value is null ? value : convert(value);
        }
    }
}
