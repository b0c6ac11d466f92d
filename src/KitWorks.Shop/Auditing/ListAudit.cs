using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Auditing;

/// <summary>Who changed what, the newest first; of one caller, or of one action, where that is said.</summary>
public sealed record ListAudit(int Limit, string? After, string? Actor = null, string? Action = null) : IQuery<Page<AuditAnswer>>;

/// <summary>That somebody changed something.</summary>
/// <param name="At">When.</param>
/// <param name="Actor">The name of the key it was done with; <c>console</c> for whoever sits at the machine.</param>
/// <param name="Role">The role of that key.</param>
/// <param name="Action">What was done.</param>
/// <param name="About">What it was done to.</param>
/// <param name="Address">Where the request came from.</param>
/// <param name="Trace">The trace that it was part of.</param>
public sealed record AuditAnswer(DateTimeOffset At, string Actor, Role Role, string Action, string About, string? Address, string? Trace);

sealed class ListAuditHandler(ShopDb db) : IRequestHandler<ListAudit, Outcome<Page<AuditAnswer>>>
{
    public async Task<Outcome<Page<AuditAnswer>>> Handle(ListAudit query, CancellationToken cancellationToken)
    {
        var entries = db.AuditEntries.AsNoTracking();
        if (long.TryParse(query.After, NumberStyles.None, CultureInfo.InvariantCulture, out var after)) entries = entries.Where(e => e.Id < after);
        if (query.Actor is { } actor) entries = entries.Where(e => e.Actor == actor);
        if (query.Action is { } action) entries = entries.Where(e => e.Action == action);
        var found = await entries.OrderByDescending(e => e.Id).Take(query.Limit + 1).ToListAsync(cancellationToken);
        return new Page<AuditAnswer>(
            [.. found.Take(query.Limit).Select(e => new AuditAnswer(e.At, e.Actor, e.Role, e.Action, e.About, e.Address, e.Trace))],
            found.Count > query.Limit ? found[query.Limit - 1].Id.ToString(CultureInfo.InvariantCulture) : null);
    }
}
