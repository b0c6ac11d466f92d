using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Tests;

/// <summary>What every test shop starts with: the demo's catalog, three keys, and nothing in stock.</summary>
static class Opening
{
    public static async Task<ShopKeys> Fill(params (string, string?)[] database)
    {
        await using var app = ShopHost.Build(OpenShop.SettingsFor(database));
        await using (var scope = app.Services.CreateAsyncScope()) await scope.ServiceProvider.GetRequiredService<ShopDb>().Upgrade(default);
        await app.Prepare(default);
        await Ask(app, DemoCatalog.Sections);
        await Ask(app, DemoCatalog.Shelves);
        return new(
            (await Ask(app, new CreateKey("bench", Role.Bench))).Secret,
            (await Ask(app, new CreateKey("storefront", Role.Storefront))).Secret,
            (await Ask(app, new CreateKey("other storefront", Role.Storefront))).Secret);
    }

    static async Task<T> Ask<T>(WebApplication app, IRequest<Outcome<T>> message)
    {
        await using var scope = app.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Call>().Actor = "test";
        return (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message)).Value;
    }
}

/// <summary>The secrets of the keys that every test shop has.</summary>
sealed record ShopKeys(string Bench, string Storefront, string OtherStorefront);
