using KitWorks.Shop.Printing;
using MediatR;

namespace KitWorks.Api.Pages;

/// <summary>The printers as they answer now, and what they were given.</summary>
sealed class PrintsModel(IMediator mediator) : BenchPage(mediator)
{
    public IReadOnlyList<PrinterAnswer> Printers { get; private set; } = [];

    public async Task OnGet() => Printers = await Ask(new ListPrinters()) ?? [];
}
