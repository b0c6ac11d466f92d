namespace KitWorks.Api.Tests.Endpoints;

public sealed class KeyKeepingTests
{
    [Fact]
    public async Task Keys_WhenMadeUsedAndRevoked_WorkJustSoLong()
    {
        await using var shop = await OpenShop.Open();

        var made = await shop.Admin.Post("/api/keys", new { name = "web shop 2", role = "storefront", expiresAt = "2099-01-01T00:00:00Z" });
        var secret = made.Created.Text("secret");
        (await shop.With(secret).Get("/api/shapes")).Is(200);
        (await shop.With(secret).Get("/api/stock")).Is(403);
        var listed = (await shop.Admin.Get("/api/keys")).Is(200);
        (await shop.Admin.Send(new(HttpMethod.Delete, "/api/keys/web%20shop%202"))).Is(204);

        Assert.Matches("^kitworks_[0-9a-f]{64}$", secret);
        Assert.True(made.Headers.CacheControl!.NoStore);
        Assert.DoesNotContain(secret, listed.Text, StringComparison.Ordinal);
        Assert.Contains("web shop 2", listed.Json.Texts("items", "name"));
        (await shop.With(secret).Get("/api/shapes")).IsProblem(401, "access.no-key");
        (await shop.Admin.Send(new(HttpMethod.Delete, "/api/keys/nobody"))).IsProblem(404, "key.unknown");
    }

    [Fact]
    public async Task Key_WhenUsed_ShowsWhen()
    {
        var clock = new SettableClock();
        await using var shop = await OpenShop.Open(clock);
        (await shop.Bench.Get("/api/stock")).Is(200);
        var keys = (await shop.Admin.Get("/api/keys")).Ok.List("items");

        Assert.Equal(clock.GetUtcNow(), keys.Single(k => k.Text("name") == "bench").At("lastUsedAt").GetDateTimeOffset());
        Assert.True(keys.Single(k => k.Text("name") == "storefront").IsNull("lastUsedAt"));
    }

    [Fact]
    public async Task Keys_WhenAskedForByOthers_AreNotShown()
    {
        await using var shop = await OpenShop.Open();

        foreach (var caller in (Caller[])[shop.Storefront, shop.Bench])
        {
            (await caller.Get("/api/keys")).IsProblem(403, "access.role");
            (await caller.Post("/api/keys", new { name = "mine", role = "admin" })).IsProblem(403, "access.role");
            (await caller.Send(new(HttpMethod.Delete, "/api/keys/bench"))).IsProblem(403, "access.role");
        }
        (await shop.Bench.Get("/api/stock")).Is(200);
    }

    [Fact]
    public async Task Key_WhenMadeTwiceUnderOneIdempotencyKey_KeepsItsSecretNowhere()
    {
        await using var shop = await OpenShop.Open();

        var secret = (await shop.Admin.Post("/api/keys", new { name = "till" }, once: "make-a-key")).Created.Text("secret");
        (await shop.Admin.Post("/api/keys", new { name = "till" }, once: "make-a-key")).IsProblem(409, "key.exists");

        foreach (var path in Directory.GetFiles(Path.GetDirectoryName(shop.Database.File)!))
        {
            await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var content = new MemoryStream();
            await file.CopyToAsync(content, TestContext.Current.CancellationToken);
            Assert.True(content.ToArray().AsSpan().IndexOf(System.Text.Encoding.ASCII.GetBytes(secret)) < 0, path);
        }
    }

    [Theory]
    [InlineData("""{"role":"bench"}""", 422, "request.invalid", "#/name")]
    [InlineData("""{"name":"a/b"}""", 422, "request.invalid", "#/name")]
    [InlineData("""{"name":"bootstrap"}""", 422, "request.invalid", "#/name")]
    [InlineData("""{"name":"a","role":"owner"}""", 400, "request.malformed", "#/role")]
    [InlineData("""{"name":"a","expiresAt":"2001-01-01T00:00:00Z"}""", 422, "key.expiry", "#/expiresAt")]
    [InlineData("""{"name":"a","expiresAt":"soon"}""", 400, "request.malformed", "#/expiresAt")]
    public async Task Key_WhenItCannotBe_IsRefused(string body, int status, string code, string pointer)
    {
        await using var shop = await OpenShop.Open();

        (await shop.Admin.PostText("/api/keys", body)).IsProblem(status, code, pointer);
    }
}
