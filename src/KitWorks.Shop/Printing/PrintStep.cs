using KitWorks.Shop.Printing.Ipp;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Printing;

/// <summary>
/// One step with one job of a printer. The job is claimed first, so that of several processes one takes the step; what
/// the printer is about to be told is committed before it is told.
/// </summary>
sealed class PrintStep(ShopDb db, PrintedDocument documents, ShopSettings settings, PrinterRoom room, TimeProvider clock)
{
    const int LooksForALostJob = 8;

    PrintingPace Pace => settings.PrintingPace;
    DateTimeOffset Now => clock.GetUtcNow();

    /// <summary>Whether there was anything to do.</summary>
    public async Task<bool> Take(PrinterSetting printer, CancellationToken stop)
    {
        if (await Due(printer, stop) is not { } job) return false;
        var before = job.Status;
        job.Claim(Now + Pace.Lease);
        if (!await Saved()) return false;
        var at = room.At(printer);
        await (job.Status switch
        {
            PrintJobStatus.Queued => Send(job, printer, at, stop),
            PrintJobStatus.Sending => Find(job, "the program stopped while it was being sent", at, stop),
            PrintJobStatus.Printing => Follow(job, at, stop),
            PrintJobStatus.Unknown => Find(job, job.Detail, at, stop),
            PrintJobStatus.Done or PrintJobStatus.Failed => Task.CompletedTask,
        });
        // Refused where somebody has cancelled or retried the job meanwhile; theirs stands.
        if (await Saved() && job.IsFinal && job.Status != before) PrintCounts.Became(printer.Name, job.Status);
        return true;
    }

    /// <summary>The job at the head of the printer's line: what it has or may have first, then what came first. Behind a job that waits, all wait.</summary>
    async Task<PrintJob?> Due(PrinterSetting printer, CancellationToken stop)
    {
        var now = Now;
        var jobs = db.PrintJobs.Where(j => j.Printer == printer.Name);
        var head = await jobs
            .Where(j => j.Status == PrintJobStatus.Sending || j.Status == PrintJobStatus.Printing || j.Status == PrintJobStatus.Queued)
            .OrderBy(j => j.Status == PrintJobStatus.Queued ? 1 : 0).ThenBy(j => j.CreatedAt).ThenBy(j => j.Id).FirstOrDefaultAsync(stop);
        if (head?.NextAt <= now) return head;
        return await jobs.Where(j => j.Status == PrintJobStatus.Unknown && j.NextAt != null && j.NextAt <= now).OrderBy(j => j.NextAt).FirstOrDefaultAsync(stop);
    }

    async Task Send(PrintJob job, PrinterSetting printer, IppPrinter at, CancellationToken stop)
    {
        // Cancelled while it was on its way to a printer that did not take it.
        if (job.CancelAsked)
        {
            job.End(PrintJobStatus.Failed, "cancelled", Now);
            return;
        }
        var look = await at.Look(Pace.ToAnswer, stop);
        if (look.Reached != Reached.Answered)
        {
            job.Wait(look.Words, PrinterReason.Away, Now + Pace.Wait(job.Tries));
            return;
        }
        if (look.Succeeded && look.Message!.Number("printer-is-accepting-jobs") == 0 || look.Is(IppStatus.IsPassing))
        {
            job.Wait(look.Succeeded ? "the printer takes no jobs now" : look.Words, Reasons(look.Message!, "printer-state-reasons"), Now + Pace.Wait(job.Tries));
            return;
        }
        if (!look.Succeeded)
        {
            job.End(PrintJobStatus.Failed, look.Words, Now);
            return;
        }
        if (!(await documents.For(job, printer, look.Message!, stop)).Succeeds(out var document, out var refusal))
        {
            job.End(PrintJobStatus.Failed, refusal.Detail, Now);
            return;
        }
        await using var content = document.Content;
        job.Send(Now, Now + Pace.Lease);
        // Whoever cancelled it meanwhile was in time.
        if (!await Saved()) return;
        Told(job, await at.Print(job.Name, document.Format, content, document.Template, Pace.ToTake));
    }

    void Told(PrintJob job, IppReply reply)
    {
        if (reply.Message?.Number("job-id") is { } id) job.Taken(id, Now);
        else if (reply.Reached == Reached.Nobody) job.NotTaken(reply.Words, PrinterReason.Away, Now + Pace.Wait(job.Tries));
        else if (reply.Is(IppStatus.IsPassing)) job.NotTaken(reply.Words, reply.Is(code => code == IppStatus.Busy) ? PrinterReason.Busy : "", Now + Pace.Wait(job.Tries));
        else if (reply.Reached == Reached.Unknown || reply.Succeeded || reply.Is(IppStatus.IsBreakdown)) job.Lose(reply.Words, Now, Now);
        else job.End(PrintJobStatus.Failed, reply.Words, Now);
    }

    /// <summary>Asks the printer for a job that it may have, by name. A printer that lists none may have printed it and forgotten.</summary>
    async Task Find(PrintJob job, string detail, IppPrinter at, CancellationToken stop)
    {
        if (await at.Find(job.Name, Pace.ToAnswer, stop) is { } id) job.Taken(id, Now);
        else job.Lose(detail, Now, job.Status == PrintJobStatus.Unknown && job.Tries >= LooksForALostJob ? null : Now + Pace.Wait(job.Tries));
    }

    async Task Follow(PrintJob job, IppPrinter at, CancellationToken stop)
    {
        if (job.CancelAsked) await at.Cancel(job.PrinterJobId!.Value, Pace.ToAnswer, stop);
        var look = await at.LookAtJob(job.PrinterJobId!.Value, Pace.ToAnswer, stop);
        if (look.Is(code => code == IppStatus.NotFound) || look.Succeeded && !IsOurs(job, look.Message!.Text("job-name")))
        {
            job.End(PrintJobStatus.Unknown, "the printer had it and no longer knows of it", Now);
            return;
        }
        if (!look.Succeeded)
        {
            job.Wait(look.Words, look.Reached == Reached.Answered ? "" : PrinterReason.Away, Now + Pace.Wait(job.Tries));
            return;
        }
        var ending = string.Join(", ", IppWords.Codes(look.Message!.Texts("job-state-reasons")).Select(IppWords.Reason));
        // job-state: 3 pending, 4 held, 5 processing, 6 stopped, 7 cancelled, 8 aborted, 9 completed (RFC 8011, section 5.3.7).
        switch (look.Message.Number("job-state"))
        {
            case 7: job.End(PrintJobStatus.Failed, ending.Length > 0 ? ending : "cancelled", Now); break;
            case 8: job.End(PrintJobStatus.Failed, ending.Length > 0 ? ending : "the printer gave up", Now); break;
            case 9: job.End(PrintJobStatus.Done, ending.Length > 0 ? $"printed: {ending}" : "printed", Now); break;
            case var state: await Progress(job, state, at, stop); break;
        }
    }

    async Task Progress(PrintJob job, int? state, IppPrinter at, CancellationToken stop)
    {
        var printer = await at.Look(Pace.ToAnswer, stop);
        var reasons = printer.Succeeded ? Reasons(printer.Message!, "printer-state-reasons") : "";
        var detail = reasons.Length > 0 ? string.Join(", ", PrinterReason.Of(reasons).Select(r => r.Detail))
            : state switch { 3 => "waiting at the printer", 4 => "held at the printer", 6 => "the printer has stopped", _ => "printing" };
        job.Progress(job.CancelAsked ? $"the printer was asked to give it up; {detail}" : detail, reasons, Now + Pace.Beat);
    }

    /// <summary>A printer that was off counts its jobs anew, so the number alone may be another's. Some printers cut names short.</summary>
    static bool IsOurs(PrintJob job, string? name) => string.IsNullOrEmpty(name) || job.Name.StartsWith(name, StringComparison.Ordinal);

    static string Reasons(IppMessage message, string attribute) => string.Join(',', IppWords.Codes(message.Texts(attribute)));

    async Task<bool> Saved()
    {
        try
        {
            // Never broken off: what has happened is written down.
            await db.SaveChangesAsync(CancellationToken.None);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            db.ChangeTracker.Clear();
            return false;
        }
    }
}
