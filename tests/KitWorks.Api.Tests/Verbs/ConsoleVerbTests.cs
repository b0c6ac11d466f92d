using KitWorks.Shop.Access;
using MediatR;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Api.Tests.Verbs;

public sealed class ConsoleVerbTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-keys-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Keys_WhenMadeListedAndRevoked_SayWhatTheyDid()
    {
        var made = await KitWorksProcess.Run(folder.FullName, "keys", "create", "web shop", "--role", "storefront", "--days", "30");
        var twice = await KitWorksProcess.Run(folder.FullName, "keys", "create", "web shop");
        var listed = await KitWorksProcess.Run(folder.FullName, "keys", "list");
        var revoked = await KitWorksProcess.Run(folder.FullName, "keys", "revoke", "web shop");
        var unknown = await KitWorksProcess.Run(folder.FullName, "keys", "revoke", "nobody's");

        Assert.Equal((0, ""), (made.Exit, made.Error));
        Assert.Matches("^kitworks_[0-9a-f]{64}\n$", made.Out);
        Assert.Equal((1, 1), (twice.Exit, twice.Error.Count(c => c == '\n')));
        Assert.Contains("web shop", listed.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(made.Out.Trim(), listed.Out, StringComparison.Ordinal);
        Assert.Equal((0, 1), (revoked.Exit, unknown.Exit));
    }

    [Fact]
    public async Task VerifyLedger_WhenTheShopIsNew_FindsNothingWrong()
    {
        Assert.Equal(0, (await KitWorksProcess.Run(folder.FullName, "migrate")).Exit);

        var verified = await KitWorksProcess.Run(folder.FullName, "verify-ledger");

        Assert.Equal((0, "0 items, 0 movements, 0 faults.\n"), (verified.Exit, verified.Out));
    }

    [Fact]
    public async Task Backup_WhenTheShopIsOpen_CopiesItAndNeverOverAnything()
    {
        var secret = (await KitWorksProcess.Run(folder.FullName, "keys", "create", "web shop")).Out.Trim();

        var copied = await KitWorksProcess.Run(folder.FullName, "backup", "copy.db");
        var again = await KitWorksProcess.Run(folder.FullName, "backup", "copy.db");

        Assert.Equal((0, ""), (copied.Exit, copied.Error));
        Assert.Equal((1, 1), (again.Exit, again.Error.Count(c => c == '\n')));
        await using var shop = KitWorks.Api.Hosting.ShopHost.Build(OpenShop.SettingsFor(("ConnectionStrings:KitWorks", $"Data Source={Path.Combine(folder.FullName, "copy.db")}")));
        await using var scope = shop.Services.CreateAsyncScope();
        var found = await scope.ServiceProvider.GetRequiredService<IMediator>().Send(new FindKey(secret), TestContext.Current.CancellationToken);
        Assert.Equal("web shop", found.Value.Name);
    }

    [Theory]
    [InlineData("verify-ledger")]
    [InlineData("backup", "copy.db")]
    public async Task Verb_WhenThereIsNoDatabase_SaysSoAndMakesNone(params string[] arguments)
    {
        var (exit, _, error) = await KitWorksProcess.Run(folder.FullName, arguments);

        Assert.Equal((1, 1), (exit, error.Count(c => c == '\n')));
        Assert.Empty(folder.GetFiles());
    }
}
