using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Promises all of these lines to an order, or none of them.</summary>
public sealed record ReserveStock(IReadOnlyList<StockLine> Lines, string Reference) : ICommand<Reservation>;

/// <summary>What became of a wish to reserve: reserved whole, or short of these and nothing reserved.</summary>
public sealed record Reservation(IReadOnlyList<Shortage> Shortages)
{
    /// <summary>Whether all of it was reserved.</summary>
    public bool IsWhole => Shortages.Count == 0;
}

/// <summary>Promises to each of several orders all of its lines: to all of the orders, or to none.</summary>
public sealed record ReserveForAll(IReadOnlyList<StockWish> Wishes) : ICommand<bool>;

/// <summary>What an order wants reserved, and who asks for it.</summary>
public sealed record StockWish(IReadOnlyList<StockLine> Lines, string Reference, string Actor);

/// <summary>Takes back what was promised to an order, and tells that it is available, unless the caller does so when it is done.</summary>
public sealed record ReleaseStock(IReadOnlyList<StockLine> Lines, string Reference, bool Serve = true) : ICommand<Unit>;

/// <summary>Lets what was promised to an order leave the house.</summary>
public sealed record ConsumeStock(IReadOnlyList<StockLine> Lines, string Reference) : ICommand<Unit>;

/// <summary>What is missing to take these lines now.</summary>
public sealed record FindShortages(IReadOnlyList<StockLine> Lines) : IQuery<IReadOnlyList<Shortage>>;

sealed class ReserveStockHandler(Ledger ledger) : IRequestHandler<ReserveStock, Outcome<Reservation>>
{
    public async Task<Outcome<Reservation>> Handle(ReserveStock command, CancellationToken cancellationToken)
    {
        if (await ledger.Post(MovementKind.Reserve, command.Lines, command.Reference, null, cancellationToken)) return new Reservation([]);
        var shortages = await ledger.Missing(command.Lines, cancellationToken);
        return shortages.Count > 0
            ? new Reservation(shortages)
            : throw new DbUpdateConcurrencyException($"The stock changed while {command.Reference} was being reserved.");
    }
}

sealed class ReserveForAllHandler(Ledger ledger) : IRequestHandler<ReserveForAll, Outcome<bool>>
{
    public async Task<Outcome<bool>> Handle(ReserveForAll command, CancellationToken cancellationToken) =>
        await ledger.Post(MovementKind.Reserve, command.Wishes, cancellationToken);
}

sealed class ReleaseStockHandler(Ledger ledger, IMediator mediator) : IRequestHandler<ReleaseStock, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(ReleaseStock command, CancellationToken cancellationToken)
    {
        if (!await ledger.Post(MovementKind.Release, command.Lines, command.Reference, null, cancellationToken))
            throw new InvalidOperationException($"{command.Reference} releases more than was reserved.");
        if (command.Serve) await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        return Unit.Value;
    }
}

sealed class ConsumeStockHandler(Ledger ledger) : IRequestHandler<ConsumeStock, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(ConsumeStock command, CancellationToken cancellationToken) =>
        await ledger.Post(MovementKind.Consume, command.Lines, command.Reference, null, cancellationToken)
            ? Unit.Value
            : throw new InvalidOperationException($"{command.Reference} consumes more than was reserved.");
}

sealed class FindShortagesHandler(Ledger ledger) : IRequestHandler<FindShortages, Outcome<IReadOnlyList<Shortage>>>
{
    public async Task<Outcome<IReadOnlyList<Shortage>>> Handle(FindShortages query, CancellationToken cancellationToken) =>
        await ledger.Missing(query.Lines, cancellationToken);
}
