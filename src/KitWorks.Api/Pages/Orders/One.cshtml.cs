using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Printing;
using KitWorks.Shop.Shipping;
using MediatR;
using Microsoft.AspNetCore.Mvc;

namespace KitWorks.Api.Pages.Orders;

/// <summary>One order: what it is, where it stands, its papers, and the next step.</summary>
sealed class OneModel(IMediator mediator, ShopSettings settings) : BenchPage(mediator)
{
    readonly IMediator mediator = mediator;

    public int Number { get; private set; }
    public OrderAnswer? Order { get; private set; }
    public Kit? Kit { get; private set; }
    public OrderParcels? Parcels { get; private set; }
    public IReadOnlyDictionary<string, Tag> Tags { get; private set; } = new Dictionary<string, Tag>();
    public IReadOnlyList<string> Printers => [.. settings.Printers.Select(p => p.Name)];

    public string NameOf(string sku) => Kit!.Parts.FirstOrDefault(p => p.Sku == sku)?.Description ?? sku;

    public async Task OnGet(int number)
    {
        Number = number;
        if (!(await mediator.Send(new FindOrderId(number), Aborted)).Succeeds(out var id, out var unknown))
        {
            Refuse(unknown);
            return;
        }
        Order = await Ask(new GetOrder(id));
        Kit = (await Ask(new GetOrderKit(id)))?.Kit;
        Parcels = await Ask(new GetParcels(id, KeptOnly: true));
        Tags = Kit?.StrutTypes.ToDictionary(t => t.Code, t => t.Tag) ?? [];
    }

    public Task<IActionResult> OnPostShip(int number, string? carrier, string? tracking) =>
        Step(number, id => new ShipOrder(id, Given(carrier), Given(tracking)), $"Order {number} is with the carrier; its stock has left the house.");

    public Task<IActionResult> OnPostCancel(int number) => Step(number, id => new CancelOrder(id), $"Order {number} is cancelled.");

    public Task<IActionResult> OnPostParcels(int number, bool anew) =>
        Step(number, id => new PlanParcels(id, anew), anew ? $"The parcels of order {number} are planned anew. Throw away labels that were printed before." : $"The parcels of order {number} are planned.");

    public async Task<IActionResult> OnPostPrint(int number, Printable what, int? tier, string? printer)
    {
        var id = (await mediator.Send(new FindOrderId(number), Aborted)).Value;
        if (await Ask(new QueuePrintJob(id, what, tier, printer ?? "")) is { } job) return Next($"{Parts.Words.Of(what)} of order {number} will be printed on {job.Printer}.", $"/orders/{number}");
        await OnGet(number);
        return Page();
    }

    async Task<IActionResult> Step<T>(int number, Func<Guid, IRequest<Outcome<T>>> command, string done)
    {
        if ((await mediator.Send(new FindOrderId(number), Aborted)).Succeeds(out var id, out var unknown) && await Did(command(id))) return Next(done, $"/orders/{number}");
        if (unknown is not null) Refuse(unknown);
        await OnGet(number);
        return Page();
    }

    static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
