using System.Collections.Concurrent;
using CanopySim.Drawing.Leaves;
using CanopySim.Files.Recording;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// Everything that lies over the canopy's picture: what the reader chose, the widgets, and what the events do to both.
/// A window puts events in
/// (<see cref="Enqueue"/>, from any thread), lets them be handled (<see cref="Handle"/>), makes of the picture what the
/// outcome asks for, and
/// draws (<see cref="Draw"/>). It knows no window and no graphics card.
/// </summary>
public sealed partial class ScreenModel : IDisposable
{
    private readonly ConcurrentQueue<InputEvent> _events = new();
    private readonly LeafColors _colors = new();
    private readonly SeasonInSight _opened;
    private SeasonInSight? _tried;
    private PictureChange _change = PictureChange.Size | PictureChange.Theme | PictureChange.Season
        | PictureChange.Day | PictureChange.Hour | PictureChange.Colors;
    private List<PictureRequest> _requests = [];
    private bool _needsPaint = true;

    /// <param name="recording">The season, whole or still being computed.</param>
    /// <param name="trial">Computes changed seasons; null: nothing can be tried.</param>
    /// <param name="state">What is seen first; null: the last day that is there, leaves by age.</param>
    public ScreenModel(SeasonRecording recording, ITrialRunner? trial = null, ViewState? state = null)
    {
        _opened = new SeasonInSight(recording);
        Trial = trial ?? new NoTrials();
        _seenStatus = Trial.Status;
        Draft = TrialDraft.Of(recording.Scenario);
        _seenDays = recording.DayCount;
        _seenFinished = recording.IsFinished;
        State = state ?? new ViewState { Day = FirstDayInSight(recording) };
        State = State with { Day = Math.Clamp(State.Day, 0, Math.Max(0, recording.DayCount - 1)) };
    }

    public ViewState State { get; private set; }

    /// <summary>Size of the whole picture [px].</summary>
    public SKSizeI Size { get; private set; } = new(1280, 800);

    /// <summary>Pixels of a unit of the design: the text's scale times the fineness of the screen.</summary>
    public float Scale => (float)State.TextScale * _pixelsPerUnit;

    /// <summary>The season that was opened.</summary>
    public SeasonRecording Opened => _opened.Recording;

    public Scenario OpenedScenario => _opened.Recording.Scenario;

    /// <summary>The season in the picture.</summary>
    public SeasonRecording Recording => InSight.Recording;

    public SeasonFacts Facts => InSight.Facts;

    public LeafFinder Leaves => InSight.Leaves;

    public ChartShelf Charts => InSight.Charts;

    public IReadOnlyList<DateOnly> Dates => InSight.Dates;

    public IReadOnlyList<double> LeafAreas => InSight.LeafAreas;

    /// <summary>Light through the day in sight [µmol m⁻² s⁻¹]; none on a day without leaves.</summary>
    public IReadOnlyList<(int Hour, float Ppfd)> LightOfDay
    {
        get
        {
            if (State.Day >= Facts.DayCount) return [];
            var hours = Recording.Hours(State.Day);
            return [.. hours.Hours.Select((hour, i) => ((int)hour, hours.IncidentPpfd[i]))];
        }
    }

    /// <summary>Whether the hour in the picture has no light.</summary>
    public bool IsDark => State.Day < Facts.DayCount && DarkHours.IsDark(Recording, State.Day, State.Hour);

    /// <summary>How values become colors, the same in the legend and in the picture.</summary>
    public LeafColoring Coloring
    {
        get
        {
            _colors.Follow(InSight, State);
            return _colors.Coloring;
        }
    }

    /// <summary>Values of the quantity in sight, in the order of the day's blades.</summary>
    public float[] Values
    {
        get
        {
            _colors.Follow(InSight, State);
            return _colors.Values;
        }
    }

    /// <summary>Share of a season in the making that is done; null where nobody told.</summary>
    public double? ComputedShare { get; private set; }

    /// <summary>A leaf's share in the ripening, 0 to 1; null until it is over.</summary>
    public double? ShareOf(int leafId) => InSight.Shares?.Of(leafId);

    private SeasonInSight InSight => State.ShowsTrial && _tried is not null ? _tried : _opened;

    /// <summary>Puts an event at the end of the queue; from any thread.</summary>
    public void Enqueue(InputEvent input) => _events.Enqueue(input);

    /// <summary>Handles every event that waits, in order, and says what came of them.</summary>
    public ScreenOutcome Handle()
    {
        var waiting = new List<InputEvent>();
        while (_events.TryDequeue(out var next))
        {
            // Of moves without anything between them the last one says it all.
            if (next is PointerMove && waiting.Count > 0 && waiting[^1] is PointerMove) waiting[^1] = next;
            else waiting.Add(next);
        }

        foreach (var input in waiting) Dispatch(input);
        KeepUpWithSeason();
        KeepUpWithTrial();
        if (_layout is null) _needsPaint = true;
        var outcome = new ScreenOutcome(_change, _requests, _needsPaint);
        (_change, _requests) = (PictureChange.None, []);
        return outcome;
    }

    /// <summary>
    /// When to call <see cref="Handle"/> next although nothing was done, with a <see cref="Tick"/> of the time that
    /// went by [s]; null: not before
    /// something is done.
    /// </summary>
    public double? SecondsToNextFrame
    {
        get
        {
            if (_needsPaint || !_events.IsEmpty || State.Playing != Playing.Nothing) return 0;
            double? next = !_opened.Recording.IsFinished || Trial.Status.Stage == TrialStage.Running
                ? SecondsBetweenLooks : null;
            return SecondsToTip is { } tip ? Math.Min(tip, next ?? tip) : next;
        }
    }

    public void Dispose()
    {
        _opened.Dispose();
        _tried?.Dispose();
    }

    /// <summary>At the opening a whole season shows the day with the most leaf; one in the making its latest.</summary>
    public static int FirstDayInSight(SeasonRecording recording)
    {
        if (!recording.IsFinished) return Math.Max(0, recording.DayCount - 1);
        return Enumerable.Range(0, recording.DayCount).MaxBy(day => recording.Row(day).LeafAreaM2PerVine);
    }

    private sealed class NoTrials : ITrialRunner
    {
        public TrialStatus Status { get; private set; } = TrialStatus.Idle;

        public void Start(Scenario scenario) =>
            Status = new TrialStatus(TrialStage.Failed, Message: "this viewer cannot compute seasons.");

        public void Stop() => Status = TrialStatus.Idle;

        public string Save(string text, string fileName) => "This viewer cannot write scenarios.";
    }
}
