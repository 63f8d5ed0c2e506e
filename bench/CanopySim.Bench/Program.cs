using BenchmarkDotNet.Running;

BenchmarkSwitcher.FromAssembly(typeof(CanopySim.Bench.FirstSeason).Assembly).Run(args);
