using KitWorks.Geometry;

namespace KitWorks.Api.Contract;

/// <summary>A shelter as clients send it: a dome or an oblong.</summary>
record ShelterBody
{
    /// <summary><c>dome</c> or <c>oblong</c>.</summary>
    public string? Kind { get; init; }

    /// <summary>For domes: <c>icosahedron</c> (default), <c>octahedron</c> or <c>tetrahedron</c>.</summary>
    public string? Solid { get; init; }

    /// <summary>For domes: 1 (default), 2 or 3.</summary>
    public int? Class { get; init; }

    /// <summary>For domes of class 1 and 2, and for oblongs.</summary>
    public int? Frequency { get; init; }

    /// <summary>For domes of class 3: b and c.</summary>
    public int[]? Lattice { get; init; }

    /// <summary>For domes: <c>vertex</c> (default), <c>edge</c> or <c>face</c>.</summary>
    public string? Up { get; init; }

    /// <summary>For domes: a fraction such as <c>5/8</c>, or <c>rows:5</c>.</summary>
    public string? Cut { get; init; }

    /// <summary>For domes: whether the base ring is made level.</summary>
    public bool? FlatBase { get; init; }

    /// <summary>For oblongs: 4, 6 (default) or 8.</summary>
    public int? Fold { get; init; }

    /// <summary>For oblongs: −2 and up; 0 where left out.</summary>
    public int? Bays { get; init; }

    /// <summary>For oblongs: in how many lengths the struts of the frequency-1 shell come, 1 to 6; 4 where left out.</summary>
    public int? Lengths { get; init; }

    /// <summary>One of its measures.</summary>
    public SizeBody? Size { get; init; }

    public static Outcome<Shelter> Missing => Refusal.OfField("request.invalid", "", "Say which shelter: {\"kind\": \"dome\", …}.") with { Errors = [] };

    public Outcome<Shelter> ToShelter()
    {
        if (Kind == "oblong") return ToOblong();
        var faults = new Faults();
        if (faults.Choose("kind", Kind, null, ("dome", true), ("oblong", true)) is null) return faults.Refusal!;
        var lattice = faults.Take("", LatticeOf());
        var (solid, up) = SolidAndUp(faults);
        OnlyFor(faults, "an oblong", (nameof(Fold), Fold), (nameof(Bays), Bays), (nameof(Lengths), Lengths));
        if (!Geometry.Cut.TryParse(Cut, out var cut))
            faults.Add("cut", Cut is null
                ? "Say how much of the sphere is kept: a fraction such as \"5/8\", or \"rows:5\". POST /api/shapes/cuts lists a design's cuts."
                : $"'{Cut}' is not a cut; it is a fraction such as \"5/8\", or \"rows:5\".", "shelter.cut-invalid");
        var size = faults.Take("size", SizeOf());
        return faults.Refusal is { } refusal
            ? refusal
            : new Dome { Solid = solid, Lattice = lattice, Up = up, Cut = cut, FlatBase = FlatBase ?? false, Size = size! };
    }

    /// <summary>The solid, lattice and orientation of a dome, for a list of its cuts.</summary>
    public Outcome<(BaseSolid Solid, Lattice Lattice, Up Up)> ToSphere()
    {
        var faults = new Faults();
        if (Kind is not (null or "dome")) faults.Add("kind", "Only a dome has cuts.");
        var lattice = faults.Take("", LatticeOf());
        var (solid, up) = SolidAndUp(faults);
        return faults.Refusal is { } refusal ? refusal : (solid, lattice, up);
    }

    Outcome<Shelter> ToOblong()
    {
        var faults = new Faults();
        OnlyFor(faults, "a dome", (nameof(Solid), Solid), (nameof(Class), Class), (nameof(Lattice), Lattice), (nameof(Up), Up), (nameof(Cut), Cut), (nameof(FlatBase), FlatBase));
        var size = faults.Take("size", SizeOf());
        return faults.Refusal is { } refusal
            ? refusal
            : new Oblong { Fold = Fold ?? 6, Frequency = Frequency ?? 1, Bays = Bays ?? 0, Lengths = Lengths ?? 4, Size = size! };
    }

    (BaseSolid, Up) SolidAndUp(Faults faults) =>
    (
        faults.Choose("solid", Solid, BaseSolid.Icosahedron,
            ("icosahedron", BaseSolid.Icosahedron), ("octahedron", BaseSolid.Octahedron), ("tetrahedron", BaseSolid.Tetrahedron)) ?? default,
        faults.Choose("up", Up, Geometry.Up.Vertex, ("vertex", Geometry.Up.Vertex), ("edge", Geometry.Up.Edge), ("face", Geometry.Up.Face)) ?? default
    );

    Outcome<Lattice> LatticeOf()
    {
        var faults = new Faults();
        var kind = Class ?? (Lattice is null ? 1 : 3);
        if (kind is < 1 or > 3) faults.Add("class", $"{kind} is not a class; it is 1, 2 or 3.", "shelter.class");
        else if (kind == 3)
        {
            if (Lattice is not [>= 1 and <= 1000, >= 0 and <= 1000]) faults.Add("lattice", "A class-3 dome has a lattice of two whole numbers, [b, c], b 1 or more and c 0 or more.", "shelter.lattice");
            if (Frequency is not null) faults.Add("frequency", "A class-3 dome has a lattice instead of a frequency.", "shelter.frequency");
            return faults.Refusal is { } wrong ? wrong : new Lattice(Lattice![0], Lattice[1]);
        }
        else
        {
            if (Lattice is not null) faults.Add("lattice", $"A class-{kind} dome has a frequency instead of a lattice.", "shelter.lattice");
            if (Frequency is null) faults.Add("frequency", "Say the frequency: 1 or more.", "shelter.frequency");
            else if (Frequency < 1) faults.Add("frequency", $"Frequency {Frequency} is too low; it is {(kind == 1 ? $"1 to {DomeLimits.MaxClass1IcosahedronFrequency}" : "an even number from 2")}.", "shelter.frequency");
            else if (kind == 2 && Frequency % 2 != 0) faults.Add("frequency", $"A class-2 dome has an even frequency, not {Frequency}.", "shelter.frequency");
        }
        return faults.Refusal is { } refusal ? refusal : kind == 2 ? Geometry.Lattice.Class2(Frequency!.Value) : Geometry.Lattice.Class1(Frequency!.Value);
    }

    Outcome<Size> SizeOf() => Size is null
        ? Refusal.OfField("shelter.size", "", SizeBody.WhatIsRight) with { Errors = [] }
        : Size.ToSize();

    static void OnlyFor(Faults faults, string kind, params (string Field, object? Value)[] fields)
    {
        foreach (var (field, value) in fields)
            if (value is not null) faults.Add(char.ToLowerInvariant(field[0]) + field[1..], $"Only {kind} has this; leave it out.");
    }
}

/// <summary>A size as clients send it: exactly one of these.</summary>
sealed record SizeBody
{
    /// <summary>For domes: the floor's diameter.</summary>
    public Length? FloorDiameter { get; init; }

    /// <summary>The height.</summary>
    public Length? Height { get; init; }

    /// <summary>For domes: the radius of the sphere.</summary>
    public Length? Radius { get; init; }

    /// <summary>The longest strut's cut length.</summary>
    public Length? LongestStrut { get; init; }

    /// <summary>For oblongs: the length.</summary>
    public Length? Length { get; init; }

    /// <summary>For oblongs: the width.</summary>
    public Length? Width { get; init; }

    /// <summary>The largest that fits.</summary>
    public FitsBody? Fits { get; init; }

    public const string WhatIsRight = "A size is exactly one of floorDiameter, height, radius, longestStrut, length, width and fits.";

    public Outcome<Size> ToSize()
    {
        Size?[] given =
        [
            FloorDiameter is { } d ? new Size.FloorDiameter(d) : null,
            Height is { } h ? new Size.Height(h) : null,
            Radius is { } r ? new Size.Radius(r) : null,
            LongestStrut is { } s ? new Size.LongestStrut(s) : null,
            Length is { } l ? new Size.LongSide(l) : null,
            Width is { } w ? new Size.ShortSide(w) : null,
            Fits is { } f ? new Size.Fits(f.Length, f.Width, f.Height) : null,
        ];
        return given.Count(s => s is not null) == 1
            ? given.First(s => s is not null)!
            : Refusal.OfField("shelter.size", "", WhatIsRight) with { Errors = [] };
    }
}

/// <summary>The room there is: any of the three.</summary>
/// <param name="Length">Along the longer side.</param>
/// <param name="Width">Along the shorter side.</param>
/// <param name="Height">Upwards.</param>
sealed record FitsBody(Length? Length, Length? Width, Length? Height);
