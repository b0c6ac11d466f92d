using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Api.Pages.Design;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Orders;
using MediatR;

namespace KitWorks.Api.Pages;

/// <summary>What the pages show as pictures, by the order's number.</summary>
static class Pictures
{
    const string Svg = "image/svg+xml; charset=utf-8";

    public static void MapPictures(this IEndpointRouteBuilder app)
    {
        var order = app.MapGroup("/orders/{number:int}").RequireAuthorization(KeyAuthentication.Staff).ExcludeFromDescription();
        order.MapGet("picture.svg", (int number, string? view, int? tier, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(number, mediator, kit => FrameDrawing.Draw(kit.Frame, new() { View = ViewOf(view), Tier = tier }, kit.StrutTypes).Select(System.Text.Encoding.UTF8.GetBytes), Svg, cancellationToken));
        order.MapGet("cuts.svg", (int number, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(number, mediator, kit => CutPlanDrawing.Draw(kit.CutPlan, kit.StrutTypes, title: $"Order {number}, one kit").Select(System.Text.Encoding.UTF8.GetBytes), Svg, cancellationToken));
        order.MapGet("frame.json", (int number, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(number, mediator, kit => Turning.Json(kit), "application/json", cancellationToken));

        var design = app.MapGroup("/design").RequireAuthorization(KeyAuthentication.Staff).ExcludeFromDescription();
        design.MapGet("picture.svg", (HttpRequest request, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(request, mediator, kit => FrameDrawing.Draw(kit.Frame, new() { View = ViewOf(request.Query["view"]) }, kit.StrutTypes).Select(System.Text.Encoding.UTF8.GetBytes), Svg, cancellationToken));
        design.MapGet("sketch.svg", (HttpRequest request, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(request, mediator, kit => Sketch.Draw(kit), Svg, cancellationToken));
        design.MapGet("frame.json", (HttpRequest request, IMediator mediator, CancellationToken cancellationToken) =>
            Answer(request, mediator, kit => Turning.Json(kit), "application/json", cancellationToken));
    }

    static async Task<IResult> Answer(HttpRequest request, IMediator mediator, Func<Kit, Outcome<byte[]>> draw, string type, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return Problems.Of(refusal);
        return DesignInQuery.Of(request.Query).Then(query => query.ToDesign(catalog.HubSystems.FirstOrDefault()?.Code ?? "")).Then(design => Kit.Make(design, catalog))
            .Then(draw).Else(bytes => Answers.Unchanging(bytes, type));
    }

    public static View ViewOf(string? word) => word switch { "plan" => View.Plan, "side" => View.Side, "end" => View.End, "spread" => View.Spread, _ => View.Isometric };

    static async Task<IResult> Answer(int number, IMediator mediator, Func<Kit, Outcome<byte[]>> draw, string type, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new FindOrderId(number), cancellationToken)).Succeeds(out var id, out var refusal)) return Problems.Of(refusal);
        return (await mediator.Send(new GetOrderKit(id), cancellationToken)).Then(order => draw(order.Kit)).Else(bytes => Answers.Unchanging(bytes, type));
    }
}

/// <summary>A frame in a few strokes, for a list of them: the near struts strong, the far ones pale, no codes.</summary>
static class Sketch
{
    const double Width = 600, Height = 450, Margin = 24;

    public static byte[] Draw(Kit kit)
    {
        var frame = kit.Frame;
        double cos = Math.Cos(0.6), sin = Math.Sin(0.6), up = Math.Cos(0.3), tilt = Math.Sin(0.3);
        var seen = frame.Nodes.Select(n => n.Position).Select(p =>
        {
            var deep = p.X * sin + p.Y * cos;
            return (X: p.X * cos - p.Y * sin, Y: -(p.Z * up + deep * tilt), Deep: deep);
        }).ToList();
        var (left, top) = (seen.Min(s => s.X), seen.Min(s => s.Y));
        var scale = Math.Min((Width - 2 * Margin) / (seen.Max(s => s.X) - left), (Height - 2 * Margin) / (seen.Max(s => s.Y) - top));
        var (right, down) = ((Width - (seen.Max(s => s.X) - left) * scale) / 2, (Height - (seen.Max(s => s.Y) - top) * scale) / 2);
        var far = seen.Max(s => Math.Abs(s.Deep));
        var svg = new System.Text.StringBuilder($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\"><rect width=\"{Width}\" height=\"{Height}\" fill=\"#fff\"/><g stroke=\"#17313a\" stroke-linecap=\"round\">");
        foreach (var (a, b) in frame.Struts.Select(s => (seen[s.From], seen[s.To])).OrderByDescending(s => s.Item1.Deep + s.Item2.Deep))
        {
            var near = 0.5 - (a.Deep + b.Deep) / (4 * far);
            svg.Append(System.Globalization.CultureInfo.InvariantCulture,
                $"<path d=\"M{right + (a.X - left) * scale:0.#} {down + (a.Y - top) * scale:0.#}L{right + (b.X - left) * scale:0.#} {down + (b.Y - top) * scale:0.#}\" stroke-width=\"{1 + 4 * near:0.#}\" opacity=\"{0.2 + 0.8 * near:0.##}\"/>");
        }
        return System.Text.Encoding.UTF8.GetBytes(svg.Append("</g></svg>").ToString());
    }
}

/// <summary>A frame as the turning picture reads it: nodes in whole millimetres, struts with the place of their type, and the types' colours.</summary>
static class Turning
{
    public static byte[] Json(Kit kit)
    {
        var place = kit.StrutTypes.SelectMany((t, i) => t.Families.Select(f => (f, i))).ToDictionary(x => x.f, x => x.i);
        return System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(new
        {
            nodes = kit.Frame.Nodes.Select(n => new[] { Math.Round(n.Position.X), Math.Round(n.Position.Y), Math.Round(n.Position.Z) }),
            struts = kit.Frame.Struts.Select(s => new[] { s.From, s.To, place[s.Family] }),
            colours = kit.StrutTypes.Select(t => t.Tag.Hex),
        });
    }
}
