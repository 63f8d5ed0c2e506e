using BenchmarkDotNet.Running;
using CanopySim.Bench;

if (args is ["fuzz", .. var options]) return FuzzCommand.Run(options);
if (args is ["rays", .. var rayOptions]) return RaysCommand.Run(rayOptions);
BenchmarkSwitcher.FromAssembly(typeof(FirstSeason).Assembly).Run(args);
return 0;
