using System.Globalization;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Kits;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Pages.Design;

/// <summary>A design as the design page's address carries it: every field of its form, as text. It is turned into the same body that the interface takes.</summary>
sealed class DesignInQuery
{
    public string Kind { get; init; } = "dome";
    public int Frequency { get; init; } = 3;
    public string? Cut { get; init; }
    public bool Level { get; init; }
    public int Fold { get; init; } = 6;
    public int Bays { get; init; }

    /// <summary>What the size is said by: <c>floor</c>, <c>high</c>, <c>long</c>, <c>wide</c> or <c>strut</c>.</summary>
    public string By { get; init; } = "floor";
    public string Size { get; init; } = "6 m";
    public string? Hubs { get; init; }
    public string? Pipe { get; init; }
    public string? Cover { get; init; }
    public int Layers { get; init; } = 1;
    public int? Types { get; init; }
    public int Kits { get; init; } = 1;

    /// <summary>As a picture's address carries it.</summary>
    public static Outcome<DesignInQuery> Of(IQueryCollection query)
    {
        string? Text(string name) => query.TryGetValue(name, out var value) && value.ToString() is { Length: > 0 } text ? text : null;
        int Int(string name, int otherwise) => int.TryParse(Text(name), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : otherwise;
        return new DesignInQuery
        {
            Kind = Text("kind") ?? "dome", Frequency = Int("frequency", 3), Cut = Text("cut"), Level = Text("level") == "true", Fold = Int("fold", 6), Bays = Int("bays", 0),
            By = Text("by") ?? "floor", Size = Text("size") ?? "6 m", Hubs = Text("hubs"), Pipe = Text("pipe"), Cover = Text("cover"), Layers = Int("layers", 1),
            Types = Int("types", 0) is > 0 and var types ? types : null,
        };
    }

    public bool IsDome => Kind != "oblong";

    public Outcome<Kits.Design> ToDesign(string firstHubSystem)
    {
        if (!LengthText.TryParse(Size, out var length)) return Refusal.OfField("request.invalid", "size", $"'{Size}' is not a size: {LengthText.WhatIsRight}.");
        return new DesignBody(ToShelter(length), Hubs ?? firstHubSystem, string.IsNullOrEmpty(Pipe) ? null : Pipe,
            string.IsNullOrEmpty(Cover) ? null : new(Layers, Cover), Types).ToDesign();
    }

    ShelterBody ToShelter(Length length)
    {
        var size = By switch
        {
            "high" => new SizeBody { Height = length },
            "strut" => new SizeBody { LongestStrut = length },
            "long" when !IsDome => new SizeBody { Length = length },
            "wide" when !IsDome => new SizeBody { Width = length },
            _ => IsDome ? new SizeBody { FloorDiameter = length } : new SizeBody { Length = length },
        };
        return IsDome
            ? new() { Kind = "dome", Frequency = Frequency, Cut = Cut ?? BestCut(Frequency), FlatBase = Level, Size = size }
            : new() { Kind = "oblong", Fold = Fold, Frequency = Frequency, Bays = Bays, Size = size };
    }

    /// <summary>The cuts that a dome of this frequency has, none where it has no such frequency.</summary>
    public static IReadOnlyList<DomeCut> CutsOf(int frequency) =>
        frequency >= 1 && DomeCuts.Of(BaseSolid.Icosahedron, Lattice.Class1(frequency), Up.Vertex).Succeeds(out var cuts, out _) ? cuts : [];

    /// <summary>The cut nearest to half of the sphere, rather above than below: walls that stand upright.</summary>
    public static string BestCut(int frequency) => CutsOf(frequency) is { Count: > 0 } cuts ? cuts.MinBy(c => Math.Abs(c.HeightOverRadius - 1.1))!.Name : "1/2";

    /// <summary>The address of this page with a kit's design in it.</summary>
    public static string AddressOf(Kit kit, int kits)
    {
        var size = kit.Frame.Dimensions;
        var design = kit.Design;
        var query = new List<(string, string)>
        {
            ("hubs", design.HubSystem), ("pipe", design.StrutStock ?? ""), ("cover", design.Cover?.Material ?? ""), ("layers", Number(design.Cover?.Layers ?? 1)), ("kits", Number(kits)),
        };
        query.AddRange(design.Shelter switch
        {
            // A shelter that was made to fit is from here on one of its own size.
            Dome dome => [("kind", "dome"), ("frequency", Number(dome.Lattice.Frequency)), ("cut", dome.Cut.ToString()), ("by", "high"), ("size", Mm(size.HeightMm))],
            Oblong oblong => [("kind", "oblong"), ("frequency", Number(oblong.Frequency)), ("fold", Number(oblong.Fold)), ("bays", Number(oblong.Bays)), ("by", "long"), ("size", Mm(size.LengthMm))],
            _ => Array.Empty<(string, string)>(),
        });
        return "/design/shelter?" + string.Join('&', query.Select(q => $"{q.Item1}={Uri.EscapeDataString(q.Item2)}"));
    }

    static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Rounded down to whole millimetres, so that it still fits.</summary>
    static string Mm(double millimetres) => Math.Floor(millimetres + 0.01).ToString(CultureInfo.InvariantCulture) + " mm";
}
