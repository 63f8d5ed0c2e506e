using BenchmarkDotNet.Running;
using CanopySim.Bench;

switch (args)
{
    case ["batch", .. var options]: return BatchCommand.Run(options);
    case ["fuzz", .. var options]: return FuzzCommand.Run(options);
    case ["rays", .. var options]: return RaysCommand.Run(options);
    case ["quality", .. var options]: return QualityCommand.Run(options);
    case ["scaling", .. var options]: return ScalingCommand.Run(options);
    case ["stages"]: return StageCommand.Run();
    case ["season", .. var options]: return SeasonCommand.Run(options);
    case ["twins", .. var options]: return TwinCommand.Run(options);
    case ["view", .. var options]: return ViewCommand.Run(options);
}

BenchmarkSwitcher.FromAssembly(typeof(FirstSeason).Assembly).Run(args);
return 0;
