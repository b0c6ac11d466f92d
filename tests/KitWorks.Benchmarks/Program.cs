using BenchmarkDotNet.Running;
using KitWorks.Benchmarks.Statics;

if (args is ["statics", .. var rest]) return HubSweeps.Print(rest);
BenchmarkSwitcher.FromAssembly(typeof(HubSweeps).Assembly).Run(args);
return 0;
