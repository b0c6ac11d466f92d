using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>
/// Takes a batch apart that nothing is cut of: its pipe, remnants and struts go back, and its orders take their own pipe
/// again. An order that is then short waits.
/// </summary>
public sealed record DissolveBatch(Guid Id) : ICommand<BatchAnswer>;

sealed class DissolveBatchHandler(ShopDb db, IMediator mediator) : IRequestHandler<DissolveBatch, Outcome<BatchAnswer>>
{
    public async Task<Outcome<BatchAnswer>> Handle(DissolveBatch command, CancellationToken cancellationToken)
    {
        if (await db.Batches.AsSplitQuery().FirstOrDefaultAsync(b => b.Id == command.Id, cancellationToken) is not { } batch) return GetBatchHandler.Unknown(command.Id);
        if (batch.Status != BatchStatus.Planned)
            return new Refusal(RefusalKind.Conflict, "batch.status", $"Batch {batch.Number} is {batch.StatusWord}; only one of which nothing is cut can be dissolved.");
        var held = batch.Held();
        if (held.Count > 0) await mediator.Send(new ReleaseStock(held, batch.StockReference, Serve: false), cancellationToken);
        await db.Remnants.Where(r => r.ForBatch == batch.Number && r.Status == RemnantStatus.Taken)
            .ExecuteUpdateAsync(r => r.SetProperty(x => x.Status, RemnantStatus.Shelved).SetProperty(x => x.ForBatch, (int?)null), cancellationToken);
        foreach (var pipe in batch.Read().Pipes)
            foreach (var piece in pipe.Pieces.Where(p => p.Picked > 0))
                await db.AddReady(pipe.PipeSku, piece.CutLength, piece.Picked, cancellationToken);
        batch.Become(BatchStatus.Dissolved);
        foreach (var order in batch.Orders.OrderBy(o => o.OrderNumber))
            if (!(await mediator.Send(new TakePipeBack(order.OrderId, StoredJson.Read<List<StockLine>>(order.PipeLines)), cancellationToken)).Succeeds(out _, out var refusal))
                return refusal;
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return BatchAnswer.Of(batch);
    }
}
