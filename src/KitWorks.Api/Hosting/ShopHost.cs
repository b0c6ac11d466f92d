using KitWorks.Api.Access;
using KitWorks.Api.Endpoints;
using KitWorks.Api.Http;
using KitWorks.Api.Pages;
using KitWorks.Migrations.PostgreSql;
using KitWorks.Migrations.Sqlite;
using KitWorks.Shop;
using KitWorks.Shop.Printing;
using KitWorks.Shop.Storage;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Hosting;

/// <summary>Builds the one process: settings in, everything wired.</summary>
static class ShopHost
{
    public const string DefaultUrl = "http://localhost:5080";

    /// <summary>The application, not started. <paramref name="settings"/> come last and win over files and environment.</summary>
    public static WebApplication Build(params (string Key, string? Value)[] settings) => Build(null, settings);

    /// <summary>As above, for a caller that changes the builder first, as tests do.</summary>
    public static WebApplication Build(Action<WebApplicationBuilder>? change, params (string Key, string? Value)[] settings)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(ShopHost).Assembly.GetName().Name, ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.AddInMemoryCollection(settings.Where(s => s.Value is not null).Select(s => KeyValuePair.Create(s.Key, s.Value)));
        // Said first, so that files, environment and command line may say otherwise.
        builder.Configuration.Sources.Insert(0, new Microsoft.Extensions.Configuration.Memory.MemoryConfigurationSource
        {
            InitialData =
            [
                KeyValuePair.Create<string, string?>("Logging:LogLevel:Microsoft.EntityFrameworkCore", "Warning"),
                // The keys that seal cookies lie in the shop's database, beside what they give access to.
                KeyValuePair.Create<string, string?>("Logging:LogLevel:Microsoft.AspNetCore.DataProtection", "Error"),
            ],
        });
        // Whoever starts the program is told in a line why it does not start (Listen); later faults of the host are logged.
        var started = false;
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", level => started && level >= LogLevel.Information);
        change?.Invoke(builder);
        builder.Configuration.MustBeKnown();
        builder.AddListening();
        builder.AddTelemetry();
        builder.AddRateLimits();
        builder.AddComputing();
        AddServices(builder);

        var app = builder.Build();
        app.UseTrustedProxies();
        app.UseSafeHeaders();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = Problems.Answer,
            // A client's mistake is answered, not logged as a fault of ours.
            SuppressDiagnosticsCallback = thrown => thrown.Exception is BadHttpRequestException,
        });
        app.UseStatusCodePages(Problems.AnswerStatus);
        app.UsePageFiles();
        app.UseRouting();
        app.UseCors();
        app.UseAuthentication();
        app.UseRateLimiter();
        app.UseAuthorization();
        app.UseMiddleware<BodyLimit>();
        app.UseMiddleware<OnceOnlyHeader>();
        var api = app.MapGroup("").AddEndpointFilter<RouteGroupBuilder, Tagged>();
        api.MapDesigning();
        api.MapBuilding();
        api.MapStanding();
        api.MapSelling();
        api.MapStocking();
        api.MapSupplying();
        api.MapSawing();
        api.MapShipping();
        api.MapPrinting();
        api.MapPrintJobs();
        api.MapCatalogEditing();
        api.MapWebhooks();
        api.MapKeyKeeping();
        api.MapAuditing();
        app.MapRazorPages();
        api.MapPictures();
        api.MapDocs();
        api.MapHealth();
        app.MapMetrics();
        app.Lifetime.ApplicationStarted.Register(() => started = true);
        return app;
    }

    /// <summary>Serves until it is stopped.</summary>
    /// <exception cref="SettingException">It cannot listen where it is told to.</exception>
    public static async Task Listen(this WebApplication app, CancellationToken cancellationToken)
    {
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch (Exception wrong) when (wrong is IOException or InvalidOperationException or FormatException or System.Net.Sockets.SocketException)
        {
            throw new SettingException($"Cannot listen at {string.Join(", ", app.Urls)}. {wrong.Message.Split('\n')[0]}");
        }
        await app.WaitForShutdownAsync(cancellationToken);
    }

    static void AddServices(WebApplicationBuilder builder)
    {
        builder.Services.AddShop(ShopSettingsOf(builder.Configuration), Database(builder.Configuration));
        builder.Services.AddHostedService<PrintingService>();
        builder.Services.AddHostedService<WebhookService>();
        builder.Services.AddHostedService<KeyUseService>();
        builder.Services.AddKeyAccess();
        builder.Services.AddPages();
        builder.Services.AddStorefronts(builder.Configuration);
        builder.Services.AddDocs();
        builder.Services.Configure<JsonOptions>(json => StrictJson.Configure(json.SerializerOptions));
        builder.Services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
    }

    static Action<DbContextOptionsBuilder> Database(ConfigurationManager configuration)
    {
        var connection = configuration.GetConnectionString("KitWorks");
        return (configuration["Database:Provider"] ?? "Sqlite") switch
        {
            "Sqlite" => options => options.UseShopSqlite(connection ?? "Data Source=kitworks.db"),
            "PostgreSql" when connection is null =>
                throw new SettingException("Database:Provider is 'PostgreSql'; say which with ConnectionStrings:KitWorks, such as Host=db;Database=kitworks;Username=kitworks;Password=…"),
            "PostgreSql" => options => options.UseShopPostgreSql(connection),
            var other => throw new SettingException($"Database:Provider is '{other}'; it is Sqlite or PostgreSql."),
        };
    }

    static ShopSettings ShopSettingsOf(ConfigurationManager configuration)
    {
        var stocks = LabelStockSettings.Of(configuration);
        var url = configuration["Shop:PublicUrl"] ?? (configuration["urls"] ?? DefaultUrl).Split(';')[0];
        return new()
        {
            ShopName = configuration["Shop:Name"] ?? "KitWorks",
            PublicUrl = Uri.TryCreate(url.Replace("*", "localhost", StringComparison.Ordinal).Replace("+", "localhost", StringComparison.Ordinal), UriKind.Absolute, out var publicUrl)
                ? publicUrl
                : throw new SettingException($"Shop:PublicUrl is '{url}'; it is an address such as https://kits.example.com."),
            LabelTemplates = configuration["Labels:Templates"],
            LabelFonts = configuration["Labels:Fonts"],
            LabelStocks = stocks,
            Printers = PrinterSettings.Of(configuration, stocks),
            PrintingPace = PrinterSettings.Pace(configuration),
            WebhookPace = WebhookSettings.Of(configuration),
        };
    }

    /// <summary>
    /// Brings the embedded database up to date and opens the label press, so that what is wrong shows now. A database on a
    /// server may have other instances at work: there somebody says when, with the verb <c>migrate</c>.
    /// </summary>
    /// <exception cref="SettingException">The database on the server is older than this program.</exception>
    public static async Task Prepare(this WebApplication app, CancellationToken cancellationToken)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        if (app.Configuration["Database:Provider"] is null or "Sqlite") await db.Upgrade(cancellationToken);
        else if ((await db.Database.GetPendingMigrationsAsync(cancellationToken)).Any())
            throw new SettingException("The database is older than this program. Bring it up to date with the verb migrate; instances of the version before may go on meanwhile.");
        app.Services.GetRequiredService<OrderLabelPress>();
    }
}

/// <summary>A setting is wrong; the message says which and what would be right.</summary>
sealed class SettingException(string message) : Exception(message);
