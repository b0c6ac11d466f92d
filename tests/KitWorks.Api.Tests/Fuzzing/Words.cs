namespace KitWorks.Api.Tests.Fuzzing;

/// <summary>
/// The texts that requests are made of: those that mean something here, those that answers brought, and those that have
/// broken other programs.
/// </summary>
sealed class Words(Random random)
{
    const int MostSeen = 400;

    static readonly Dictionary<string, string[]> Meant = new(StringComparer.OrdinalIgnoreCase)
    {
        ["kind"] = ["dome", "oblong"],
        ["solid"] = ["icosahedron", "octahedron", "tetrahedron"],
        ["up"] = ["vertex", "edge", "face"],
        ["cut"] = ["1/2", "3/8", "5/8", "7/15", "8/15", "rows:1", "rows:2", "rows:4"],
        ["hubSystem"] = ["ring-100"],
        ["strutStock"] = ["pvc-33"],
        ["view"] = ["plan", "side", "end", "iso", "spread"],
        ["supports"] = ["pinned", "sliding"],
        ["whenShort"] = ["wait", "refuse"],
        ["what"] = ["labels", "picklist", "cut-plan", "packing-list", "guide"],
        ["sheet"] = ["100x150", "4x6", "a4"],
        ["sku"] = ["hub-r100-5", "hub-r100-6", "pipe-pvc-33", "tie-n120", "stake-450", "cover-film-200"],
        ["status"] = ["waiting", "reserved", "picking", "packed", "shipped", "cancelled"],
        ["paperSize"] = ["a4", "letter"],
        ["units"] = ["metric", "feet"],
        ["currency"] = ["USD", "EUR"],
        ["email"] = ["a@example.com", "@", "a@b@c"],
        ["amount"] = ["129.50", "0", "-1", "79228162514264337593543950335", "1e9", "0.0000000000000000000001"],
    };

    static readonly string[] Lengths =
        ["6 m", "2.5 m", "1524 mm", "5 ft", "5' 6\"", "0 m", "0.1 mm", "1 mm", "1000 m", "999.9999 m", "10 cm", "1e3 mm", "-1 m", "6", "6 parsecs", "NaN m", "6,5 m", "٦ m"];

    /// <summary>Each has done harm somewhere: as a path, a header, a formula, a template, a query, a pattern, a number, a text.</summary>
    static readonly string[] Hostile =
    [
        "", " ", "\0", "\u0001\u001f", "a\r\nSet-Cookie: x=1", "../../../../etc/passwd", "..\\..\\windows\\win.ini", "%2e%2e%2f", "file:///etc/passwd", "http://127.0.0.1:1/",
        "=HYPERLINK(\"http://127.0.0.1\")", "+1+1", "-1+1", "@SUM(A1)", "\t=1+1", "{{ 7 | times: 7 }}", "{% include 'x' %}", "{% for i in (1..1000000000) %}x{% endfor %}", "<script>alert(1)</script>",
        "'; DROP TABLE orders;--", "\" OR \"\"=\"", "%s%n%x", "${jndi:ldap://127.0.0.1}", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa!", "((((((((((", "[\\w", "$.x", "\u202eabc", "e\u0301\u0301\u0301\u0301", "👩‍👩‍👧‍👦", "שלום", "ﷺ",
        "\ud83d\ude00", "null", "true", "NaN", "-0", "1e309", "0x10", "9223372036854775808", "00000000-0000-0000-0000-000000000000", "2026-13-45T99:99:99Z", new('x', 201), new('9', 400), new('(', 3000), new('é', 5000),
    ];

    readonly Dictionary<string, List<string>> seen = [];

    /// <summary>Keeps what an answer called a thing, so that later requests are about things that there are.</summary>
    public void See(string field, string value)
    {
        if (value.Length > 200) return;
        if (!seen.TryGetValue(field, out var values)) seen[field] = values = [];
        if (values.Count < MostSeen) values.Add(value);
        else values[random.Next(MostSeen)] = value;
    }

    /// <summary>A text for a field of this name, mostly one that means something there.</summary>
    public string For(string field, bool isLength = false)
    {
        var dice = random.Next(100);
        if (dice < 8) return Any(Hostile);
        if (dice < 12) return Any([.. Meant.Values.SelectMany(v => v)]);
        if (isLength) return Any(Lengths);
        if (seen.TryGetValue(field, out var values) && (dice < 70 || !Meant.ContainsKey(field))) return Any(values);
        return Meant.TryGetValue(field, out var meant) ? Any(meant) : Any(["A. Customer", "bench 1", "delivery", "r", "x"]);
    }

    public string AnyHostile() => Any(Hostile);

    T Any<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
}
