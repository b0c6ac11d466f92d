using KitWorks.Geometry;
using KitWorks.Shop.Auditing;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Pipeline;

/// <summary>
/// Runs each command in one database transaction, together with the commands that it sends itself and with the answer that
/// is remembered under its idempotency key, and with the note of who did it. What is refused or fails is rolled back whole.
/// </summary>
sealed class OneTransaction<TRequest, T>(ShopDb db, WriteLane lane, Answering answering, AuditTrail audit) : IPipelineBehavior<TRequest, Outcome<T>> where TRequest : ICommand<T>
{
    public async Task<Outcome<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Outcome<T>> next)
    {
        if (db.Database.CurrentTransaction is not null) return await next();
        var outcome = await lane.Ride(db, Work, kept => kept.Refusal is null, cancellationToken);
        if (outcome.Refusal is not null) db.Forget();
        return outcome;

        async Task<Outcome<T>> Work()
        {
            var outcome = await next();
            if (outcome.Refusal is not null) return outcome;
            answering.Remember(outcome);
            audit.Note(request, outcome.Value);
            await db.SaveChangesAsync(cancellationToken);
            return outcome;
        }
    }
}
