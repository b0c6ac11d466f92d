namespace KitWorks.Api.Tests.Fuzzing;

/// <summary>A body that is right, for each operation whose right bodies are too rare to come about by chance.</summary>
static class Samples
{
    const string Dome = """{"kind":"dome","class":1,"frequency":2,"cut":"1/2","size":{"floorDiameter":"3600 mm"}}""";
    const string Oblong = """{"kind":"oblong","fold":6,"frequency":1,"bays":1,"size":{"longestStrut":"5 ft"}}""";
    const string Design = $$$"""{"shelter":{{{Dome}}},"hubSystem":"ring-100","strutStock":"pvc-33","cover":{"layers":1}}""";
    const string Section = """{"areaMm2":318.6,"secondMomentMm4":36355,"modulusMPa":2900,"massKgPerM":0.476}""";

    public static readonly IReadOnlyDictionary<string, string[]> Of = new Dictionary<string, string[]>
    {
        ["POST /api/kits/preview"] = [$$$"""{"design":{{{Design}}} }""", $$$"""{"design":{"shelter":{{{Oblong}}},"hubSystem":"ring-100","maxStrutTypes":5}}"""],
        ["POST /api/frames"] = [$$$"""{"shelter":{{{Dome}}} }""", $$$"""{"shelter":{{{Oblong}}} }""", """{"shelter":{"kind":"dome","lattice":[2,1],"cut":"rows:4","size":{"radius":"2 m"}}}"""],
        ["POST /api/drawings"] = [$$$"""{"shelter":{{{Dome}}},"view":"iso","tier":1}""", $$$"""{"shelter":{{{Dome}}},"forces":{"section":{{{Section}}},"supports":"pinned","loads":[{"node":0,"zN":-500}]}}"""],
        ["POST /api/shapes/cuts"] = ["""{"kind":"dome","frequency":3}""", """{"dome":{"kind":"dome","class":2,"frequency":4}}"""],
        ["POST /api/cut-plans/preview"] = ["""{"pieces":[{"cutLength":"1008.9 mm","count":55},{"cutLength":"870 mm","count":30}],"stock":[{"length":"3048 mm","available":60}],"remnants":[{"length":"900 mm","count":4}],"kerf":"3 mm","timeLimitSeconds":0.2}"""],
        ["POST /api/statics/preview"] = [$$$"""{"shelter":{{{Dome}}},"section":{{{Section}}},"supports":"sliding","loads":[{"node":0,"xN":0,"yN":0,"zN":-1000}],"selfWeight":true}"""],
        ["POST /api/quotes"] = [$$$"""{"design":{{{Design}}},"quantity":2}"""],
        ["POST /api/orders"] = [$$$"""{"design":{{{Design}}},"quantity":1,"customer":{"name":"A. Customer","email":"a@example.com","address":"A street\nA town"},"reference":"r-1","whenShort":"wait"}"""],
        ["POST /api/orders/{id}/ship"] = ["""{"carrier":"By hand","tracking":"1"}"""],
        ["POST /api/stock/receipts"] = ["""{"lines":[{"sku":"stake-450","quantity":40},{"sku":"tie-n120","quantity":500},{"sku":"hub-r100-6","quantity":60},{"sku":"pipe-pvc-33","quantity":60},{"sku":"cover-film-200","quantity":90}],"reference":"delivery"}"""],
        ["POST /api/stock/counts"] = ["""{"lines":[{"sku":"stake-450","counted":50}],"reason":"year end"}"""],
        ["POST /api/stock/adjustments"] = ["""{"sku":"tie-n120","quantity":-3,"reason":"broken"}"""],
        ["POST /api/scans"] = ["""{"code":"1001B0011","station":"bench 1"}"""],
    };
}
