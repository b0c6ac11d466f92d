namespace KitWorks.Tests;

/// <summary>One shop for all tests of a class, for tests that do not mind what others did in it.</summary>
public sealed class OneShop : IAsyncLifetime
{
    OpenShop? shop;

    internal OpenShop Shop => shop!;

    public async ValueTask InitializeAsync() => shop = await OpenShop.Open();

    public ValueTask DisposeAsync() => shop?.DisposeAsync() ?? default;
}
