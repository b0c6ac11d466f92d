using System.CommandLine;
using KitWorks.Api.Hosting;

namespace KitWorks.Api.Verbs;

/// <summary><c>serve</c>: the service, on the shop's own database.</summary>
static class ServeVerb
{
    public static Option<string?> Urls() => new("--urls") { Description = $"Where to listen, {ShopHost.DefaultUrl} if not said" };

    public static Command Command()
    {
        var urls = Urls();
        var command = new Command("serve", "Serve the shop over HTTP") { urls };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            await using var app = ShopHost.Build(("urls", parsed.GetValue(urls)));
            await app.Prepare(cancellationToken);
            await app.Listen(cancellationToken);
            return 0;
        });
        return command;
    }
}
