using System.Text.Json;
using System.Text.Json.Nodes;
using KitWorks.Api.Http;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;
using JsonOptions = Microsoft.AspNetCore.Http.Json.JsonOptions;

namespace KitWorks.Api.Pages.Settings;

/// <summary>One section of the catalog, to be read by the bench and changed by an admin.</summary>
sealed class EditModel(IMediator mediator, IOptions<JsonOptions> json) : BenchPage(mediator)
{
    readonly JsonSerializerOptions options = json.Value.SerializerOptions;

    public Section Section { get; private set; } = Section.All[0];
    public IReadOnlyList<FormPart> Parts { get; private set; } = [];
    public IReadOnlyDictionary<string, string> Faults { get; private set; } = new Dictionary<string, string>();
    public bool MayChange => User.IsInRole("Admin");

    public async Task OnGet(string section)
    {
        Section = Section.All.First(s => s.Name == section);
        if (await Ask(new GetCatalog()) is { } catalog) await Show(JsonSerializer.SerializeToNode(Section.Get(catalog), Section.Form, options));
    }

    public async Task<IActionResult> OnPost(string section)
    {
        Section = Section.All.First(s => s.Name == section);
        if (!MayChange) return StatusCode(StatusCodes.Status403Forbidden);
        var sent = CatalogForm.Read(Request.Form, Section.Form);
        if (Body(sent) is { } body && await Did(Section.Change(body))) return Next($"{Section.Title}: saved.", "/settings");
        Faults = (Refused?.Errors ?? []).GroupBy(e => Within(e.Field)).ToDictionary(g => g.Key, g => g.First().Detail);
        await Show(sent);
        return Page();
    }

    async Task Show(JsonNode? value)
    {
        // Every part can be given a cost, those too that have none yet.
        if (Section.Name == "prices" && value?["unitCosts"] is JsonObject costs)
            foreach (var item in (await Ask(new ListStock(200, null)))?.Items ?? [])
                if (!costs.ContainsKey(item.Sku)) costs[item.Sku] = null;
        Parts = CatalogForm.ItemOf(Section.Form) is { } item2 ? CatalogForm.Items(value as JsonArray, item2, "") : CatalogForm.Parts(value, Section.Form);
    }

    object? Body(JsonNode? sent)
    {
        try
        {
            return sent.Deserialize(Section.Form, options);
        }
        catch (JsonException wrong)
        {
            Refuse(UnreadableJson.Refuse(wrong));
            return null;
        }
    }

    /// <summary>A field as the form names it: the shop names it from the whole catalog.</summary>
    string Within(string field) => field.StartsWith(Section.Field, StringComparison.Ordinal) ? field[Section.Field.Length..].TrimStart('/') : field;
}
