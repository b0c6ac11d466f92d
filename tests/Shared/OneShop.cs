namespace KitWorks.Tests;

/// <summary>One shop for all tests of a class, for tests that do not mind what others did in it.</summary>
public sealed class OneShop : IAsyncLifetime
{
    internal OpenShop Shop { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Shop = await OpenShop.Open();

    public ValueTask DisposeAsync() => Shop.DisposeAsync();
}
