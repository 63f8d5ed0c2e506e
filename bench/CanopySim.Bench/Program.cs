using BenchmarkDotNet.Running;
using CanopySim.Bench;

if (args is ["fuzz", .. var options]) return FuzzCommand.Run(options);
BenchmarkSwitcher.FromAssembly(typeof(FirstSeason).Assembly).Run(args);
return 0;
