using System.Runtime.InteropServices;
using CanopySim.Files;
using CanopySim.Files.Batch;
using CanopySim.Files.Results;
using Spectre.Console.Cli;

namespace CanopySim.Shell;

/// <summary>
/// What stands around the commands of every program: a signal stops them, an error becomes a line that says what to do,
/// and both become an exit code.
/// </summary>
/// <param name="name">Of the program, as it is called.</param>
/// <param name="told">
/// True for errors beside those of input and files whose message is for the reader as it stands.
/// </param>
public sealed class ProgramShell(string name, Func<Exception, bool>? told = null)
{
    /// <summary>Runs the command that a command line names.</summary>
    /// <param name="app">The commands.</param>
    /// <param name="configure">Names them.</param>
    /// <param name="args">The command line.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public int Run(ICommandApp app, Action<IConfigurator> configure, IReadOnlyList<string> args)
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
        app.Configure(with =>
        {
            with.SetApplicationName(name);
            with.SetApplicationVersion(SummaryJson.EngineVersion);
            with.PropagateExceptions();
            with.Settings.StrictParsing = true;
            configure(with);
        });
        try
        {
            return app.Run(args, stop.Token);
        }
        catch (TryAgainException error)
        {
            return Say($"{error.Message}; try again when it can be: what was finished is kept", ExitCode.TryAgain);
        }
        catch (OperationCanceledException)
        {
            return Say("stopped; nothing was written", ExitCode.Stopped);
        }
        catch (Exception error) when (MessageOf(error) is not null)
        {
            return Say(MessageOf(error)!, ExitCode.BadInput);
        }
        catch (Exception error) when (Environment.GetEnvironmentVariable("CANOPYSIM_TRACE") is null)
        {
            return Say(
                $"this should not have happened: {error.Message} (CANOPYSIM_TRACE=1 shows where)",
                ExitCode.Unexpected);
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

    // Null for a fault of the program's own.
    private string? MessageOf(Exception error) => error switch
    {
        SeasonInputException input => $"{input.Key}: {input.Message}",
        CommandAppException line =>
            $"{line.Message.TrimEnd('.')}; expected a command line as '{name} --help' shows it",
        InputError or IOException or UnauthorizedAccessException => error.Message,
        _ => told?.Invoke(error) == true ? error.Message : null,
    };

    private int Say(string message, int code)
    {
        Console.Error.WriteLine($"{name}: {message}");
        return code;
    }
}
