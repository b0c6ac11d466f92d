using KitWorks.Shop.Access;

namespace KitWorks.Shop.Tests.Access;

public sealed class KeysTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Key_WhenItIsNew_WorksUntilItExpires()
    {
        var clock = new SettableClock();
        await using var shop = await OpenShop.Open(clock);
        var key = await shop.Ask(new CreateKey("summer help", Role.Bench, clock.GetUtcNow().AddDays(30)));

        (await shop.With(key.Secret).Get("/api/stock")).Is(200);
        clock.Forward(TimeSpan.FromDays(30) - TimeSpan.FromMilliseconds(1));
        (await shop.With(key.Secret).Get("/api/stock")).Is(200);
        clock.Forward(TimeSpan.FromMilliseconds(1));
        (await shop.With(key.Secret).Get("/api/stock")).IsProblem(401, "access.no-key");
    }

    [Fact]
    public async Task Key_WhenItIsRevoked_StopsAtOnce()
    {
        await using var shop = await OpenShop.Open();
        var key = await shop.Ask(new CreateKey("summer help", Role.Bench));
        (await shop.With(key.Secret).Get("/api/stock")).Is(200);

        await shop.Ask(new RevokeKey("summer help"));

        (await shop.With(key.Secret).Get("/api/stock")).IsProblem(401, "access.no-key");
        Assert.NotNull((await shop.Ask(new ListKeys())).Single(k => k.Name == "summer help").RevokedAt);
    }

    [Fact]
    public async Task Key_WhenTwoAreMade_HaveNoSecretInCommon()
    {
        var shop = one.Shop;

        var first = await shop.Ask(new CreateKey("one", Role.Bench));
        var other = await shop.Ask(new CreateKey("other", Role.Bench));

        Assert.StartsWith("kitworks_", first.Secret, StringComparison.Ordinal);
        Assert.Equal("kitworks_".Length + 64, first.Secret.Length);
        Assert.NotEqual(first.Secret, other.Secret);
    }

    [Theory]
    [InlineData("bench", "key.exists")]
    [InlineData("bootstrap", "request.invalid")]
    [InlineData("", "request.invalid")]
    [InlineData("a\nb", "request.invalid")]
    public async Task CreateKey_WhenTheNameWillNotDo_IsRefused(string name, string code)
    {
        var shop = one.Shop;

        Assert.Equal(code, (await shop.Outcome(new CreateKey(name, Role.Admin))).Refusal!.Code);
    }
}
