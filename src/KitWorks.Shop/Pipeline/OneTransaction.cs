using KitWorks.Geometry;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Pipeline;

/// <summary>
/// Runs each command in one database transaction, together with the commands that it sends itself. What is refused or
/// fails is rolled back whole.
/// </summary>
sealed class OneTransaction<TRequest, T>(ShopDb db) : IPipelineBehavior<TRequest, Outcome<T>> where TRequest : ICommand<T>
{
    public async Task<Outcome<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Outcome<T>> next)
    {
        if (db.Database.CurrentTransaction is not null) return await next();

        await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        var outcome = await next();
        if (outcome.Refusal is null)
        {
            await db.SaveChangesAsync(cancellationToken);
            await transaction.CommitAsync(cancellationToken);
        }
        else
        {
            await transaction.RollbackAsync(cancellationToken);
            db.ChangeTracker.Clear();
        }
        return outcome;
    }
}
