using System.Text;
using KitWorks.Shop.Access;

namespace KitWorks.Shop.Tests.Storage.Sqlite;

public sealed class SecretsTests
{
    [Fact]
    public async Task Key_WhenTheDatabaseIsRead_IsNowhereInIt()
    {
        await using var shop = await OpenShop.Open();
        var key = await shop.Ask(new CreateKey("summer help", Role.Bench));
        (await shop.With(key.Secret).Get("/api/stock")).Is(200);
        _ = (await shop.With(key.Secret).Order(Designs.SmallDome)).Created;

        foreach (var file in Directory.GetFiles(Path.GetDirectoryName(shop.Database.File)!))
        {
            var bytes = await ReadShared(file);
            foreach (var secret in (string[])[key.Secret, shop.Keys.Bench, shop.Keys.Storefront, OpenShop.BootstrapKey])
                Assert.True(bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, $"A secret is in {file}.");
        }
    }

    static async Task<byte[]> ReadShared(string path)
    {
        await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[file.Length];
        await file.ReadExactlyAsync(bytes);
        return bytes;
    }
}
