using CanopySim.Files.Recording;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Seasons;

/// <summary>Computes what is tried in the background, with the weather of the season that is shown.</summary>
/// <param name="shown">The season that is shown.</param>
/// <param name="folder">Where scenarios are saved: that of the one that was opened.</param>
/// <param name="threads">Threads that compute.</param>
public sealed class TrialRunner(SeasonRecording shown, string folder, int threads) : ITrialRunner, IDisposable
{
    private BackgroundSeason? _season;
    private TrialStatus _status = TrialStatus.Idle;

    public TrialStatus Status
    {
        get
        {
            if (_season is not { } season || _status.Stage != TrialStage.Running) return _status;
            if (season.Failure is { } failure) return _status = new TrialStatus(TrialStage.Failed, Message: failure);
            if (season.Recording.IsFinished)
                return _status = new TrialStatus(TrialStage.Done, 1, season.Recording.Outcome(), season.Recording);
            var share = season.ShareDone;
            return share == _status.Share ? _status : _status = _status with { Share = share };
        }
    }

    public void Start(Scenario scenario)
    {
        Stop();
        try
        {
            _season = new BackgroundSeason(
                scenario, shown.Weather(), shown.Head.UtcOffsetHours, Quality.Draft, threads, shown.Head.Inputs);
            _status = new TrialStatus(TrialStage.Running, 0, Recording: _season.Recording);
        }
        catch (SeasonInputException error)
        {
            _status = new TrialStatus(TrialStage.Failed, Message: error.Message);
        }
    }

    public void Stop()
    {
        _season?.Dispose();
        (_season, _status) = (null, TrialStatus.Idle);
    }

    public string Save(string text, string fileName)
    {
        var path = Path.Combine(folder, fileName);
        if (fileName.Length == 0 || Path.GetFileName(
            fileName) != fileName) return $"{fileName}: no name of a file; expected one such as tried.yaml";
        if (File.Exists(path)) return $"{path} is there already; choose another name";
        try
        {
            File.WriteAllText(path, text);
            return $"Saved as {path}";
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return $"{path} cannot be written ({error.Message})";
        }
    }

    public void Dispose() => Stop();
}
