using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using KitWorks.Shop;
using KitWorks.Shop.Access;

namespace KitWorks.Api.Tests.Access;

/// <summary>Who gets in at the bench by name and password, and what the cookie opens.</summary>
public sealed partial class StaffSignInTests
{
    const string Password = "a few words in a row";

    [Fact]
    public async Task SignIn_WhenNameAndPasswordGoTogether_OpensTheBenchAndReadsTheInterface()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Bench, Password));
        using var browser = new Browser(shop);

        Assert.Equal(HttpStatusCode.Redirect, await browser.SignIn("Ada", Password));

        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/orders")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/api/orders")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.Get("/settings/staff")).StatusCode);
    }

    /// <summary>A page of another site can make a browser send its cookies along, but no key.</summary>
    [Fact]
    public async Task Cookie_WhenTheInterfaceIsAskedToChangeSomething_IsNoKey()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Admin, Password));
        using var browser = new Browser(shop);
        await browser.SignIn("Ada", Password);

        var answer = await browser.Send("/api/stock/receipts", JsonContent.Create(new { lines = new[] { new { sku = "tie-n120", quantity = 5 } }, reference = "x" }));

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task Form_WhenItLacksItsToken_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Admin, Password));
        using var browser = new Browser(shop);
        await browser.SignIn("Ada", Password);

        var answer = await browser.Send("/stock/tie-n120?handler=Receive", new FormUrlEncodedContent([new("quantity", "5"), new("reference", "x")]));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(0, (await shop.Bench.Item("tie-n120")).Int("onHand"));
    }

    [Fact]
    public async Task SignIn_WhenThePasswordIsWrongFiveTimes_IsLockedForTheRightOneToo()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Bench, Password));
        using var browser = new Browser(shop);

        for (var i = 0; i < 5; i++) Assert.Equal(HttpStatusCode.UnprocessableEntity, await browser.SignIn("Ada", "not the password"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, await browser.SignIn("Ada", Password));
    }

    [Fact]
    public async Task Ended_WhenSomebodyIsSignedIn_AreOutAtTheNextRequest()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Bench, Password));
        using var browser = new Browser(shop);
        await browser.SignIn("Ada", Password);

        await shop.Ask(new EndStaff("Ada"));

        Assert.Equal(HttpStatusCode.Redirect, (await browser.Get("/orders")).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await browser.SignIn("Ada", Password));
    }

    [Fact]
    public async Task LastAdmin_WhenEnded_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        await shop.Ask(new CreateStaff("Ada", Role.Admin, Password));

        Assert.Equal("staff.last-admin", (await shop.Outcome(new EndStaff("Ada"))).Refusal!.Code);
    }

    [Fact]
    public async Task FirstAccount_WhenTheAdminKeyIsRight_IsMadeOnce()
    {
        await using var shop = await OpenShop.Open();
        using var browser = new Browser(shop);

        Assert.Equal(HttpStatusCode.Forbidden, await browser.Post("/first", ("key", "a guess"), ("name", "Eve"), ("password", Password)));
        Assert.Equal(HttpStatusCode.Redirect, await browser.Post("/first", ("key", OpenShop.BootstrapKey), ("name", "Ada"), ("password", Password)));

        Assert.DoesNotContain("<form", await browser.Read("/first"), StringComparison.Ordinal);
        Assert.Equal(["Ada"], (await shop.Ask(new ListStaff())).Select(s => s.Name));
    }

    /// <summary>As much of a browser as a sign-in needs: cookies, and the token of a form.</summary>
    sealed partial class Browser : IDisposable
    {
        public Browser(OpenShop shop) => Http = new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shop.Address };

        HttpClient Http { get; }

        public Task<HttpResponseMessage> Get(string path) => Http.GetAsync(path);

        public Task<string> Read(string path) => Http.GetStringAsync(path);

        public Task<HttpResponseMessage> Send(string path, HttpContent content) => Http.PostAsync(path, content);

        public Task<HttpStatusCode> SignIn(string name, string password) => Post("/sign-in", ("name", name), ("password", password));

        public async Task<HttpStatusCode> Post(string path, params (string Name, string Value)[] fields)
        {
            var token = Token().Match(await Http.GetStringAsync(path)).Groups[1].Value;
            var answer = await Http.PostAsync(path, new FormUrlEncodedContent([.. fields.Select(f => KeyValuePair.Create(f.Name, f.Value)), new("__RequestVerificationToken", token)]));
            return answer.StatusCode;
        }

        public void Dispose() => Http.Dispose();

        [GeneratedRegex("__RequestVerificationToken\" type=\"hidden\" value=\"([^\"]+)")]
        private static partial Regex Token();
    }
}
