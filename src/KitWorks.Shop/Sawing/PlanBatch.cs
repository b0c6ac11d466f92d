using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits.Batches;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>How the pipe of these orders would be cut as one, and what that saves; nothing is kept.</summary>
public sealed record PreviewBatch(IReadOnlyList<Guid> OrderIds) : IQuery<BatchPlan>;

/// <summary>
/// Makes these orders a batch: takes over their pipe, reserves what the batch takes instead, and with it the remnants and
/// the struts ready cut that it uses; what is over is free for others. All of it or nothing.
/// </summary>
public sealed record PlanBatch(IReadOnlyList<Guid> OrderIds) : IPreparedCommand<BatchAnswer>;

static class BatchChoice
{
    public static void Rules<T>(AbstractValidator<T> validator, System.Linq.Expressions.Expression<Func<T, IReadOnlyList<Guid>>> ids) => validator.RuleFor(ids)
        .Must(i => i.Count is >= 1 and <= 200).WithMessage("A batch has 1 to 200 orders.")
        .Must(i => i.Distinct().Count() == i.Count).WithMessage("Name each order once.");
}

sealed class PreviewBatchValidator : AbstractValidator<PreviewBatch>
{
    public PreviewBatchValidator() => BatchChoice.Rules(this, c => c.OrderIds);
}

sealed class PlanBatchValidator : AbstractValidator<PlanBatch>
{
    public PlanBatchValidator() => BatchChoice.Rules(this, c => c.OrderIds);
}

sealed class PreviewBatchHandler(ShopDb db, IMediator mediator) : IRequestHandler<PreviewBatch, Outcome<BatchPlan>>
{
    public async Task<Outcome<BatchPlan>> Handle(PreviewBatch query, CancellationToken cancellationToken) =>
        (await Draft(query.OrderIds, db, mediator, cancellationToken)).Select(draft => draft.Plan);

    public static async Task<Outcome<BatchDraft>> Draft(IReadOnlyList<Guid> ids, ShopDb db, IMediator mediator, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        var orders = new List<OrderedKit>();
        foreach (var id in ids)
        {
            if (!(await mediator.Send(new GetOrderKit(id), cancellationToken)).Succeeds(out var order, out refusal))
                return refusal with { Kind = RefusalKind.Impossible, Errors = [new($"orderIds/{orders.Count}", refusal.Detail)] };
            orders.Add(order);
        }
        var remnants = await db.Remnants.AsNoTracking().Where(r => r.Status == RemnantStatus.Shelved).ToListAsync(cancellationToken);
        var ready = await db.ReadyStruts.AsNoTracking().Where(s => s.OnHand > 0).ToListAsync(cancellationToken);
        return BatchPlanner.Plan(
            orders.ConvertAll(o => new BatchOrder(o.Number, o.Quantity, o.Kit)),
            ready.ConvertAll(s => new CutStruts(s.PipeSku, Length.FromTenths(s.LengthTenths), s.OnHand)),
            remnants.ConvertAll(r => new LabelledRemnant(r.Code, r.PipeSku, Length.FromTenths(r.LengthTenths))), catalog.Workshop)
            .Select(plan => new BatchDraft(plan, orders.ConvertAll(o => (o.OrderId, o.Number, o.Quantity))));
    }
}

/// <summary>A batch that is planned and not kept yet.</summary>
sealed record BatchDraft(BatchPlan Plan, IReadOnlyList<(Guid Id, int Number, int Quantity)> Orders);

sealed class PlanBatchHandler(ShopDb db, IMediator mediator) : IRequestHandler<PlanBatch, Outcome<BatchAnswer>>
{
    public async Task<Outcome<BatchAnswer>> Handle(PlanBatch command, CancellationToken cancellationToken) =>
        (await PreviewBatchHandler.Draft(command.OrderIds, db, mediator, cancellationToken)).Succeeds(out var draft, out var refusal)
            ? await mediator.Send(new KeepBatch(draft), cancellationToken)
            : refusal;
}

/// <summary>Keeps a batch that is planned.</summary>
sealed record KeepBatch(BatchDraft Draft) : ICommand<BatchAnswer>;

sealed class KeepBatchHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<KeepBatch, Outcome<BatchAnswer>>
{
    static Refusal Changed(string what) => new(RefusalKind.Conflict, "batch.changed", $"{what} while the batch was being planned. Plan it again.");

    public async Task<Outcome<BatchAnswer>> Handle(KeepBatch command, CancellationToken cancellationToken)
    {
        var (plan, orders) = command.Draft;
        var id = Guid.CreateVersion7(clock.Moment());
        var batch = new Batch
        {
            Id = id,
            Number = await db.TakeNumbers(CounterQueries.Batch, 1, cancellationToken),
            Plan = StoredJson.Pack(plan),
            MadeBy = call.Actor,
            MadeAt = clock.Moment(),
            Patterns = [.. plan.Pipes.SelectMany(p => p.Patterns).Select(p => new PatternProgress { BatchId = id, Number = p.Number, Times = p.Pattern.Count })],
        };
        foreach (var (orderId, number, quantity) in orders)
        {
            if (!(await mediator.Send(new HandOverPipe(orderId, batch.Number, quantity), cancellationToken)).Succeeds(out var lines, out var refused)) return refused;
            batch.Orders.Add(new() { BatchId = id, OrderId = orderId, OrderNumber = number, PipeLines = StoredJson.Write(lines) });
        }
        if (await Take(batch, plan, cancellationToken) is { } refusal) return refusal;
        db.Batches.Add(batch);
        if (batch.IsCut) await BatchSteps.Finish(batch, mediator, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return BatchAnswer.Of(batch);
    }

    /// <summary>Takes remnants, struts ready cut and pipe for the batch; a refusal where something is not there any more.</summary>
    async Task<Refusal?> Take(Batch batch, BatchPlan plan, CancellationToken cancellationToken)
    {
        var codes = plan.Pipes.SelectMany(p => p.Patterns).SelectMany(p => p.Remnants).ToList();
        var taken = await db.Remnants.Where(r => codes.Contains(r.Code) && r.Status == RemnantStatus.Shelved)
            .ExecuteUpdateAsync(r => r.SetProperty(x => x.Status, RemnantStatus.Taken).SetProperty(x => x.ForBatch, batch.Number), cancellationToken);
        if (taken != codes.Count) return Changed("A remnant was taken");
        foreach (var pipe in plan.Pipes)
            foreach (var piece in pipe.Pieces.Where(p => p.Picked > 0))
                if (await db.ReadyStruts.Where(s => s.PipeSku == pipe.PipeSku && s.LengthTenths == piece.CutLength.Tenths && s.OnHand >= piece.Picked)
                    .ExecuteUpdateAsync(s => s.SetProperty(x => x.OnHand, x => x.OnHand - piece.Picked), cancellationToken) != 1)
                    return Changed("Struts that lay ready were taken");
        var shortages = (await mediator.Send(new ReserveStock(batch.Held(), batch.StockReference), cancellationToken)).Value.Shortages;
        return shortages.Count == 0
            ? null
            : new(RefusalKind.Conflict, "stock.short", $"Stock is short of {string.Join(", ", shortages.Select(s => $"{s.Short} × {s.Sku}"))} for this batch. Choose fewer orders.");
    }
}
