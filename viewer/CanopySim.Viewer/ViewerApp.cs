using System.Runtime.InteropServices;
using CanopySim.Drawing;
using CanopySim.Files;
using CanopySim.Viewer.Commands;
using CanopySim.Viewer.Window;
using Spectre.Console.Cli;

namespace CanopySim.Viewer;

/// <summary>The program canopysim-view, and what its exit codes mean.</summary>
public static class ViewerApp
{
    public const int Ok = 0;
    public const int BadInput = 2;
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
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal =>
        {
            signal.Cancel = true;
            stop.Cancel();
        });
        var app = new CommandApp<ViewCommand>();
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
        catch (WindowException error)
        {
            return Fail(error.Message);
        }
        catch (DrawingException error)
        {
            return Fail(error.Message);
        }
        catch (CommandAppException error)
        {
            return Fail($"{error.Message.TrimEnd('.')}; expected a command line as 'canopysim-view --help' shows it");
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("canopysim-view: stopped; nothing was written");
            return Stopped;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Fail(error.Message);
        }
        catch (Exception error) when (Environment.GetEnvironmentVariable("CANOPYSIM_TRACE") is null)
        {
            Console.Error.WriteLine($"canopysim-view: this should not have happened: {error.Message} (CANOPYSIM_TRACE=1 shows where)");
            return Unexpected;
        }
        finally
        {
            Console.CancelKeyPress -= stopPressed;
        }
    }

    private static void Configure(IConfigurator app)
    {
        app.SetApplicationName("canopysim-view");
        app.SetApplicationVersion(Files.Results.SummaryJson.EngineVersion);
        app.PropagateExceptions();
        app.Settings.StrictParsing = true;
        app.AddExample("results/first-season");
        app.AddExample("results/first-season", "--picture", "june.png", "--date", "2025-06-20", "--time", "10:30", "--color", "light-now", "--from", "across");
        app.AddExample("scenarios/first-season/scenario.yaml", "--film", "season.gif", "--of", "season", "--color", "age", "--size", "640x400");
    }

    private static int Fail(string message)
    {
        Console.Error.WriteLine($"canopysim-view: {message}");
        return BadInput;
    }
}
