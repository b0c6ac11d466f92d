using BenchmarkDotNet.Running;
using KitWorks.Benchmarks.Cutting;
using KitWorks.Benchmarks.Geometry;
using KitWorks.Benchmarks.Http;
using KitWorks.Benchmarks.Labels;
using KitWorks.Benchmarks.Orders;
using KitWorks.Benchmarks.Statics;

// Tables that hold one rate against another in the same run, by name; anything else goes to BenchmarkDotNet.
var tables = new Dictionary<string, Func<string[], int>>
{
    ["spheres"] = SphereTable.Print,
    ["labels"] = LabelRates.Print,
    ["statics"] = HubSweeps.Print,
    ["screening"] = ScreenedKits.Print,
    ["previews"] = PreviewRates.Print,
    ["cut-plans"] = ProvenShares.Print,
    ["orders"] = OrderRates.Print,
};
if (args is [var name, .. var rest] && tables.TryGetValue(name, out var print)) return print(rest);
BenchmarkSwitcher.FromAssembly(typeof(LabelRates).Assembly).Run(args);
return 0;
