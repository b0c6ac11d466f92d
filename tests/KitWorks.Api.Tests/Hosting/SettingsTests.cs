using KitWorks.Api.Hosting;

namespace KitWorks.Api.Tests.Hosting;

/// <summary>A setting that is wrong keeps the service from starting, and is named.</summary>
public sealed class SettingsTests
{
    [Theory]
    [InlineData("Logging:Format", "yaml", "Text, Json")]
    [InlineData("Telemetry:Otlp", "collector", "http://")]
    [InlineData("Telemetry:OtlpProtocol", "udp", "Grpc, HttpProtobuf")]
    [InlineData("Limits:PerKeyPerSecond", "many", "whole number")]
    [InlineData("Limits:PerAddressPerSecond", "-1", "0 to")]
    [InlineData("Limits:Connections", "0", "1 to")]
    [InlineData("Limits:ComputingAtOnce", "0", "1 to")]
    [InlineData("Cache:MegaBytes", "1e9", "whole number")]
    [InlineData("Shutdown:Seconds", "0", "1 to")]
    [InlineData("Proxies:Trusted", "10.0.0.7, proxy", "'proxy'")]
    [InlineData("Database:Provider", "Oracle", "Sqlite")]
    [InlineData("Shop:PublicUrl", "here", "https://")]
    public void Build_WhenASettingIsWrong_NamesItAndWhatWouldBeRight(string key, string value, string right)
    {
        var wrong = Assert.Throws<SettingException>(() => ShopHost.Build((key, value)));

        Assert.Contains(key, wrong.Message, StringComparison.Ordinal);
        Assert.Contains(right, wrong.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Limits:PerKeyPerSec", "Limits:PerKeyPerSecond")]
    [InlineData("Shop:Url", "Shop:PublicUrl")]
    [InlineData("Printers:1:Address", "Printers:0:Uri")]
    [InlineData("Access:AdminKey", "Access:BootstrapAdminKey")]
    public void Build_WhenThereIsNoSuchSetting_ListsThoseThatThereAre(string key, string right)
    {
        var wrong = Assert.Throws<SettingException>(() => ShopHost.Build((key, "x")));

        Assert.Contains(key, wrong.Message, StringComparison.Ordinal);
        Assert.Contains(right, wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Table_InTheReadme_ListsEverySetting()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "KitWorks.sln"))) folder = folder.Parent!;
        var readme = await File.ReadAllTextAsync(Path.Combine(folder.FullName, "README.md"), TestContext.Current.CancellationToken);

        Assert.All(Settings.Known, setting => Assert.Contains($"| `{setting}`", readme, StringComparison.Ordinal));
    }
}
