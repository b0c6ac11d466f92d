using KitWorks.Shop.Printing;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages;

/// <summary>The printers as they answer now, and what they were given.</summary>
sealed class PrintsModel(IMediator mediator) : BenchPage(mediator)
{
    const int PageLength = 30;

    public IReadOnlyList<PrinterAnswer> Printers { get; private set; } = [];
    public IReadOnlyList<PrintJobAnswer> Jobs { get; private set; } = [];
    public string? Older { get; private set; }

    /// <summary>Whether something is still under way, so that the page looks again by itself.</summary>
    public bool Busy => Jobs.Any(j => IsUnderWay(j.Status));

    public static bool IsUnderWay(PrintJobStatus status) => status is PrintJobStatus.Queued or PrintJobStatus.Sending or PrintJobStatus.Printing;

    public async Task OnGet(string? after)
    {
        Printers = await Ask(new ListPrinters()) ?? [];
        if (await Ask(new ListPrintJobs(PageLength, after)) is { } page) (Jobs, Older) = (page.Items, page.Next);
    }

    public Task<IActionResult> OnPostAgain(Guid id) => Change(new RetryPrintJob(id), "It will be printed again.");

    public Task<IActionResult> OnPostCancel(Guid id) => Change(new CancelPrintJob(id), "The job is given up; where the printer has it already, the printer was asked to.");

    async Task<IActionResult> Change(IRequest<Geometry.Outcome<PrintJobAnswer>> command, string done)
    {
        if (await Did(command)) return Next(done, "/prints");
        var refused = Refused!;
        await OnGet(null);
        Refuse(refused);
        return Page();
    }
}
