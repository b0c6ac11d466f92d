using System.Net;
using KitWorks.Api.Pages;

namespace KitWorks.Api.Demo;

/// <summary>
/// A storefront as small as one can be, served by the demo: a page and a script that ask the HTTP interface from the visitor's
/// browser. It holds a storefront key for everybody to read, which is what a storefront key is for: quotes, and orders of its own.
/// </summary>
static class SampleStorefront
{
    public const string Address = "/storefront";

    public static void MapSampleStorefront(this IEndpointRouteBuilder app, string key) =>
        app.MapGet(Address, () => TypedResults.Content(Page(key), "text/html; charset=utf-8")).ExcludeFromDescription();

    public static string Page(string key) => PlainPage.Write("A shelter for your garden", Body(key), "/storefront.js");

    static string Body(string key) => $"""
        <div class="shopfront stack" data-key="{WebUtility.HtmlEncode(key)}">
          <h1>A shelter for your garden</h1>
          <p>Say how wide your garden has room for. We send a kit that you build from the ground up.</p>
          <form id="wish" class="sheet">
            <fieldset>
              <legend>What is it for?</legend>
              <div class="choices">
                <label><input type="radio" name="form" value="low" checked> shade to sit under</label>
                <label><input type="radio" name="form" value="high"> a greenhouse to stand in</label>
                <label><input type="radio" name="form" value="long"> a long one, for a table</label>
              </div>
            </fieldset>
            <div class="field">
              <label for="room">Room there is, across</label>
              <div class="row nowrap"><input id="room" name="room" type="range" min="3" max="8" step="0.5" value="5"><output for="room">5</output><span>m</span></div>
            </div>
            <label class="check"><input type="checkbox" name="cover"> With a cover</label>
            <button>Show me mine</button>
          </form>
          <p id="wait" class="soft" role="status"></p>
          <section id="offer" class="sheet" hidden aria-live="polite"></section>
          <form id="buy" class="sheet" hidden>
            <h2>Order it</h2>
            <div class="field"><label for="name">Your name</label><input id="name" name="name" required maxlength="200" autocomplete="name"></div>
            <div class="field"><label for="email">E-mail</label><input id="email" name="email" type="email" maxlength="254" autocomplete="email"></div>
            <button>Order with obligation to pay</button>
          </form>
          <p class="soft">A sample page: the shop is invented and nothing is delivered.</p>
        </div>
        """;
}
