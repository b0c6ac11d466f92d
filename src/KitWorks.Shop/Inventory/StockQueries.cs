using System.Linq.Expressions;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>A page of a list, and where the next begins.</summary>
/// <param name="Items">The items.</param>
/// <param name="Next">The cursor of the next page; null on the last.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next);

/// <summary>The stock items, by SKU.</summary>
public sealed record ListStock(int Limit, string? After) : IQuery<Page<StockItemAnswer>>;

/// <summary>One stock item.</summary>
public sealed record GetStockItem(string Sku) : IQuery<StockItemAnswer>;

/// <summary>The ledger of one item, newest first.</summary>
public sealed record ListMovements(string Sku, int Limit, string? After) : IQuery<Page<MovementAnswer>>;

/// <summary>A stock item and its balance.</summary>
public sealed record StockItemAnswer(
    string Sku, string Kind, string Description, string Unit, int OnHand, int Reserved, int Available, int ReorderAt, string Bin);

/// <summary>An entry of the ledger.</summary>
public sealed record MovementAnswer(
    long Id, MovementKind Kind, int OnHandChange, int ReservedChange, string Reference, string? Reason, string Actor, DateTimeOffset At);

sealed class ListStockHandler(ShopDb db) : IRequestHandler<ListStock, Outcome<Page<StockItemAnswer>>>
{
    public async Task<Outcome<Page<StockItemAnswer>>> Handle(ListStock query, CancellationToken cancellationToken)
    {
        var after = query.After ?? "";
        var items = await GetStockItemHandler.Answers(db, i => string.Compare(i.Sku, after) > 0).Take(query.Limit + 1).ToListAsync(cancellationToken);
        return Pages.Of(items, query.Limit, i => i.Sku);
    }
}

sealed class GetStockItemHandler(ShopDb db) : IRequestHandler<GetStockItem, Outcome<StockItemAnswer>>
{
    public async Task<Outcome<StockItemAnswer>> Handle(GetStockItem query, CancellationToken cancellationToken) =>
        await Answers(db, i => i.Sku == query.Sku).FirstOrDefaultAsync(cancellationToken) is { } item ? item : Unknown(query.Sku);

    /// <summary>The answers for these items, by SKU. What is asked of them is asked before they are made; no database looks into an answer.</summary>
    public static IQueryable<StockItemAnswer> Answers(ShopDb db, Expression<Func<StockItem, bool>> which) => db.StockItems.Where(which)
        .Join(db.StockBalances, i => i.Sku, b => b.Sku, (item, balance) => new { item, balance })
        .OrderBy(x => x.item.Sku)
        .Select(x => new StockItemAnswer(
            x.item.Sku, x.item.Kind, x.item.Description, x.item.Unit, x.balance.OnHand, x.balance.Reserved, x.balance.OnHand - x.balance.Reserved,
            x.item.ReorderAt, x.item.Bin));

    public static Refusal Unknown(string sku) => new(RefusalKind.NotFound, "stock.unknown-sku", $"There is no stock item '{sku}'.");
}

sealed class ListMovementsHandler(ShopDb db) : IRequestHandler<ListMovements, Outcome<Page<MovementAnswer>>>
{
    public async Task<Outcome<Page<MovementAnswer>>> Handle(ListMovements query, CancellationToken cancellationToken)
    {
        if (!await db.StockItems.AnyAsync(i => i.Sku == query.Sku, cancellationToken)) return GetStockItemHandler.Unknown(query.Sku);
        var before = long.MaxValue;
        if (query.After is { } after && !long.TryParse(after, out before)) return Pages.BadCursor;
        var movements = await db.Movements.Where(m => m.Sku == query.Sku && m.Id < before).OrderByDescending(m => m.Id).Take(query.Limit + 1)
            .Select(m => new MovementAnswer(m.Id, m.Kind, m.OnHandChange, m.ReservedChange, m.Reference, m.Reason, m.Actor, m.At))
            .ToListAsync(cancellationToken);
        return Pages.Of(movements, query.Limit, m => m.Id.ToString());
    }
}

static class Pages
{
    public static Refusal BadCursor => new(RefusalKind.Malformed, "list.after", "This cursor is not one that this list gave; take it from the field next.");

    /// <summary>A page of items of which one more than the limit was read, to see whether another page follows.</summary>
    public static Page<T> Of<T>(List<T> items, int limit, Func<T, string> cursor) => items.Count <= limit
        ? new(items, null)
        : new(items.GetRange(0, limit), cursor(items[limit - 1]));
}

/// <summary>Where these items are kept, by SKU.</summary>
public sealed record FindBins(IReadOnlyList<string> Skus) : IQuery<IReadOnlyDictionary<string, string>>;

sealed class FindBinsHandler(ShopDb db) : IRequestHandler<FindBins, Outcome<IReadOnlyDictionary<string, string>>>
{
    public async Task<Outcome<IReadOnlyDictionary<string, string>>> Handle(FindBins query, CancellationToken cancellationToken) =>
        await db.StockItems.Where(i => query.Skus.Contains(i.Sku)).ToDictionaryAsync(i => i.Sku, i => i.Bin, cancellationToken);
}

/// <summary>How many of these items are available, by SKU; an item that is not kept is not in the answer.</summary>
public sealed record FindAvailable(IReadOnlyList<string> Skus) : IQuery<IReadOnlyDictionary<string, int>>;

sealed class FindAvailableHandler(ShopDb db) : IRequestHandler<FindAvailable, Outcome<IReadOnlyDictionary<string, int>>>
{
    public async Task<Outcome<IReadOnlyDictionary<string, int>>> Handle(FindAvailable query, CancellationToken cancellationToken) =>
        await db.StockBalances.AsNoTracking().Where(b => query.Skus.Contains(b.Sku)).ToDictionaryAsync(b => b.Sku, b => b.OnHand - b.Reserved, cancellationToken);
}
