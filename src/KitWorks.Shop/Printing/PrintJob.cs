using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Printing;

/// <summary>What of an order can be printed.</summary>
public enum Printable
{
    /// <summary>The labels of its bundles.</summary>
    Labels,

    /// <summary>What to take from stock.</summary>
    Picklist,

    /// <summary>How to cut its pipe.</summary>
    CutPlan,

    /// <summary>What is in the box.</summary>
    PackingList,

    /// <summary>What the customer builds by.</summary>
    Guide,
}

/// <summary>Where a print job stands.</summary>
public enum PrintJobStatus
{
    /// <summary>The printer has seen nothing of it.</summary>
    Queued,

    /// <summary>It is on its way; whether the printer has it cannot be told.</summary>
    Sending,

    /// <summary>The printer has taken it. Taken is not printed.</summary>
    Printing,

    /// <summary>The printer says that it is printed.</summary>
    Done,

    /// <summary>It was not printed, or not to its end.</summary>
    Failed,

    /// <summary>It was sent, and whether it was printed cannot be told: somebody looks, and has it printed again or not.</summary>
    Unknown,
}

/// <summary>
/// Something to be printed. It goes from queued to sending before the first byte leaves, and never back once a byte may
/// have: only a person sends it again. <see cref="NextAt"/> is when somebody looks after it next; whoever puts it
/// forward has the job until then, and nobody looks after a job that has none.
/// </summary>
sealed class PrintJob
{
    public const int LongestDetail = 400, LongestTemplate = 100;

    public required Guid Id { get; init; }
    public required Guid OrderId { get; init; }
    public required int OrderNumber { get; init; }
    public required Printable What { get; init; }
    public int? Tier { get; init; }

    /// <summary>The first free place of the half-used sheet in the printer, from 1.</summary>
    public int StartAt { get; init; } = 1;

    /// <summary>The template asked for; null for the largest that fits.</summary>
    public string? Template { get; init; }
    public required string Printer { get; init; }
    public required string CreatedBy { get; init; }
    public required DateTimeOffset CreatedAt { get; init; }
    public PrintJobStatus Status { get; private set; }

    /// <summary>In words, why it stands where it stands; cut short at what the table holds.</summary>
    public string Detail { get; private set => field = value[..Math.Min(value.Length, LongestDetail)]; } = "waiting for its turn";

    /// <summary>What holds the printer up: IPP's keywords without severities, and <c>away</c>; separated by commas.</summary>
    public string Reasons { get; private set; } = "";

    /// <summary>The printer's number for it.</summary>
    public int? PrinterJobId { get; private set; }

    /// <summary>How often a person has had it printed; part of the name that the printer knows it by.</summary>
    public int Round { get; private set; } = 1;

    /// <summary>Tries since something last happened.</summary>
    public int Tries { get; private set; }
    public bool CancelAsked { get; private set; }
    public DateTimeOffset? SentAt { get; private set; }
    public DateTimeOffset? FinishedAt { get; private set; }
    public DateTimeOffset? NextAt { get; private set; }

    /// <summary>What the printer knows it by, never used twice.</summary>
    public string Name => $"{OrderNumber} {What.ToString().ToLowerInvariant()} {Id:N}-{Round}";

    public bool IsFinal => Status is PrintJobStatus.Done or PrintJobStatus.Failed or PrintJobStatus.Unknown;

    public static PrintJob Queue(PrintJob job)
    {
        job.NextAt = job.CreatedAt;
        return job;
    }

    /// <summary>It is whose process put this forward, until then.</summary>
    public void Claim(DateTimeOffset lease) => NextAt = lease;

    /// <summary>The printer cannot be asked, or holds the job up: wait longer each time.</summary>
    public void Wait(string detail, string reasons, DateTimeOffset until) => (Detail, Reasons, Tries, NextAt) = (detail, reasons, Tries + 1, until);

    /// <summary>From here on the printer may have it.</summary>
    public void Send(DateTimeOffset now, DateTimeOffset lease) =>
        (Status, Detail, Reasons, SentAt, NextAt) = (PrintJobStatus.Sending, "on its way to the printer", "", now, lease);

    /// <summary>The printer has certainly taken nothing of what was sent.</summary>
    public void NotTaken(string detail, string reasons, DateTimeOffset until)
    {
        (Status, SentAt) = (PrintJobStatus.Queued, null);
        Wait(detail, reasons, until);
    }

    public void Taken(int printerJobId, DateTimeOffset next) =>
        (Status, Detail, Reasons, PrinterJobId, Tries, FinishedAt, NextAt) = (PrintJobStatus.Printing, "the printer has it", "", printerJobId, 0, null, next);

    /// <summary>The printer answers and is at it.</summary>
    public void Progress(string detail, string reasons, DateTimeOffset next) => (Detail, Reasons, Tries, NextAt) = (detail, reasons, 0, next);

    public void End(PrintJobStatus status, string detail, DateTimeOffset now) => (Status, Detail, Reasons, FinishedAt, NextAt) = (status, detail, "", now, null);

    /// <summary>Whether it was printed cannot be told; the printer is still asked for it until <paramref name="nextLook"/> is null.</summary>
    public void Lose(string detail, DateTimeOffset now, DateTimeOffset? nextLook)
    {
        if (Status != PrintJobStatus.Unknown) Tries = 0;
        (Status, Detail, Reasons, FinishedAt, Tries, NextAt) = (PrintJobStatus.Unknown, detail, "", FinishedAt ?? now, Tries + 1, nextLook);
    }

    /// <summary>A person wants it again.</summary>
    public void Again(DateTimeOffset now)
    {
        (Status, Detail, Reasons, PrinterJobId, Round, Tries) = (PrintJobStatus.Queued, "waiting for its turn", "", null, Round + 1, 0);
        (CancelAsked, SentAt, FinishedAt, NextAt) = (false, null, null, now);
    }

    public void AskToCancel() => CancelAsked = true;
}

sealed class PrintingTables : IEntityTypeConfiguration<PrintJob>
{
    public void Configure(EntityTypeBuilder<PrintJob> builder)
    {
        builder.ToTable("print_jobs").HasKey(j => j.Id);
        builder.Property(j => j.Printer).HasMaxLength(100);
        builder.Property(j => j.Template).HasMaxLength(PrintJob.LongestTemplate);
        builder.Property(j => j.StartAt).HasDefaultValue(1);
        builder.Property(j => j.CreatedBy).HasMaxLength(100);
        builder.Property(j => j.Detail).HasMaxLength(PrintJob.LongestDetail);
        builder.Property(j => j.Reasons).HasMaxLength(600);
        // Two columns together hold the invariant: who may act on the job, and where it stands.
        builder.Property(j => j.Status).IsConcurrencyToken();
        builder.Property(j => j.NextAt).IsConcurrencyToken();
        builder.HasIndex(j => new { j.Printer, j.Status });
        builder.HasIndex(j => j.OrderId);
    }
}
