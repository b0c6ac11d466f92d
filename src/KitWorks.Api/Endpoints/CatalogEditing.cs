using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>The catalog, section by section. What a section's GET answers, its PUT takes; lengths are texts with units both ways.</summary>
static class CatalogEditing
{
    public static void MapCatalogEditing(this IEndpointRouteBuilder app)
    {
        var catalog = app.MapGroup("/api/catalog").WithTags("Catalog");
        Section<HubSystem[]>(catalog, "hub-systems", c => [.. c.HubSystems], body => new() { HubSystems = body });
        Section<StrutStock[]>(catalog, "strut-stocks", c => [.. c.StrutStocks], body => new() { StrutStocks = body });
        Section<Tie[]>(catalog, "ties", c => [.. c.Ties], body => new() { Ties = body });
        Section<CoverMaterial[]>(catalog, "covers", c => [.. c.Covers], body => new() { Covers = body });
        Section<Palette>(catalog, "palette", c => c.Palette, body => new() { Palette = body });
        Section<PriceBook>(catalog, "prices", c => c.Prices, body => new() { Prices = body });
        Section<Workshop>(catalog, "workshop", c => c.Workshop, body => new() { Workshop = body });
        Section<ParcelRules>(catalog, "parcels", c => c.Parcels, body => new() { Parcels = body });
        Section<WorkCalendar>(catalog, "calendar", c => c.Calendar, body => new() { Calendar = body });
        Section<Supply[]>(catalog, "supplies", c => [.. c.Supplies], body => new() { Supplies = body });
        Section<ScreeningRules>(catalog, "screening", c => c.Screening, body => new() { Screening = body });
    }

    static void Section<T>(RouteGroupBuilder catalog, string name, Func<ShopCatalog, T> section, Func<T, PutCatalog> change) where T : class
    {
        catalog.MapGet(name, (IMediator mediator, CancellationToken cancellationToken) => mediator.Ask(new GetCatalog(), section, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary($"The catalog's {name}").Produces<T>();
        catalog.MapPut(name, (T body, IMediator mediator, CancellationToken cancellationToken) => 
            Put(name, body, change, section, mediator, cancellationToken))
            .RequireAuthorization(KeyAuthentication.AdminOnly).WithSummary($"Replace the catalog's {name}").Produces<T>();
    }

    static async Task<IResult> Put<T>(
        string name, T body, Func<T, PutCatalog> change, Func<ShopCatalog, T> section, IMediator mediator, CancellationToken cancellationToken) where T : class
    {
        if (body is object?[] items && items.Contains(null))
            return Problems.Of(StatusCodes.Status400BadRequest, "request.malformed", "A list holds no nulls.");
        return (await mediator.Send(change(body), cancellationToken)).Succeeds(out var catalog, out var refusal)
            ? TypedResults.Ok(section(catalog))
            : Problems.Of(refusal with { Errors = [.. refusal.Errors.Where(e => InBody(name, e)).Select(e => e with { Field = e.Field[FieldOf(name).Length..].TrimStart('/') })] });
    }

    /// <summary>The shop names a field from the whole catalog, <c>hubSystems/0/code</c>; the body is one section of it.</summary>
    static bool InBody(string name, FieldError error) => error.Field.StartsWith(FieldOf(name), StringComparison.Ordinal);

    static string FieldOf(string name) => name.Replace("-s", "S", StringComparison.Ordinal);
}
