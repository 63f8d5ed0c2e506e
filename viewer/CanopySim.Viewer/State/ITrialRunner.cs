using CanopySim.Files.Recording;
using CanopySim.Results;

namespace CanopySim.Viewer.State;

/// <summary>
/// Computes a changed season in the background and writes scenarios. Calls return at once; the screen looks at the
/// status as time goes by.
/// </summary>
public interface ITrialRunner
{
    TrialStatus Status { get; }

    /// <summary>
    /// What a written scenario must call the weather file, seen from the folder that it is written to; null: as the
    /// scenario has it. Not the same
    /// where the name was inherited from a scenario in another folder.
    /// </summary>
    string? WeatherFile => null;

    /// <summary>Begins a draft season of the scenario; one that is running is stopped first.</summary>
    void Start(Scenario scenario);

    /// <summary>Stops what is running.</summary>
    void Stop();

    /// <summary>Writes the text of a scenario into a file beside the one that was opened.</summary>
    /// <returns>What to tell the reader: where it is, or why it could not be written.</returns>
    string Save(string text, string fileName);
}

/// <summary>How far a tried season is. A new object for each change.</summary>
/// <param name="Stage">Where it stands.</param>
/// <param name="Share">Share that is done, 0 to 1.</param>
/// <param name="Result">What it gave, when done.</param>
/// <param name="Recording">The season to look at, when there is one.</param>
/// <param name="Message">Why it failed.</param>
public sealed record TrialStatus(
    TrialStage Stage, double Share = 0, SeasonResult? Result = null, SeasonRecording? Recording = null,
        string Message = "")
{
    public static TrialStatus Idle { get; } = new(TrialStage.Idle);
}

public enum TrialStage
{
    Idle,
    Running,
    Done,
    Failed,
}
