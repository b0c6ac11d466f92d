using KitWorks.Api.Access;
using KitWorks.Shop.Auditing;
using KitWorks.Shop.Inventory;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Who changed what.</summary>
static class Auditing
{
    public static void MapAuditing(this IEndpointRouteBuilder app) => app
        .MapGet("/api/audit", (int? limit, string? after, string? actor, string? action, IMediator mediator, CancellationToken cancellationToken) =>
            Paging.Ask(limit, after, mediator, (most, from) => new ListAudit(most, from, actor, action), cancellationToken))
        .RequireAuthorization(KeyAuthentication.AdminOnly).WithTags("Keys").WithSummary("Who changed what, newest first").Produces<Page<AuditAnswer>>();
}
