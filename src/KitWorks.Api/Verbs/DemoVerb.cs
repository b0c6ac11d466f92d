using System.CommandLine;
using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;

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
            var folder = DemoFolder.Clean(parsed.GetRequiredValue(data));
            var url = parsed.GetValue(urls) ?? ShopHost.DefaultUrl;
            await using var app = ShopHost.Build(
                ("ConnectionStrings:KitWorks", $"Data Source={Path.Combine(folder.FullName, "kitworks.db")}"),
                ("Database:Provider", "Sqlite"), ("Shop:Name", DemoCatalog.ShopName), ("urls", url), ("Logging:LogLevel:Default", "Warning"));
            await app.Prepare(cancellationToken);
            var made = await new DemoShop(app.Services, folder).Open(cancellationToken);
            Console.WriteLine(Summary(made, folder, url.Split(';')[0]));
            if (parsed.GetValue(once)) return 0;

            Console.WriteLine($"\nServing at {url}. Stop with Ctrl+C.");
            await app.Listen(cancellationToken);
            return 0;
        });
        return command;
    }

    const string OrderToTry =
        """{"design":{"shelter":{"kind":"dome","class":1,"frequency":2,"cut":"1/2","size":{"height":"6 ft"}},"hubSystem":"ring-100","strutStock":"pvc-33"},"quantity":1,"customer":{"name":"A customer"}}""";

    static string Summary(DemoSummary made, DirectoryInfo folder, string url)
    {
        var orders = string.Join("\n\n", made.Orders.Select(o =>
            $"""
            Order {o.Order.Number}, {o.Order.Status.ToString().ToLowerInvariant()}: {o.Order.Quantity} × {o.Kit.Frame.Dimensions.WidthMm / 1000:0.0} m dome, {o.Kit.Frame.Dimensions.HeightMm / 1000:0.0} m high
              each {o.Kit.Totals.Hubs} hubs, {o.Kit.Totals.Struts} struts in {o.Kit.StrutTypes.Length} lengths, {o.Kit.Totals.TiesWithSpares} ties, {o.Kit.Bundles.Length} bundles in {o.Kit.Tiers.Length} tiers
              {o.Papers.FullName}: picklist.csv, labels.pdf, labels-a4.pdf, plan.svg, tier-0.svg …
            """));
        return $$"""
            {{DemoCatalog.ShopName}} is open. Its database is {{Path.Combine(folder.FullName, "kitworks.db")}}.

            {{orders}}

            Keys of this demo: bench {{made.BenchKey}}
                          storefront {{made.StorefrontKey}}

            While it serves, try {{url}}/docs, or order another kit:

            curl -s {{url}}/api/orders -H 'Authorization: Bearer {{made.StorefrontKey}}' \
              -H 'Content-Type: application/json' -H 'Idempotency-Key: my-first-order' \
              -d '{{OrderToTry}}'

            Statements about strength, wind and snow need a licensed engineer and your local code; KitWorks gives none here.
            """;
    }
}
