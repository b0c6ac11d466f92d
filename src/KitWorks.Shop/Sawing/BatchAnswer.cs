using KitWorks.Geometry;
using KitWorks.Kits.Batches;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>Batches, newest first.</summary>
public sealed record ListBatches(int Limit, string? After) : IQuery<Page<BatchSummary>>;

/// <summary>One batch.</summary>
public sealed record GetBatch(Guid Id) : IQuery<BatchAnswer>;

/// <summary>A batch in a list.</summary>
public sealed record BatchSummary(Guid Id, int Number, BatchStatus Status, IReadOnlyList<int> Orders, DateTimeOffset MadeAt);

/// <summary>An order in a batch.</summary>
public sealed record BatchedOrderAnswer(Guid Id, int Number);

/// <summary>How far a pattern is.</summary>
public sealed record PatternDone(int Number, int Times, int Cut);

/// <summary>A batch.</summary>
public sealed record BatchAnswer(
    Guid Id, int Number, BatchStatus Status, IReadOnlyList<BatchedOrderAnswer> Orders, BatchPlan Plan, IReadOnlyList<PatternDone> Patterns,
    IReadOnlyList<StockLine> Reservations, string MadeBy, DateTimeOffset MadeAt)
{
    internal static BatchAnswer Of(Batch b) => new(
        b.Id, b.Number, b.Status, [.. b.Orders.OrderBy(o => o.OrderNumber).Select(o => new BatchedOrderAnswer(o.OrderId, o.OrderNumber))], b.Read(),
        [.. b.Patterns.OrderBy(p => p.Number).Select(p => new PatternDone(p.Number, p.Times, p.Cut))], b.Held(), b.MadeBy, b.MadeAt);
}

sealed class ListBatchesHandler(ShopDb db) : IRequestHandler<ListBatches, Outcome<Page<BatchSummary>>>
{
    public async Task<Outcome<Page<BatchSummary>>> Handle(ListBatches query, CancellationToken cancellationToken)
    {
        var before = int.MaxValue;
        if (query.After is { } after && !int.TryParse(after, out before)) return Pages.BadCursor;
        var batches = await db.Batches.AsNoTracking().Where(b => b.Number < before).OrderByDescending(b => b.Number).Take(query.Limit + 1)
            .Select(b => new { b.Id, b.Number, b.Status, Orders = b.Orders.Select(o => o.OrderNumber).ToList(), b.MadeAt }).ToListAsync(cancellationToken);
        return Pages.Of(batches.ConvertAll(b => new BatchSummary(b.Id, b.Number, b.Status, [.. b.Orders.Order()], b.MadeAt)), query.Limit, b => b.Number.ToString());
    }
}

sealed class GetBatchHandler(ShopDb db) : IRequestHandler<GetBatch, Outcome<BatchAnswer>>
{
    public async Task<Outcome<BatchAnswer>> Handle(GetBatch query, CancellationToken cancellationToken) =>
        await db.Batches.AsNoTracking().AsSplitQuery().FirstOrDefaultAsync(b => b.Id == query.Id, cancellationToken) is { } batch ? BatchAnswer.Of(batch) : Unknown(query.Id);

    public static Refusal Unknown(Guid id) => new(RefusalKind.NotFound, "batch.unknown", $"There is no batch '{id}'.");
}
