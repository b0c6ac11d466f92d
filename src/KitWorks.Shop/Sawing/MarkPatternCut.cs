using KitWorks.Geometry;
using KitWorks.Kits.Batches;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>
/// A pattern of a batch has been cut so many times, or as often as it still was to be: its pipe leaves the stock, and what
/// is long enough to keep becomes remnants, each with a code for its label.
/// </summary>
public sealed record MarkPatternCut(Guid BatchId, int Pattern, int? Times) : ICommand<PatternCut>;

/// <summary>What was cut, and what it left.</summary>
/// <param name="Batch">The batch as it stands now.</param>
/// <param name="Times">How many times the pattern was marked.</param>
/// <param name="Remnants">The remnants that it left, to be labelled and shelved.</param>
public sealed record PatternCut(BatchAnswer Batch, int Times, IReadOnlyList<RemnantAnswer> Remnants);

sealed class MarkPatternCutHandler(ShopDb db, IMediator mediator) : IRequestHandler<MarkPatternCut, Outcome<PatternCut>>
{
    public async Task<Outcome<PatternCut>> Handle(MarkPatternCut command, CancellationToken cancellationToken)
    {
        if (await db.Batches.AsSplitQuery().FirstOrDefaultAsync(b => b.Id == command.BatchId, cancellationToken) is not { } batch) return GetBatchHandler.Unknown(command.BatchId);
        if (batch.Status is not (BatchStatus.Planned or BatchStatus.Cutting))
            return new Refusal(RefusalKind.Conflict, "batch.status", $"Batch {batch.Number} is {batch.StatusWord}; there is nothing to cut.");
        if (batch.Patterns.SingleOrDefault(p => p.Number == command.Pattern) is not { } progress)
            return new Refusal(RefusalKind.NotFound, "batch.pattern", $"Batch {batch.Number} has the patterns 1 to {batch.Patterns.Count}.");
        var left = progress.Times - progress.Cut;
        var times = command.Times ?? left;
        if (times < 1 || times > left)
            return Refusal.OfField("batch.times", "times", $"Pattern {progress.Number} is still to be cut {left} times, not {times}.") with { Kind = RefusalKind.Conflict };
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;

        var (pipe, pattern) = batch.Read().Pipes.SelectMany(p => p.Patterns, (p, x) => (p, x)).Single(x => x.x.Number == progress.Number);
        if (pattern.Pattern.Sku is { } sku) await mediator.Send(new ConsumeStock([new(sku, times)], batch.StockReference), cancellationToken);
        else await UseUp(pattern.Remnants[progress.Cut..(progress.Cut + times)], cancellationToken);
        progress.Cut += times;
        var remnants = await Shelve(pipe.PipeSku, pattern, times, batch.Number, catalog.Workshop, cancellationToken);
        if (batch.IsCut) await BatchSteps.Finish(batch, mediator, cancellationToken);
        else batch.Become(BatchStatus.Cutting);
        return new PatternCut(BatchAnswer.Of(batch), times, remnants);
    }

    async Task UseUp(IReadOnlyList<string> codes, CancellationToken cancellationToken) =>
        await db.Remnants.Where(r => codes.Contains(r.Code)).ExecuteUpdateAsync(r => r.SetProperty(x => x.Status, RemnantStatus.Gone), cancellationToken);

    async Task<List<RemnantAnswer>> Shelve(string pipeSku, BatchPattern pattern, int times, int batch, Workshop workshop, CancellationToken cancellationToken)
    {
        if (pattern.Pattern.Remnant < workshop.ShortestRemnant) return [];
        var remnants = new List<RemnantAnswer>();
        for (var i = 0; i < times; i++)
            remnants.Add(await db.Shelve(pipeSku, pattern.Pattern.Remnant, "", batch, cancellationToken));
        return remnants;
    }
}

static class BatchSteps
{
    /// <summary>All is cut: the orders have their struts.</summary>
    public static async Task Finish(Batch batch, IMediator mediator, CancellationToken cancellationToken)
    {
        batch.Become(BatchStatus.Done);
        foreach (var order in batch.Orders) await mediator.Send(new HavePipeCut(order.OrderId), cancellationToken);
    }
}
