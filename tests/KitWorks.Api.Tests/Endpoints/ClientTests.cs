using System.Diagnostics;
using System.Reflection;
using System.Text.Json;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using NSwag.CodeGeneration.CSharp;

namespace KitWorks.Api.Tests.Endpoints;

/// <summary>What others make of our description without asking us: a linter's verdict, and clients in two languages that place an order.</summary>
public sealed class ClientTests : IDisposable
{
    static readonly string Tools = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../clients"));

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-clients-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task OpenApi_WhenSpectralReadsIt_HasNothingToSay()
    {
        MustHaveTools();
        await using var shop = await OpenShop.Open();
        await Description(shop);

        var (exit, output) = await Node("@stoplight/spectral-cli/dist/index.js", "lint", In("api.json"), "--ruleset", Path.Combine(Tools, "spectral.yaml"), "--fail-severity", "hint");

        Assert.True(exit == 0, output);
    }

    [Fact]
    public async Task CSharpClient_WhenNSwagMakesIt_PlacesAnOrder()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var document = await NSwag.OpenApiDocument.FromJsonAsync((await shop.Nobody.Get("/openapi/v1.json")).Is(200).Text, TestContext.Current.CancellationToken);
        var settings = new CSharpClientGeneratorSettings { ClassName = "ShopClient", GenerateOptionalParameters = true };
        settings.CSharpGeneratorSettings.Namespace = "Client";
        settings.CSharpGeneratorSettings.JsonLibrary = NJsonSchema.CodeGeneration.CSharp.CSharpJsonLibrary.SystemTextJson;
        var client = Compile(new CSharpClientGenerator(document, settings).GenerateFile(), """
            using System.Net.Http;
            using System.Threading.Tasks;

            namespace Client;

            public static class Buyer
            {
                public static async Task<string> Buy(HttpClient http)
                {
                    var shop = new ShopClient(http);
                    var design = new DesignBody
                    {
                        Shelter = new ShelterBody { Kind = "dome", Class = 1, Frequency = 2, Cut = "1/2", Size = new SizeBody { Height = "6 ft" } },
                        HubSystem = "ring-100", StrutStock = "pvc-33",
                    };
                    var quote = await shop.PostQuotesAsync(new QuoteBody { Design = design, Quantity = 2 });
                    var order = await shop.PostOrdersAsync("from-csharp-1", new OrderBody { QuoteId = quote.Id, Customer = new CustomerBody { Name = "A. Customer" }, WhenShort = WhenShort.Wait });
                    var read = await shop.GetOrdersByIdAsync(order.Id);
                    try
                    {
                        await shop.GetOrdersByIdAsync(System.Guid.Empty);
                        return "found what is not there";
                    }
                    catch (ApiException<Problem> refused)
                    {
                        return $"{read.Quantity} kits, {read.Status}, {refused.StatusCode} {refused.Result.Code}";
                    }
                }
            }
            """);
        using var http = new HttpClient { BaseAddress = shop.Address };
        http.DefaultRequestHeaders.Authorization = new("Bearer", shop.Keys.Storefront);

        var bought = await (Task<string>)client.GetType("Client.Buyer")!.GetMethod("Buy")!.Invoke(null, [http])!;

        Assert.Equal("2 kits, Reserved, 404 order.unknown", bought);
        Assert.Single((await shop.Storefront.Get("/api/orders")).Ok.List("items"));
    }

    [Fact]
    public async Task TypeScriptClient_WhenMadeFromTheDescription_PlacesAnOrder()
    {
        MustHaveTools();
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        await Description(shop);
        foreach (var file in (string[])["order.ts", "node.d.ts", "tsconfig.json", "package.json"]) File.Copy(Path.Combine(Tools, file), In(file));
        Directory.CreateSymbolicLink(In("node_modules"), Path.Combine(Tools, "node_modules"));

        var (generated, words) = await Node("openapi-typescript/bin/cli.js", In("api.json"), "-o", In("api.d.ts"));
        Assert.True(generated == 0, words);
        var (compiled, complaints) = await Node("typescript/bin/tsc", "-p", folder.FullName);
        Assert.True(compiled == 0, complaints);
        var (exit, output) = await Run("node", folder.FullName, In("order.js"), shop.Address.ToString().TrimEnd('/'), shop.Keys.Storefront);

        Assert.True(exit == 0, output);
        var told = JsonSerializer.Deserialize<JsonElement>(output);
        Assert.Equal(2, told.Int("quantity"));
        Assert.InRange(told.Int("lines"), 5, 100);
        Assert.Equal("order.unknown", told.Text("code"));
        Assert.Equal(told.Int("number"), (await shop.Storefront.Get("/api/orders")).Ok.Int("items/0/number"));
    }

    string In(string file) => Path.Combine(folder.FullName, file);

    async Task Description(OpenShop shop) => await File.WriteAllBytesAsync(In("api.json"), (await shop.Nobody.Get("/openapi/v1.json")).Is(200).Bytes);

    static Assembly Compile(params string[] sources)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create("client", sources.Select(s => CSharpSyntaxTree.ParseText(s)), references, new(OutputKind.DynamicallyLinkedLibrary));
        using var assembly = new MemoryStream();
        var made = compilation.Emit(assembly);
        Assert.True(made.Success, string.Join('\n', made.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Take(10)));
        return Assembly.Load(assembly.ToArray());
    }

    static Task<(int, string)> Node(string tool, params string[] arguments) => Run("node", Tools, [Path.Combine(Tools, "node_modules", tool), .. arguments]);

    static async Task<(int, string)> Run(string program, string folder, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, process.ExitCode == 0 ? await output : await output + await error);
    }

    static void MustHaveTools()
    {
        if (Directory.Exists(Path.Combine(Tools, "node_modules", "openapi-typescript"))) return;
        const string remedy = "The tools are not installed: run npm ci in tests/KitWorks.Api.Tests/clients.";
        if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail(remedy);
        Assert.Skip(remedy);
    }
}
