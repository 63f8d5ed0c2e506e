using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Scenarios;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>What buttons and keys do.</summary>
public sealed partial class ScreenModel
{
    private const double SecondsBetweenLooks = 0.25;

    private const double DaysPerSecond = 10;

    private const double HoursPerSecond = 3;

    private TrialStatus _seenStatus;
    private int _seenDays;
    private bool _seenFinished;
    private double _playedPart;

    /// <summary>What is to be tried.</summary>
    public TrialDraft Draft { get; private set; }

    /// <summary>What was grown last; null before the first time.</summary>
    public TrialDraft? GrownDraft { get; private set; }

    public ITrialRunner Trial { get; }

    /// <summary>Why the changed block cannot stand; null where it can.</summary>
    public string? Problem { get; private set; }

    /// <summary>Point of the age curve that keys move.</summary>
    public int CurvePoint { get; private set; }

    /// <summary>Name of the file that a tried scenario is written to.</summary>
    public string FileName { get; private set; } = "tried.yaml";

    /// <summary>What came of the last writing.</summary>
    public string SavedMessage { get; private set; } = "";

    public void SetDay(int day)
    {
        var to = Math.Clamp(day, 0, Math.Max(0, Facts.DayCount - 1));
        if (to != State.Day) Change(State with { Day = to },
            PictureChange.Day | PictureChange.Hour | PictureChange.Colors);
    }

    public void SetHour(int hour)
    {
        var to = Math.Clamp(hour, 0, HourTrack.Hours - 1);
        if (to == State.Hour) return;
        Change(State with { Hour = to }, PictureChange.Hour | (QuantityText.ChangesByHour(State.Quantity)
            ? PictureChange.Colors : PictureChange.None));
    }

    public void SetQuantity(LeafQuantity quantity) => Change(State with { Quantity = quantity }, PictureChange.Colors);

    public void SetRange(RangeMode range) => Change(State with { Range = range }, PictureChange.Colors);

    public void SetChart(string stem) => Change(State with { Chart = stem }, PictureChange.None);

    public void SetTheme(ScreenTheme theme) => Change(State with { Theme = theme }, PictureChange.Theme);

    /// <summary>Asks the picture to look from one of the usual places.</summary>
    public void Look(ViewPoint view)
    {
        _requests.Add(new LookFrom(view));
        Invalidate();
    }

    public void SetUnits(Units units) => Change(State with { Units = units }, PictureChange.None);

    /// <summary>Opens a panel, or puts it away where it is open.</summary>
    public void Toggle(SidePanel panel)
    {
        Scroll = 0;
        Change(State with { Panel = State.Panel == panel ? SidePanel.None : panel }, PictureChange.Size);
    }

    /// <summary>Text a step larger or smaller.</summary>
    public void ScaleText(int steps)
    {
        var scales = ViewState.TextScales.ToList();
        var now = scales.FindLastIndex(scale => scale <= State.TextScale + 1e-9);
        Change(State with { TextScale = scales[Math.Clamp(now + steps, 0, scales.Count - 1)] }, PictureChange.Size);
    }

    public void TogglePlaying(Playing what)
    {
        _playedPart = 0;
        if (State.Playing == what)
        {
            Change(State with { Playing = Playing.Nothing }, PictureChange.None);
            return;
        }

        Change(State with { Playing = what }, PictureChange.None);
        if (what == Playing.Season && State.Day >= Facts.DayCount - 1 && Recording.IsFinished)
            SetDay(Facts.Stages is [var budbreak, ..] ? Facts.DayOf(budbreak.Date) : 0);
        if (what == Playing.Day && LightOfDay is [var first, .., var last]
            && (State.Hour < first.Hour || State.Hour >= last.Hour)) SetHour(first.Hour);
    }

    public void ChooseLeaf(int? leafId)
    {
        var opens = leafId is not null && State.Panel != SidePanel.Leaf;
        if (opens) Scroll = 0;
        var panel = leafId is null ? State.Panel : SidePanel.Leaf;
        Change(State with { LeafId = leafId, Panel = panel },
            PictureChange.Leaf | (opens ? PictureChange.Size : PictureChange.None));
    }

    /// <summary>The next leaf (1) or the one before (−1).</summary>
    public void StepLeaf(int step)
    {
        if (Leaves.Next(State.Day, State.LeafId, step) is { } leaf) ChooseLeaf(leaf);
    }

    public void Edit(TrialDraft draft)
    {
        Draft = draft;
        SavedMessage = "";
        Problem = ProblemOf(draft.Apply(OpenedScenario));
        Invalidate();
    }

    public void ChoosePoint(int index)
    {
        CurvePoint = Math.Clamp(index, 0, Draft.AgePoints.Count - 1);
        Invalidate();
    }

    public void UndoTrial() => Edit(TrialDraft.Of(OpenedScenario));

    /// <summary>Grows the changed season where it can stand.</summary>
    public void StartTrial()
    {
        if (Problem is not null) return;
        GrownDraft = Draft;
        Trial.Start(Draft.Apply(OpenedScenario));
        Invalidate();
    }

    public void StopTrial()
    {
        Trial.Stop();
        Invalidate();
    }

    public void SetFileName(string name)
    {
        (FileName, SavedMessage) = (name, "");
        Invalidate();
    }

    /// <summary>Writes the changed block as a scenario, where its values fit each other.</summary>
    public void SaveTrial()
    {
        SavedMessage = Problem is not null ? "Not written: the changed block cannot stand, as said above."
            : FileName.Trim().Length == 0 ? "Not written: the file has no name. Give it one such as tried.yaml."
            : Trial.Save(ScenarioText(Draft.Apply(OpenedScenario)), FileName.Trim());
        Invalidate();
    }

    /// <summary>The text that is written.</summary>
    public string ScenarioText(Scenario scenario)
    {
        var changes = Draft.Changes(OpenedScenario, Units.Metric);
        var written = Trial.WeatherFile is { } file ? scenario with { Weather = scenario.Weather with { File = file } }
            : scenario;
        return ScenarioWriter.Text(written,
        [
            $"{OpenedScenario.Name}, as tried in the viewer.",
            changes.Count == 0 ? "Nothing was changed." : $"Changed: {string.Join("; ", changes)}.",
        ]);
    }

    /// <summary>Puts the tried season into the picture, or the opened one; on the same date.</summary>
    public void ShowTrial(bool shows)
    {
        if (shows && Trial.Status.Recording is null) return;
        var date = Facts.DayCount > 0 ? Facts.DateOf(State.Day) : default;
        if (shows && _tried?.Recording != Trial.Status.Recording)
        {
            _tried?.Dispose();
            _tried = new SeasonInSight(Trial.Status.Recording!);
        }

        // Leaves of another season have other numbers.
        Change(State with { ShowsTrial = shows, LeafId = null, Playing = Playing.Nothing },
            PictureChange.Season | PictureChange.Day | PictureChange.Hour | PictureChange.Colors | PictureChange.Leaf);
        if (Facts.DayCount > 0) Change(State with { Day = Facts.DayOf(date) }, PictureChange.Day);
        (_seenDays, _seenFinished) = (Recording.DayCount, Recording.IsFinished);
    }

    private static string? ProblemOf(Scenario scenario)
    {
        try
        {
            ScenarioFile.Check(scenario, "tried");
            return null;
        }
        catch (InputError error)
        {
            return $"{ScenarioDifferences.Said(error.Key ?? "the block")}: {error.Found}; expected {error.Expected}.";
        }
    }

    private void Change(ViewState state, PictureChange change)
    {
        State = state;
        _change |= change;
        Invalidate();
    }

    private void Play(double seconds)
    {
        if (State.Playing == Playing.Nothing) return;
        _playedPart += seconds * (State.Playing == Playing.Season ? DaysPerSecond : HoursPerSecond);
        var whole = (int)Math.Floor(_playedPart);
        if (whole == 0) return;
        _playedPart -= whole;
        if (State.Playing == Playing.Season)
        {
            SetDay(State.Day + whole);

            // A season in the making goes on as soon as its next day is there.
            if (State.Day >= Facts.DayCount - 1
                && Recording.IsFinished) Change(State with { Playing = Playing.Nothing }, PictureChange.None);
            return;
        }

        var last = LightOfDay is [.., var sunset] ? sunset.Hour : HourTrack.Hours - 1;
        SetHour(Math.Min(last, State.Hour + whole));
        if (State.Hour >= last) Change(State with { Playing = Playing.Nothing }, PictureChange.None);
    }

    // Days come while the season is computed; whoever looks at the last one goes with it.
    private void KeepUpWithSeason()
    {
        var (count, isFinished) = (Recording.DayCount, Recording.IsFinished);
        if (count == _seenDays && isFinished == _seenFinished) return;
        var isAtLast = State.Day >= _seenDays - 1;
        (var wasEmpty, _seenDays, _seenFinished) = (_seenDays == 0, count, isFinished);
        if (isAtLast && count > 0 && State.Playing == Playing.Nothing) SetDay(count - 1);
        Change(State, wasEmpty ? PictureChange.Day | PictureChange.Colors : PictureChange.None);
        if (State.Quantity == LeafQuantity.RipeningShare) Change(State, PictureChange.Colors);
    }

    private void KeepUpWithTrial()
    {
        var status = Trial.Status;
        if (ReferenceEquals(status, _seenStatus)) return;
        _seenStatus = status;
        if (State.ShowsTrial && status.Recording != _tried?.Recording)
        {
            ShowTrial(false);
        }

        Invalidate();
    }
}
