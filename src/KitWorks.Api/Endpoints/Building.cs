using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Api.Endpoints;

/// <summary>What whoever cuts, sews and builds works from. Pure: nothing is stored.</summary>
static class Building
{
    const string Svg = "image/svg+xml";

    public static void MapBuilding(this IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Building");

        api.MapPost("/stake-outs", (FrameBody body) => FrameOf(body.Shelter, body.Openings).Ok(StakeOutAnswer.Of))
            .WithSummary("Where the base stands, and what to tape to lay it out square").Produces<StakeOutAnswer>();

        api.MapPost("/stake-outs/drawing", (StakeOutDrawingBody body) => Draw(body).Else(Picture))
            .WithSummary("The same as a picture with its table, as SVG").Produces<string>(200, Svg);

        api.MapPost("/cover-nets", (CoverNetsBody body) => body.ToNets().Ok(nets => nets.Select(CoverNetAnswer.Of)))
            .WithSummary("How to cut the cover's panels").Produces<CoverNetAnswer[]>();

        api.MapPost("/cover-nets/drawing", (CoverNetsDrawingBody body) => Draw(body).Else(Picture))
            .WithSummary("The same as a picture, to scale, as SVG").Produces<string>(200, Svg);

        api.MapPost("/frames/model", (ModelBody body) => Model(body).Else(glb => TypedResults.File(glb, "model/gltf-binary", "frame.glb")))
            .WithSummary("A shelter's frame in three dimensions, as binary glTF 2.0: metres, y up").Produces(200, contentType: "model/gltf-binary");

        api.MapPost("/cut-plans/drawing", (CutPlanDrawingBody body) => Draw(body).Else(Picture))
            .WithSummary("A cut plan as a picture, to scale, as SVG").Produces<string>(200, Svg);
    }

    public static Outcome<Frame> FrameOf(ShelterBody? shelter, OpeningBody[]? openings) => Designing.FrameOf(shelter, openings).Select(opened => opened.Frame);

    static IResult Picture(string svg) => TypedResults.Text(svg, $"{Svg}; charset=utf-8");

    static Outcome<string> Draw(StakeOutDrawingBody body) => Chosen(body.Units)
        .Then(units => FrameOf(body.Shelter, body.Openings).Then(frame => StakeOutDrawing.Draw(frame, units)));

    static Outcome<string> Draw(CoverNetsDrawingBody body) => Chosen(body.Units)
        .Then(units => body.ToFrameAndSeam().Then(f => CoverNetDrawing.Draw(f.Frame, f.Seam, units)));

    static Outcome<string> Draw(CutPlanDrawingBody body) => Chosen(body.Units)
        .Then(units => Designing.Required(body.Job, "job").Then(j => j.ToJob().Under("job"))
            .Then(job => CutPlanner.Plan(job, TimeSpan.FromSeconds(body.Job!.TimeLimitSeconds ?? 1)).Under("job"))
            .Then(plan => CutPlanDrawing.Draw(plan, units: units)));

    static Outcome<byte[]> Model(ModelBody body) => body.StrutDiameter is { } diameter && (diameter.Millimetres is < 1 or > 1000)
        ? Refusal.OfField("request.invalid", "strutDiameter", $"A strut is 1 mm to 1 m across, not {diameter}.")
        : FrameOf(body.Shelter, body.Openings).Select(frame => FrameModel.ToGlb(frame, null, new() { StrutDiameter = body.StrutDiameter, WithCover = body.Cover ?? false }));

    static Outcome<Units> Chosen(string? units)
    {
        var faults = new Faults();
        var chosen = faults.Choose("units", units, Units.Metric, ("metric", Units.Metric), ("feet", Units.FeetAndInches));
        return faults.Refusal is { } refusal ? refusal : chosen!.Value;
    }
}

/// <summary>A shelter whose base is drawn, measured in <c>metric</c> (default) or <c>feet</c>.</summary>
sealed record StakeOutDrawingBody(ShelterBody? Shelter, OpeningBody[]? Openings, string? Units);

/// <summary>A shelter to cut a cover for.</summary>
/// <param name="Shelter">The shelter.</param>
/// <param name="SeamAllowance">How far the cut runs outside the sides of each panel: 0 to 300 mm; 20 mm where left out.</param>
/// <param name="Openings">Doors and vents, whose panels are left out.</param>
record CoverNetsBody(ShelterBody? Shelter, Length? SeamAllowance, OpeningBody[]? Openings)
{
    static readonly Length UsualSeam = Length.FromMillimetres(20), WidestSeam = Length.FromMillimetres(300);

    public Outcome<(Frame Frame, Length Seam)> ToFrameAndSeam()
    {
        var seam = SeamAllowance ?? UsualSeam;
        return seam > WidestSeam
            ? Refusal.OfField("request.invalid", "seamAllowance", $"A seam allowance is 0 to {WidestSeam}, not {seam}.")
            : Building.FrameOf(Shelter, Openings).Select(frame => (frame, seam));
    }

    public Outcome<IEnumerable<CoverNet>> ToNets() => ToFrameAndSeam().Select(f => CoverNet.Of(f.Frame, f.Seam).AsEnumerable());
}

/// <summary>The same to be drawn, measured in <c>metric</c> (default) or <c>feet</c>.</summary>
sealed record CoverNetsDrawingBody(ShelterBody? Shelter, Length? SeamAllowance, OpeningBody[]? Openings, string? Units) : CoverNetsBody(Shelter, SeamAllowance, Openings);

/// <summary>A frame to look at from all sides.</summary>
/// <param name="Shelter">The shelter.</param>
/// <param name="Cover">Whether the cover is shown, as translucent panels; false where left out.</param>
/// <param name="StrutDiameter">1 mm to 1 m; a thirtieth of the shortest strut where left out.</param>
/// <param name="Openings">Doors and vents.</param>
sealed record ModelBody(ShelterBody? Shelter, bool? Cover, Length? StrutDiameter, OpeningBody[]? Openings);

/// <summary>A cutting job to be planned and drawn, measured in <c>metric</c> (default) or <c>feet</c>.</summary>
sealed record CutPlanDrawingBody(CutJobBody? Job, string? Units);
