using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;

namespace KitWorks.Api.Endpoints;

/// <summary>What loads do to a frame. A screening, pure: nothing is stored.</summary>
static class Standing
{
    public static void MapStanding(this IEndpointRouteBuilder app) => app
        .MapPost("/api/statics/preview", (StaticsBody body) => body.ToLoadedFrame().Ok(StaticsAnswer.Of))
        .AddEndpointFilter<InTurn>().RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Designing")
        .WithSummary("Forces and displacements of a frame under loads: a screening, no certificate").Produces<StaticsAnswer>();
}
