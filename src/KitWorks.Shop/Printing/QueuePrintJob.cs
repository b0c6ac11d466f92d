using KitWorks.Geometry;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Printing.Ipp;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Printing;

/// <summary>Has something of an order printed. It is made when its turn comes, and from then on lies with the printer.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="What">What of it.</param>
/// <param name="Tier">The labels of this tier only; null for all.</param>
/// <param name="Printer">A printer's name.</param>
public sealed record QueuePrintJob(Guid OrderId, Printable What, int? Tier, string Printer) : ICommand<PrintJobAnswer>
{
    /// <summary>The first free place of the half-used sheet of labels in the printer, from 1.</summary>
    public int StartAt { get; init; } = 1;

    /// <summary>The name of a label template; null for the largest that fits.</summary>
    public string? Template { get; init; }
}

/// <summary>One print job.</summary>
public sealed record GetPrintJob(Guid Id) : IQuery<PrintJobAnswer>;

/// <summary>Has a job that failed, or of which nothing is known, printed again.</summary>
public sealed record RetryPrintJob(Guid Id) : ICommand<PrintJobAnswer>;

/// <summary>Gives a job up: at once where the printer has not seen it, otherwise the printer is asked to.</summary>
public sealed record CancelPrintJob(Guid Id) : ICommand<PrintJobAnswer>;

/// <summary>A print job.</summary>
/// <param name="Id">Its id, in addresses.</param>
/// <param name="OrderId">The order.</param>
/// <param name="OrderNumber">The order's number.</param>
/// <param name="What">What of it.</param>
/// <param name="Tier">Which tier's labels, null for all.</param>
/// <param name="StartAt">The first place that is printed on a sheet of labels.</param>
/// <param name="Template">The label template asked for; null for the largest that fits.</param>
/// <param name="Printer">The printer's name.</param>
/// <param name="Status">Where it stands.</param>
/// <param name="Detail">Why, in words.</param>
/// <param name="Reasons">What holds the printer up, empty where nothing does.</param>
/// <param name="PrinterJobId">The printer's number for it.</param>
/// <param name="Round">How often it was asked for.</param>
/// <param name="CreatedBy">Who asked for it.</param>
/// <param name="CreatedAt">When.</param>
/// <param name="SentAt">When it was last sent.</param>
/// <param name="FinishedAt">When it came to an end.</param>
public sealed record PrintJobAnswer(
    Guid Id, Guid OrderId, int OrderNumber, Printable What, int? Tier, int StartAt, string? Template, string Printer, PrintJobStatus Status, string Detail, IReadOnlyList<PrinterReason> Reasons,
    int? PrinterJobId, int Round, string CreatedBy, DateTimeOffset CreatedAt, DateTimeOffset? SentAt, DateTimeOffset? FinishedAt)
{
    internal static PrintJobAnswer Of(PrintJob j) => new(
        j.Id, j.OrderId, j.OrderNumber, j.What, j.Tier, j.StartAt, j.Template, j.Printer, j.Status, j.Detail, PrinterReason.Of(j.Reasons),
        j.PrinterJobId, j.Round, j.CreatedBy, j.CreatedAt, j.SentAt, j.FinishedAt);
}

/// <summary>Something that holds a printer up.</summary>
/// <param name="Code">IPP's keyword without its severity, <c>media-empty</c>; or <c>away</c>.</param>
/// <param name="Detail">The same in words: <c>paper out</c>.</param>
public sealed record PrinterReason(string Code, string Detail)
{
    internal const string Away = "away", Busy = "busy";

    internal static IReadOnlyList<PrinterReason> Of(string codes) => Of(codes.Split(',', StringSplitOptions.RemoveEmptyEntries));

    internal static IReadOnlyList<PrinterReason> Of(IEnumerable<string> codes) => [.. codes.Select(c => new PrinterReason(c, c switch { Away => "printer away", Busy => "printer busy", _ => IppWords.Reason(c) }))];
}

sealed class QueuePrintJobHandler(ShopDb db, IMediator mediator, ShopSettings settings, OrderLabelPress press, Call call, TimeProvider clock) : IRequestHandler<QueuePrintJob, Outcome<PrintJobAnswer>>
{
    public async Task<Outcome<PrintJobAnswer>> Handle(QueuePrintJob command, CancellationToken cancellationToken)
    {
        if (Unknown(command.Printer, settings) is { } unknown) return unknown;
        if (!(await mediator.Send(new GetOrderKit(command.OrderId), cancellationToken)).Succeeds(out var order, out var refusal))
            return refusal with { Kind = RefusalKind.Impossible, Errors = [new("orderId", refusal.Detail)] };
        if (SetWrongly(command) is { } wrong) return wrong;
        if (command.Tier is not null && command.What != Printable.Labels)
            return Refusal.OfField("print-job.tier", "tier", "Labels can be printed tier by tier; papers are printed whole.");
        if (command.Tier is { } tier && (tier < 0 || tier >= order.Kit.Tiers.Length))
            return Refusal.OfField("print-job.tier", "tier", $"Order {order.Number} has no tier {tier}; its tiers are 0 to {order.Kit.Tiers.Length - 1}.");

        var job = PrintJob.Queue(new()
        {
            Id = Guid.NewGuid(),
            OrderId = order.OrderId,
            OrderNumber = order.Number,
            What = command.What,
            Tier = command.Tier,
            StartAt = command.StartAt,
            Template = command.Template,
            Printer = command.Printer,
            CreatedBy = call.Actor,
            CreatedAt = clock.GetUtcNow(),
        });
        db.PrintJobs.Add(job);
        return PrintJobAnswer.Of(job);
    }

    /// <summary>What of its settings the labels cannot be printed with, said now and not when their turn comes.</summary>
    Refusal? SetWrongly(QueuePrintJob command)
    {
        if (command.What != Printable.Labels)
            return command.StartAt == 1 && command.Template is null ? null : Refusal.OfField("print-job.labels-only", command.Template is null ? "startAt" : "template", "Only labels have a template and a place to start at.");
        var stock = settings.Printers.First(p => p.Name == command.Printer).Labels;
        if (command.StartAt < 1 || command.StartAt > stock.PerPage)
            return Refusal.OfField("label.start-at", "startAt", $"The labels in {command.Printer} have places 1 to {stock.PerPage}; {command.StartAt} is none of them.");
        var names = press.Press.Templates.Where(t => t.Kind is "bundle" or "hubs" or "ties").Select(t => t.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        return command.Template is null || names.Contains(command.Template) ? null
            : Refusal.OfField("label.template-unknown", "template", $"There is no template '{command.Template}' for these labels; it is one of {string.Join(", ", names)}.");
    }

    /// <summary>The refusal where there is no such printer, with those that there are.</summary>
    public static Refusal? Unknown(string printer, ShopSettings settings) => settings.Printers.Any(p => p.Name == printer) ? null
        : Refusal.OfField("printer.unknown", "printer", settings.Printers.IsEmpty
            ? "No printer is set up here; printers are set by Printers:0:Name and Printers:0:Uri."
            : $"There is no printer '{printer}'; it is one of {string.Join(", ", settings.Printers.Select(p => $"\"{p.Name}\""))}.");
}

sealed class GetPrintJobHandler(ShopDb db) : IRequestHandler<GetPrintJob, Outcome<PrintJobAnswer>>
{
    public async Task<Outcome<PrintJobAnswer>> Handle(GetPrintJob query, CancellationToken cancellationToken) =>
        await db.PrintJobs.AsNoTracking().FirstOrDefaultAsync(j => j.Id == query.Id, cancellationToken) is { } job ? PrintJobAnswer.Of(job) : Unknown(query.Id);

    public static Refusal Unknown(Guid id) => new(RefusalKind.NotFound, "print-job.unknown", $"There is no print job '{id}'.");
}

sealed class ChangePrintJobHandler(ShopDb db, ShopSettings settings, Call call, TimeProvider clock)
    : IRequestHandler<RetryPrintJob, Outcome<PrintJobAnswer>>, IRequestHandler<CancelPrintJob, Outcome<PrintJobAnswer>>
{
    public async Task<Outcome<PrintJobAnswer>> Handle(RetryPrintJob command, CancellationToken cancellationToken)
    {
        if (await db.PrintJobs.FindAsync([command.Id], cancellationToken) is not { } job) return GetPrintJobHandler.Unknown(command.Id);
        if (job.Status is not (PrintJobStatus.Failed or PrintJobStatus.Unknown))
            return new Refusal(RefusalKind.Conflict, "print-job.status", job.Status == PrintJobStatus.Done
                ? "This job is printed. To have it printed once more, ask for a new one."
                : "This job is under way; it can be printed again when it has failed or nothing is known of it.");
        if (QueuePrintJobHandler.Unknown(job.Printer, settings) is { } gone) return gone;
        job.Again(clock.GetUtcNow());
        return PrintJobAnswer.Of(job);
    }

    public async Task<Outcome<PrintJobAnswer>> Handle(CancelPrintJob command, CancellationToken cancellationToken)
    {
        if (await db.PrintJobs.FindAsync([command.Id], cancellationToken) is not { } job) return GetPrintJobHandler.Unknown(command.Id);
        if (job.IsFinal) return new Refusal(RefusalKind.Conflict, "print-job.status", $"This job is at its end: {job.Detail}.");
        if (job.Status == PrintJobStatus.Queued) job.End(PrintJobStatus.Failed, $"cancelled by {call.Actor}", clock.GetUtcNow());
        else job.AskToCancel();
        return PrintJobAnswer.Of(job);
    }
}
