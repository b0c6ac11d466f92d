namespace KitWorks.Api.Tests.Verbs;

public sealed class KeysVerbTests : IDisposable
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
}
