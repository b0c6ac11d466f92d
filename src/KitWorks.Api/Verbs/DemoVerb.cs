using System.CommandLine;
using System.Net;
using System.Net.Sockets;
using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Printing;

namespace KitWorks.Api.Verbs;

/// <summary><c>demo</c>: an invented shop with real orders, from nothing to papers on disk, then served.</summary>
static class DemoVerb
{
    public static Command Command()
    {
        var data = new Option<string>("--data") { Description = "The folder for the database and the papers", DefaultValueFactory = _ => "demo-out" };
        var once = new Option<bool>("--once") { Description = "Stop when the papers are written" };
        var urls = ServeVerb.Urls();
        var command = new Command("demo", "Make an invented shop, place orders, write their papers, and serve") { data, once, urls };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var url = parsed.GetValue(urls) ?? ShopHost.DefaultUrl;
            if (!parsed.GetValue(once)) MustBeFree(url);
            var folder = DemoFolder.Clean(parsed.GetRequiredValue(data));
            await using var app = ShopHost.Build(
                ("ConnectionStrings:KitWorks", $"Data Source={Path.Combine(folder.FullName, "kitworks.db")}"),
                ("Database:Provider", "Sqlite"), ("Shop:Name", DemoCatalog.ShopName), ("urls", url), ("Logging:LogLevel:Default", "Warning"));
            await app.Prepare(cancellationToken);
            var made = await new DemoShop(app.Services, folder).Open(cancellationToken);
            app.MapSampleStorefront(made.StorefrontKey);
            Console.WriteLine(Summary(made, folder, url.Split(';')[0]));
            if (parsed.GetValue(once)) return 0;

            Console.WriteLine($"\nServing at {url}. Stop with Ctrl+C.");
            await app.Listen(cancellationToken);
            return 0;
        });
        return command;
    }

    /// <summary>Says before any work is done that another program listens where the demo would.</summary>
    static void MustBeFree(string urls)
    {
        if (!Uri.TryCreate(urls.Split(';')[0], UriKind.Absolute, out var url) || url.HostNameType == UriHostNameType.Basic || url.Port == 0) return;
        try
        {
            using var probe = new TcpListener(IPAddress.Loopback, url.Port);
            probe.Start();
        }
        catch (SocketException)
        {
            throw new SettingException($"Another program listens at port {url.Port}; nothing was made. Stop it, or name another address with --urls http://localhost:5081.");
        }
    }

    const string OrderToTry =
        """{"design":{"shelter":{"kind":"dome","class":1,"frequency":2,"cut":"1/2","size":{"height":"6 ft"}},"hubSystem":"ring-100","strutStock":"pvc-33"},"quantity":1,"customer":{"name":"A customer"}}""";

    static string Summary(DemoSummary made, DirectoryInfo folder, string url)
    {
        var orders = string.Join("\n\n", made.Orders.Select(o =>
            $"""
            Order {o.Order.Number}, {o.Order.Status.ToString().ToLowerInvariant()}: {o.Order.Quantity} × {ShelterNames.Of(o.Kit.Frame)}, {o.Kit.Frame.Dimensions.HeightMm / 1000:0.0} m high
              each {o.Kit.Totals.Hubs} hubs, {o.Kit.Totals.Struts} struts in {o.Kit.StrutTypes.Length} lengths, {o.Kit.Totals.TiesWithSpares} ties, {o.Kit.Bundles.Length} bundles in {o.Kit.Tiers.Length} tiers
              {o.Papers.FullName}: labels.pdf, picklist.pdf, cut-plan.pdf, packing-list.pdf, guide.pdf, tier-0.svg …
            """));
        return $$"""
            {{DemoCatalog.ShopName}} is open. Its database is {{Path.Combine(folder.FullName, "kitworks.db")}}.

            {{orders}}

            Keys of this demo: bench {{made.BenchKey}}
                          storefront {{made.StorefrontKey}}

            While it serves, open the bench at {{url}} and sign in as {{DemoShop.StaffName}}, password {{DemoShop.StaffPassword}};
            buy at the sample storefront, {{url}}{{SampleStorefront.Address}}; read {{url}}/docs; or order another kit:

            curl -s {{url}}/api/orders -H 'Authorization: Bearer {{made.StorefrontKey}}' \
              -H 'Content-Type: application/json' -H 'Idempotency-Key: my-first-order' \
              -d '{{OrderToTry}}'

            What KitWorks says of strength is a screening only: your local code and a licensed engineer decide.
            """;
    }
}
