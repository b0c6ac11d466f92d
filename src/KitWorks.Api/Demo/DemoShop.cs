using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Printing;
using MediatR;

namespace KitWorks.Api.Demo;

/// <summary>
/// Fills an empty database with an invented shop and places orders, through the commands that the HTTP interface uses,
/// and writes each order's papers into a folder.
/// </summary>
sealed class DemoShop(IServiceProvider services, DirectoryInfo folder)
{
    /// <summary>Who signs in at the demo's bench. Everybody knows it; the demo's shop is nobody's.</summary>
    public const string StaffName = "demo", StaffPassword = "larkfield-demo";

    static readonly PlaceOrder[] Orders =
    [
        new()
        {
            Design = Of(new Dome { Lattice = Lattice.Class1(3), Cut = Cut.Fraction(5, 8), Size = new Size.FloorDiameter(Length.FromMillimetres(6000)) }, cover: new(1, "film-200")),
            Customer = new("Demo customer, allotment society"), Reference = "greenhouse",
        },
        new()
        {
            Design = Of(new Dome { Lattice = Lattice.Class1(2), Cut = Cut.Fraction(1, 2), Size = new Size.FloorDiameter(Length.FromMillimetres(3600)) }, cover: new(1, "shade-60")),
            Quantity = 2, Customer = new("Demo customer, school garden"), Reference = "shade domes",
        },
        new()
        {
            Design = Of(new Oblong { Fold = 6, Size = new Size.LongestStrut(Length.FromMillimetres(1524)) }, cover: null),
            Customer = new("Demo customer, market stall"), Reference = "long frame",
        },
    ];

    static readonly (string Name, PaperKind Paper)[] Papers =
    [
        ("picklist.pdf", PaperKind.Picklist), ("cut-plan.pdf", PaperKind.CutSheet), ("packing-list.pdf", PaperKind.PackingList), ("guide.pdf", PaperKind.BuildGuide),
    ];

    static Design Of(Shelter shelter, CoverChoice? cover) => new() { Shelter = shelter, HubSystem = "ring-100", StrutStock = "pvc-33", Cover = cover };

    /// <summary>Makes the shop and its papers.</summary>
    public async Task<DemoSummary> Open(CancellationToken cancellationToken)
    {
        await Ask(DemoCatalog.Sections, cancellationToken);
        await Ask(DemoCatalog.Shelves, cancellationToken);
        await Ask(DemoCatalog.Opening, cancellationToken);
        var bench = await Ask(new CreateKey("demo bench", Role.Bench), cancellationToken);
        var storefront = await Ask(new CreateKey("demo storefront", Role.Storefront), cancellationToken);
        await Ask(new CreateStaff(StaffName, Role.Admin, StaffPassword), cancellationToken);
        var orders = new List<DemoOrder>();
        foreach (var order in Orders) orders.Add(await WritePapers(await Ask(order, cancellationToken), cancellationToken));
        return new(orders, bench.Secret, storefront.Secret);
    }

    async Task<DemoOrder> WritePapers(OrderAnswer order, CancellationToken cancellationToken)
    {
        var papers = folder.CreateSubdirectory($"order-{order.Number}");
        var kit = (await Ask(new GetOrderKit(order.Id), cancellationToken)).Kit;
        var picklist = await Ask(new GetPicklist(order.Id), cancellationToken);
        await Write("picklist.csv", System.Text.Encoding.UTF8.GetBytes(PicklistCsv.Write(picklist)));
        await Copy("labels.pdf", await Ask(new GetOrderLabels(order.Id, new(LabelFormat.Pdf)), cancellationToken));
        await Copy("labels-a4.pdf", await Ask(new GetOrderLabels(order.Id, new(LabelFormat.Pdf) { Stock = "a4" }), cancellationToken));
        foreach (var (name, paper) in Papers) await Write(name, await Ask(new GetOrderPaper(order.Id, paper), cancellationToken));
        await Picture("whole.svg", new() { View = View.Isometric });
        await Picture("plan.svg", new() { View = View.Plan });
        for (var tier = 0; tier < kit.Tiers.Length; tier++) await Picture($"tier-{tier}.svg", new() { View = View.Spread, Tier = tier });
        return new(order, kit, papers);

        Task Picture(string name, DrawingOptions options) =>
            Write(name, System.Text.Encoding.UTF8.GetBytes(FrameDrawing.Draw(kit.Frame, options with { Openings = kit.Openings }, kit.StrutTypes).Value));

        async Task Copy(string name, Stream content)
        {
            await using var from = content;
            await using var to = File.Create(Path.Combine(papers.FullName, name));
            await from.CopyToAsync(to, cancellationToken);
        }

        Task Write(string name, byte[] content) => File.WriteAllBytesAsync(Path.Combine(papers.FullName, name), content, cancellationToken);
    }

    /// <summary>One message in a scope of its own, as a request over HTTP would be.</summary>
    async Task<T> Ask<T>(IRequest<Outcome<T>> message, CancellationToken cancellationToken)
    {
        await using var scope = services.CreateAsyncScope();
        var call = scope.ServiceProvider.GetRequiredService<Call>();
        // Orders come from the storefront, so that its key sees them; the rest is the shop's own work.
        call.Actor = message is PlaceOrder ? "demo storefront" : "demo";
        call.Role = Role.Admin;
        return (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message, cancellationToken)).Value;
    }
}

/// <summary>What the demo made.</summary>
sealed record DemoSummary(IReadOnlyList<DemoOrder> Orders, string BenchKey, string StorefrontKey);

/// <summary>One of its orders, and where its papers are.</summary>
sealed record DemoOrder(OrderAnswer Order, Kit Kit, DirectoryInfo Papers);
