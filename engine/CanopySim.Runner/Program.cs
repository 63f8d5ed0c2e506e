using CanopySim.Runner;

return RunnerApp.Run(args);
