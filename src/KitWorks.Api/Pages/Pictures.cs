using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;
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
    }

    public static View ViewOf(string? word) => word switch { "plan" => View.Plan, "side" => View.Side, "end" => View.End, "spread" => View.Spread, _ => View.Isometric };

    static async Task<IResult> Answer(int number, IMediator mediator, Func<Kit, Outcome<byte[]>> draw, string type, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new FindOrderId(number), cancellationToken)).Succeeds(out var id, out var refusal)) return Problems.Of(refusal);
        return (await mediator.Send(new GetOrderKit(id), cancellationToken)).Then(order => draw(order.Kit)).Else(bytes => Answers.Unchanging(bytes, type));
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
