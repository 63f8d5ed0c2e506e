using System.Runtime.InteropServices;
using CanopySim.Files;
using CanopySim.Files.Batch;
using CanopySim.Runner.Commands;
using Spectre.Console.Cli;

namespace CanopySim.Runner;

/// <summary>The program canopysim: which commands it has, and what its exit codes mean.</summary>
public static class RunnerApp
{
    public const int Ok = 0;
    public const int BadInput = 2;

    /// <summary>The work is done, but some of its items could not be.</summary>
    public const int SomeFailed = 3;

    /// <summary>Nothing is wrong with the input: the same command may succeed later.</summary>
    public const int TryAgain = 75;

    public const int Stopped = 130;

    private const int Unexpected = 70;

    public static int Run(string[] args)
    {
        using var stop = new CancellationTokenSource();
        ConsoleCancelEventHandler stopPressed = (_, pressed) =>
        {
            pressed.Cancel = true;
            stop.Cancel();
        };
        Console.CancelKeyPress += stopPressed;
        // What a scheduler or a time limit sends: stopped like by a person, so that nothing half-written stays.
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Stop);
        var app = new CommandApp();
        app.Configure(Configure);
        try
        {
            return app.Run(args, stop.Token);
        }
        catch (InputError error)
        {
            return Fail(error.Message);
        }
        catch (SeasonInputException error)
        {
            return Fail($"{error.Key}: {error.Message}");
        }
        catch (CommandAppException error)
        {
            return Fail($"{error.Message.TrimEnd('.')}; expected a command line as 'canopysim --help' shows it");
        }
        catch (TryAgainException error)
        {
            Console.Error.WriteLine($"canopysim: {error.Message}; try again when it can be: what was finished is kept");
            return TryAgain;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("canopysim: stopped; nothing was written");
            return Stopped;
        }
        catch (IOException error)
        {
            return Fail(error.Message);
        }
        catch (UnauthorizedAccessException error)
        {
            return Fail(error.Message);
        }
        catch (Exception error) when (Environment.GetEnvironmentVariable("CANOPYSIM_TRACE") is null)
        {
            Console.Error.WriteLine(
                $"canopysim: this should not have happened: {error.Message} (CANOPYSIM_TRACE=1 shows where)");
            return Unexpected;
        }
        finally
        {
            Console.CancelKeyPress -= stopPressed;
        }

        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true;
            stop.Cancel();
        }
    }

    private static void Configure(IConfigurator app)
    {
        app.SetApplicationName("canopysim");
        app.SetApplicationVersion(Files.Results.SummaryJson.EngineVersion);
        app.PropagateExceptions();
        app.Settings.StrictParsing = true;
        app.AddCommand<NewCommand>("new")
            .WithDescription("Writes a commented scenario to start from.")
            .WithExample("new", "my-block/scenario.yaml");
        app.AddCommand<SeasonCommand>("season")
            .WithDescription("Runs one season and writes results, charts and a report.")
            .WithExample("season", "scenarios/first-season/scenario.yaml", "--quality", "draft");
        app.AddCommand<CompareCommand>("compare")
            .WithDescription("Runs the seasons of several scenarios and puts them side by side: a table, compare.csv "
                + "and a report.")
            .WithExample(
                "compare", "scenarios/warm-valley/scenario.yaml", "scenarios/topped/scenario.yaml",
                "scenarios/hanging-curtain/scenario.yaml", "--quality", "draft");
        app.AddBranch("batch", batch =>
        {
            batch.SetDescription("Many seasons by a plan: grown here or on a cluster, merged into one table, asked by SQL.");
            batch.AddCommand<BatchRunCommand>("run")
                .WithDescription("Grows the seasons of a plan, one a core; goes on where an earlier run stopped.")
                .WithExample("batch", "run", "scenarios/many-seasons/plan.yaml");
        });
        app.AddCommand<LightCommand>("light")
            .WithDescription("One moment of light in full detail, with the scene.")
            .WithExample("light", "scenarios/first-season/scenario.yaml", "--at", "2025-07-20T10:00")
            .WithExample(
                "light", "scenarios/first-season/scenario.yaml", "--at", "2025-07-20T10:00", "--sensors",
                "sensors.csv");
        app.AddCommand<SunCommand>("sun")
            .WithDescription("Where the sun stands, as CSV: zenith and azimuth in degrees, without refraction.")
            .WithExample("sun", "--at", "2025-06-21T12:00:00Z", "--latitude", "38.4", "--longitude", "-122.3");
        app.AddCommand<CheckCommand>("check")
            .WithDescription("Reads scenarios and their weather; prints what was understood and how sure each value "
                + "is.")
            .WithExample("check", "scenarios/first-season/scenario.yaml");
    }

    private static int Fail(string message)
    {
        Console.Error.WriteLine($"canopysim: {message}");
        return BadInput;
    }
}
