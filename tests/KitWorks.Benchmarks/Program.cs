using BenchmarkDotNet.Running;
using KitWorks.Benchmarks.Labels;

if (args is ["labels", .. var rest]) return LabelRates.Print(rest);
BenchmarkSwitcher.FromAssembly(typeof(LabelRates).Assembly).Run(args);
return 0;
