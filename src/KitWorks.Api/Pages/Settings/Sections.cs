using System.Collections.Immutable;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;

namespace KitWorks.Api.Pages.Settings;

/// <summary>A part of the catalog that has a page: what it is called, its form, and how it is read and replaced.</summary>
sealed record Section(string Name, string Title, string Says, Type Form, string Field, Func<ShopCatalog, object> Get, Func<object, PutCatalog> Change)
{
    public static ImmutableArray<Section> All { get; } =
    [
        Of<HubSystem[]>("hub-systems", "Hub systems", "The hubs that go together, how much of a strut they take up, and what holds them.", "hubSystems", c => [.. c.HubSystems], b => new() { HubSystems = b }),
        Of<StrutStock[]>("strut-stocks", "Pipe", "The pipes that struts are cut from, as they are bought.", "strutStocks", c => [.. c.StrutStocks], b => new() { StrutStocks = b }),
        Of<Tie[]>("ties", "Ties", "What holds a strut's end in its hub.", "ties", c => [.. c.Ties], b => new() { Ties = b }),
        Of<CoverMaterial[]>("covers", "Covers", "What frames are covered with; the first is taken where nobody says.", "covers", c => [.. c.Covers], b => new() { Covers = b }),
        Of<PriceBook>("prices", "Price book", "What parts and work cost, and what is added.", "prices", c => c.Prices, b => new() { Prices = b }),
        Of<Workshop>("workshop", "Workshop", "How the saw and the bench work.", "workshop", c => c.Workshop, b => new() { Workshop = b }),
    ];

    static Section Of<T>(string name, string title, string says, string field, Func<ShopCatalog, T> get, Func<T, PutCatalog> change) where T : class =>
        new(name, title, says, typeof(T), field, get, body => change((T)body));
}
