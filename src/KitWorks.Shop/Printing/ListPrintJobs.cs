using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Printing;

/// <summary>The print jobs, newest first.</summary>
public sealed record ListPrintJobs(int Limit, string? After) : IQuery<Page<PrintJobAnswer>>
{
    /// <summary>Those that stand so only; null for all.</summary>
    public PrintJobStatus? Status { get; init; }

    /// <summary>Those of this printer only; null for all.</summary>
    public string? Printer { get; init; }

    /// <summary>Those of this order only; null for all.</summary>
    public Guid? OrderId { get; init; }
}

sealed class ListPrintJobsHandler(ShopDb db) : IRequestHandler<ListPrintJobs, Outcome<Page<PrintJobAnswer>>>
{
    public async Task<Outcome<Page<PrintJobAnswer>>> Handle(ListPrintJobs query, CancellationToken cancellationToken)
    {
        var jobs = db.PrintJobs.AsNoTracking().Where(j =>
            (query.Status == null || j.Status == query.Status) && (query.Printer == null || j.Printer == query.Printer) && (query.OrderId == null || j.OrderId == query.OrderId));
        if (query.After is not null)
        {
            if (query.After.Split(' ') is not [var ticks, var text] || !long.TryParse(ticks, out var at) || at < 0 || at > DateTime.MaxValue.Ticks || !Guid.TryParse(text, out var id)) return Pages.BadCursor;
            var instant = new DateTimeOffset(at, TimeSpan.Zero);
            jobs = jobs.Where(j => j.CreatedAt < instant || j.CreatedAt == instant && j.Id < id);
        }
        var found = await jobs.OrderByDescending(j => j.CreatedAt).ThenByDescending(j => j.Id).Take(query.Limit + 1).ToListAsync(cancellationToken);
        return Pages.Of(found.ConvertAll(PrintJobAnswer.Of), query.Limit, j => string.Create(CultureInfo.InvariantCulture, $"{j.CreatedAt.UtcTicks} {j.Id}"));
    }
}
