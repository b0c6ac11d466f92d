using System.Collections.Immutable;
using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;
using KitWorks.Shop.Catalog;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Pure computations: nothing is stored.</summary>
static class Designing
{
    public static void MapDesigning(this IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Designing");

        api.MapPost("/kits/preview", async (HttpContext context, PureAnswers pure, IMediator mediator) =>
            !(await Catalog(context, mediator)).Succeeds(out var catalog, out var refusal)
                ? Problems.Of(refusal)
                : await pure.ToBody<PreviewBody>(context, "kit", catalog.Version, body => pure.AsJson(Preview(body.Design, catalog.Catalog))))
            .Accepts<PreviewBody>("application/json").WithSummary("The kit of a design").Produces<KitAnswer>();
        api.MapGet("/kits/preview", async (HttpContext context, string design, PureAnswers pure, IMediator mediator) =>
            !(await Catalog(context, mediator)).Succeeds(out var catalog, out var refusal)
                ? Problems.Of(refusal)
                : await pure.ToAddress<DesignBody>(context, "kit at", catalog.Version, design, body => pure.AsJson(Preview(body, catalog.Catalog))))
            .WithSummary("The same, for who keeps answers; design is a design as JSON").Produces<KitAnswer>();

        api.MapPost("/frames", (HttpContext context, PureAnswers pure) =>
            pure.ToBody<FrameBody>(context, "frame", "", body => pure.AsJson(FrameOf(body.Shelter, body.Openings).Select(o => FrameAnswer.Of(o.Frame)))))
            .Accepts<FrameBody>("application/json").WithSummary("The geometry of a shelter").Produces<FrameAnswer>();
        api.MapGet("/frames", (HttpContext context, string shelter, PureAnswers pure) =>
            pure.ToAddress<ShelterBody>(context, "frame at", "", shelter, body => pure.AsJson(FrameOf(body, null).Select(o => FrameAnswer.Of(o.Frame)))))
            .WithSummary("The same, for who keeps answers; shelter is a shelter as JSON").Produces<FrameAnswer>();

        api.MapPost("/drawings", (HttpContext context, PureAnswers pure) =>
            pure.ToBody<DrawingBody>(context, "drawing", "", body => PureAnswers.AsText(Svg, Draw(body))))
            .Accepts<DrawingBody>("application/json").WithSummary("A picture of a shelter, as SVG").Produces<string>(200, "image/svg+xml");
        api.MapGet("/drawings", (HttpContext context, string shelter, string? view, int? tier, PureAnswers pure) =>
            pure.ToAddress<ShelterBody>(context, "drawing at", "", shelter, body => PureAnswers.AsText(Svg, Draw(new(body, view, tier, null, null)))))
            .WithSummary("The same, for who keeps answers; shelter is a shelter as JSON").Produces<string>(200, "image/svg+xml");

        api.MapGet("/shapes", () => TypedResults.Ok(ShapesAnswer.All)).WithSummary("What shelters there are, and their limits");

        api.MapPost("/shapes/cuts", (CutsBody body) => body.Cuts()
            .Ok(cuts => cuts.Select(c => new CutView(c.Name, c.Rows, Math.Round(c.HeightOverRadius, 8)))))
            .WithSummary("The valid cuts of a dome").Produces<CutView[]>();

        api.MapPost("/cut-plans/preview", (CutJobBody body) => body.ToJob()
            .Then(job => CutPlanner.Plan(job, TimeSpan.FromSeconds(body.TimeLimitSeconds ?? 1))).Ok(CutPlanAnswer.Of))
            .AddEndpointFilter<InTurn>().WithSummary("How to cut pieces from stock lengths").Produces<CutPlanAnswer>();
    }

    const string Svg = "image/svg+xml; charset=utf-8";

    /// <summary>For a preview, the catalog of a moment ago will do.</summary>
    static async ValueTask<Outcome<DatedCatalog>> Catalog(HttpContext context, IMediator mediator) =>
        context.RequestServices.GetRequiredService<CatalogShelf>().Recent is { } recent ? recent : await mediator.Send(new GetDatedCatalog(), context.RequestAborted);

    static Outcome<KitAnswer> Preview(DesignBody? body, ShopCatalog catalog) => Required(body, "design")
        .Then(d => d.ToDesign().Under("design")).Then(design => Kit.Make(design, catalog).Under("design")).Select(KitAnswer.Of);

    public static Outcome<OpenedFrame> FrameOf(ShelterBody? body, OpeningBody[]? openingBodies)
    {
        if (!Required(body, "shelter").Succeeds(out var given, out var refusal)) return refusal;
        var faults = new Faults();
        var shelter = faults.Take("shelter", given.ToShelter());
        var openings = faults.Take("", OpeningBody.ToOpenings(openingBodies));
        if (faults.Refusal is { } wrong) return wrong;
        return Frame.Build(shelter!).Under("shelter").Then(frame => OpenedFrame.Of(frame, openings));
    }

    static Outcome<string> Draw(DrawingBody body)
    {
        var faults = new Faults();
        var view = faults.Choose("view", body.View, View.Isometric, ("plan", View.Plan), ("side", View.Side), ("end", View.End), ("iso", View.Isometric), ("spread", View.Spread));
        if (faults.Refusal is { } refusal) return refusal;
        if (body.Forces is not null) return DrawForces(body, body.Forces, view!.Value);
        return FrameOf(body.Shelter, body.Openings)
            .Then(opened => FrameDrawing.Draw(opened.Frame, new() { View = view!.Value, Tier = body.Tier, Openings = opened.Openings }));
    }

    static Outcome<string> DrawForces(DrawingBody body, ForcesBody forcesBody, View view)
    {
        if (body.Tier is not null) return Refusal.OfField("request.invalid", "tier", "A frame bears its loads as a whole; leave the tier out, or the forces.");
        if (!forcesBody.ToForces().Under("forces").Succeeds(out var forces, out var refusal)) return refusal;
        return FrameOf(body.Shelter, body.Openings)
            .Then(opened => forces.On(opened.Frame).Under("forces"))
            .Then(loaded => loaded.Result is { } result
                ? ForceDrawing.Draw(loaded.Frame, result.Members, forces.Loads, new() { View = view })
                : Statics.Mechanism.RefusalOf(loaded.Truss.Mechanisms));
    }

    public static Outcome<T> Required<T>(T? part, string field) where T : class =>
        part is null ? Refusal.OfField("request.invalid", field, $"Give the {field}.") with { Kind = RefusalKind.Malformed } : part;
}

/// <summary>A design to look at.</summary>
sealed record PreviewBody(DesignBody? Design);

/// <summary>A shelter to frame, with its openings made where there are any.</summary>
sealed record FrameBody(ShelterBody? Shelter, OpeningBody[]? Openings);

/// <summary>
/// A shelter to draw: <c>plan</c>, <c>side</c>, <c>end</c>, <c>iso</c> (default) or <c>spread</c>, whole or as it stands after a tier. With <c>forces</c>,
/// as in /api/statics/preview, the struts are drawn by the force in them: compression blue, tension orange, the wider the larger.
/// </summary>
sealed record DrawingBody(ShelterBody? Shelter, string? View, int? Tier, ForcesBody? Forces, OpeningBody[]? Openings);

/// <summary>A dome, whose cut and size do not matter: by itself, or as <c>shelter</c> or <c>dome</c>.</summary>
sealed record CutsBody : ShelterBody
{
    public ShelterBody? Shelter { get; init; }

    public ShelterBody? Dome { get; init; }

    public Outcome<ImmutableArray<DomeCut>> Cuts() => (Shelter, Dome) switch
    {
        ({ } shelter, _) => Of(shelter).Under("shelter"),
        (_, { } dome) => Of(dome).Under("dome"),
        _ => Of(this),
    };

    static Outcome<ImmutableArray<DomeCut>> Of(ShelterBody body) => body.ToSphere().Then(s => DomeCuts.Of(s.Solid, s.Lattice, s.Up));
}

/// <summary>A valid cut.</summary>
sealed record CutView(string Cut, int Rows, double HeightOverRadius);
