using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Inventory;

/// <summary>Whether all of these are stock items; refused with those that are not, as lines of a request.</summary>
public sealed record KnownItems(IReadOnlyList<string> Skus) : IQuery<Unit>;

sealed class KnownItemsHandler(Ledger ledger) : IRequestHandler<KnownItems, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(KnownItems query, CancellationToken cancellationToken) =>
        await ledger.Unknown(query.Skus, cancellationToken) is { } refusal ? refusal : Unit.Value;
}
