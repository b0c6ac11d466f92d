using KitWorks.Geometry;
using KitWorks.Kits;

namespace KitWorks.Api.Contract;

/// <summary>A design as clients send it.</summary>
/// <param name="Shelter">The form and size.</param>
/// <param name="HubSystem">The code of a hub system in the catalog.</param>
/// <param name="StrutStock">The code of a strut stock in the catalog; left out for the smallest that passes the screening.</param>
/// <param name="Cover">The cover; left out for a bare frame.</param>
/// <param name="MaxStrutTypes">The most strut types that will do; left out for as many as the geometry has.</param>
/// <param name="LoadSet">The name of a load set in the catalog, which it is screened for; left out for the first.</param>
/// <param name="Openings">Doors and vents, at most 8; left out for none.</param>
sealed record DesignBody(
    ShelterBody? Shelter, string? HubSystem, string? StrutStock, CoverBody? Cover, int? MaxStrutTypes, string? LoadSet = null, OpeningBody[]? Openings = null)
{
    public Outcome<Design> ToDesign()
    {
        var faults = new Faults();
        if (HubSystem is null) faults.Add("hubSystem", "Name a hub system of the catalog, such as \"ring-100\".");
        if (MaxStrutTypes is < 1) faults.Add("maxStrutTypes", $"{MaxStrutTypes} strut types are too few; it is 1 or more, or left out.");
        var shelter = faults.Take("shelter", Shelter is null ? ShelterBody.Missing : Shelter.ToShelter());
        var openings = faults.Take("", OpeningBody.ToOpenings(Openings));
        return faults.Refusal is { } refusal
            ? refusal
            : new Design
            {
                Shelter = shelter!,
                HubSystem = HubSystem!,
                StrutStock = StrutStock,
                Cover = Cover is null ? null : new(Cover.Layers ?? 1, Cover.Material),
                MaxStrutTypes = MaxStrutTypes,
                LoadSet = LoadSet,
                Openings = openings is [] ? null : openings,
            };
    }
}

/// <summary>A cover as clients send it.</summary>
/// <param name="Layers">How many layers; one where left out.</param>
/// <param name="Material">The code of a cover material in the catalog; its first where left out.</param>
sealed record CoverBody(int? Layers, string? Material);

/// <summary>Gathers everything that is wrong with a body, so that a client learns of it at once.</summary>
sealed class Faults
{
    readonly List<FieldError> errors = [];
    string? code;

    public Refusal? Refusal => errors.Count == 0
        ? null
        : new(RefusalKind.Impossible, code ?? "request.invalid", errors.Count == 1 ? errors[0].Detail : $"{errors.Count} fields are wrong.") { Errors = [.. errors] };

    public void Add(string field, string detail, string? code = null)
    {
        this.code ??= code;
        errors.Add(new(field, detail));
    }

    /// <summary>The value of a part, or its faults under the part's name; an empty name is this body itself.</summary>
    public T? Take<T>(string part, Outcome<T> outcome)
    {
        if (outcome.Succeeds(out var value, out var refusal)) return value;
        code ??= refusal.Code;
        if (refusal.Errors.IsEmpty) errors.Add(new(part, refusal.Detail));
        else errors.AddRange((part.Length == 0 ? refusal : refusal.Under(part)).Errors);
        return default;
    }

    /// <summary>The value that a word stands for, or a fault that lists the words.</summary>
    public T? Choose<T>(string field, string? word, T? otherwise, params (string Word, T Value)[] choices) where T : struct
    {
        if (word is null && otherwise is not null) return otherwise;
        foreach (var choice in choices)
            if (choice.Word == word) return choice.Value;
        Add(field, $"{(word is null ? "Nothing" : $"'{word}'")} was given; it is one of {string.Join(", ", choices.Select(c => $"\"{c.Word}\""))}.");
        return null;
    }
}
