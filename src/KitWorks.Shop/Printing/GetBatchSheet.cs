using System.Globalization;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Labels;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Sawing;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>The cut sheet of a batch, as PDF.</summary>
public sealed record GetBatchSheet(Guid BatchId, PaperSize Size = PaperSize.A4, Units Units = Units.Metric) : IQuery<byte[]>;

sealed class GetBatchSheetHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetBatchSheet, Outcome<byte[]>>
{
    public async Task<Outcome<byte[]>> Handle(GetBatchSheet query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetBatch(query.BatchId), cancellationToken)).Succeeds(out var batch, out var refusal)) return refusal;
        var orders = batch.Orders.Count == 1 ? $"order {batch.Orders[0].Number}" : $"orders {string.Join(", ", batch.Orders.Select(o => o.Number))}";
        return press.Press.Pdf(
            BatchSheet.For(batch.Plan, batch.Number.ToString(CultureInfo.InvariantCulture), orders, Measure.Part(batch.Plan.Kerf.Millimetres, query.Units), query.Units, settings.ShopName),
            query.Size);
    }
}
