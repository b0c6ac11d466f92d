using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Orders;
using MediatR;

namespace KitWorks.Api.Pages;

/// <summary>The packing bench: a label is scanned, and the page says what it is, whether it was right, and what remains.</summary>
sealed class PackModel(IMediator mediator) : BenchPage(mediator)
{
    readonly IMediator mediator = mediator;

    public OrderAnswer? Order { get; private set; }
    public IReadOnlyDictionary<string, Tag> Tags { get; private set; } = new Dictionary<string, Tag>();
    public IReadOnlyList<OpenOrder> Ready { get; private set; } = [];

    /// <summary>The one tier that is being packed, where the packer chose one.</summary>
    public int? Tier { get; private set; }

    /// <summary>What came of the scan, if there was one.</summary>
    public ScanAnswer? Scanned { get; private set; }

    /// <summary>Whether the last thing done was to take a scan back.</summary>
    public bool Undone { get; private set; }

    /// <summary>Why a scan was refused.</summary>
    public Refusal? No { get; private set; }

    public Task OnGet(int? number, int? tier) => Show(number, tier);

    public async Task OnPostScan(int? number, int? tier, string? code)
    {
        Guid? id = number is { } n && (await mediator.Send(new FindOrderId(n), Aborted)).Succeeds(out var found, out _) ? found : null;
        await Say(new ScanBundle(code ?? "", Station, id, tier));
        await Show(number ?? Scanned?.OrderNumber, tier);
    }

    public async Task OnPostUndo(int? number, int? tier, string? code)
    {
        Undone = true;
        await Say(new UndoScan(code ?? ""));
        await Show(number, tier);
    }

    /// <summary>A refusal in the few words that are read from a step away.</summary>
    public static string Headline(string code) => code switch
    {
        "bundle.other-order" => "Wrong order",
        "bundle.other-tier" => "Wrong tier",
        "bundle.packed-before" => "Scanned before",
        "bundle.code" or "bundle.unknown" => "Not one of our bundles",
        "order.status" => "Not to be packed now",
        _ => "Not taken",
    };

    /// <summary>Who stands at the bench names the station; a scanner has no name of its own.</summary>
    string Station => User.Identity?.Name ?? "bench";

    async Task Say(IRequest<Outcome<ScanAnswer>> command)
    {
        if ((await mediator.Send(command, Aborted)).Succeeds(out var scanned, out var refusal)) Scanned = scanned;
        else No = refusal;
    }

    async Task Show(int? number, int? tier)
    {
        Tier = tier;
        if (number is { } n)
        {
            if (!(await mediator.Send(new FindOrderId(n), Aborted)).Succeeds(out var id, out var unknown))
            {
                Refuse(unknown);
                return;
            }
            Order = await Ask(new GetOrder(id));
            Tags = (await Ask(new GetOrderKit(id)))?.Kit.StrutTypes.ToDictionary(t => t.Code, t => t.Tag) ?? [];
        }
        else Ready = [.. (await Ask(new GetOpenOrders()) ?? []).Where(o => o.Status is OrderStatus.Reserved or OrderStatus.Picking)];
    }
}
