using CanopySim.Files.Charts;
using CanopySim.Training;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// What can be changed on the block, the draft season that follows from it, and before and after side by side.
/// </summary>
internal static class TrialPanel
{
    private const double MostShoots = 40;

    private const double LowestCut = 0.4;

    private const double HighestCut = 2.8;

    // A step below the lowest cut on the slider means: not topped.
    private const double CutStep = 0.05;

    private const float CurveHeight = 190;

    public static void Add(Sheet sheet, Column column)
    {
        var (model, draft, now) = (sheet.Model, sheet.Model.Draft, TrialDraft.Of(sheet.Model.OpenedScenario));
        var units = sheet.State.Units;
        AddAnswer(sheet, column);
        AddRun(sheet, column);
        TrialResult.Add(sheet, column);
        column.Rule("trial.rule");
        AddTrack(
            sheet, column, "trial.shoots", "Shoots", $"{Measure.PerLength.Text(units, draft.ShootsPerMeter, 1)}", 2,
                MostShoots, 0.5,
            draft.ShootsPerMeter, now.ShootsPerMeter, value => model.Edit(draft with { ShootsPerMeter = value }),
                "Shoots kept along the canopy");
        AddForm(sheet, column);
        AddTrack(
            sheet, column, "trial.azimuth", "Row direction", AzimuthWords(draft.Azimuth), 0, 175, 5,
                draft.Azimuth % 180, now.Azimuth % 180,
            value => model.Edit(draft with { Azimuth = value }), "Direction of the row, clockwise from north");
        AddTrack(
            sheet, column, "trial.topping", "Topping", draft.ToppingHeight is { } height
                ? $"at {TrialWords.Height(height, units)}" : "none",
            LowestCut - CutStep, HighestCut, CutStep, draft.ToppingHeight ?? LowestCut - CutStep,
                now.ToppingHeight ?? LowestCut - CutStep,
            value => model.Edit(draft with { ToppingHeight = value < LowestCut - (CutStep / 2) ? null : value }),
                "Height at which shoots are cut");
        AddTrack(
            sheet, column, "trial.leaves", "Leaves taken off the fruit zone",
                $"{Measure.Number(100 * draft.LeafRemovalShare, 0)} %", 0, 1, 0.1,
            draft.LeafRemovalShare, now.LeafRemovalShare, value => model.Edit(draft with { LeafRemovalShare = value }),
            "Share of the leaves around the fruit that is taken off");
        AddCurve(sheet, column, now);
        AddSave(sheet, column);
    }

    /// <summary>A direction in degrees and as people say it.</summary>
    public static string AzimuthWords(double azimuth)
    {
        var half = azimuth % 180;
        var words = half switch
        {
            < 22.5 or >= 157.5 => "north to south",
            < 67.5 => "northeast to southwest",
            < 112.5 => "east to west",
            _ => "northwest to southeast",
        };
        return $"{Measure.Number(azimuth, 0)}°, {words}";
    }

    private static void AddAnswer(Sheet sheet, Column column)
    {
        if (TrialResult.Answer(sheet.Model) is { } answer)
        {
            column.Text("trial.answer", answer, TextKind.Strong);
            column.Gap(10);
        }
        else if (sheet.Model.Trial.Status.Stage == TrialStage.Idle)
        {
            column.Text("trial.intro", "Change what you like, then grow the season again in this block's weather.",
                isQuiet: true);
            column.Gap(10);
        }
    }

    private static void AddTrack(
        Sheet sheet, Column column, string name, string what, string value, double least, double most, double step,
            double at, double mark,
        Action<double> set, string tip)
    {
        column.Pair(name, what, value);
        sheet.Add(new ValueTrack
        {
            Name = name,
            Bounds = column.Take(ValueTrack.Height),
            Least = least,
            Most = Math.Max(most, at),
            Step = step,
            Value = at,
            Mark = mark,
            Set = set,
            Tip = tip,
            Key = "← →",
        });
        column.Gap(5);
    }

    private static void AddForm(Sheet sheet, Column column)
    {
        var (model, draft) = (sheet.Model, sheet.Model.Draft);
        var forms = Enum.GetValues<TrellisForm>();
        column.Pair("trial.form", "Trellis", TrialWords.Form(draft.Form));
        column.Gap(2);
        column.Buttons(
            ("trial.form.before", "Form before", "", "The form of trellis before", false,
                () => model.Edit(draft with
                {
                    Form = forms[(Array.IndexOf(forms, draft.Form)
                    + forms.Length - 1) % forms.Length]
                })),
            ("trial.form.next", "Next form", "", "The next form of trellis", false,
                () => model.Edit(draft with { Form = forms[(Array.IndexOf(forms, draft.Form) + 1) % forms.Length] })));
        if (draft.Form != model.OpenedScenario.Trellis.Form)
        {
            column.Gap(3);
            column.Text("trial.form.note", "Another form stands at its own usual heights and widths.", isQuiet: true);
        }

        column.Gap(8);
    }

    private static void AddCurve(Sheet sheet, Column column, TrialDraft now)
    {
        var (model, draft) = (sheet.Model, sheet.Model.Draft);
        var point = draft.AgePoints[model.CurvePoint];
        column.Pair(
            "trial.curve.at", "Efficiency of a leaf by its age, %",
            $"{Measure.Number(point.Age, 0)} days, {Measure.Number(100 * point.Efficiency, 0)} %");
        sheet.Add(new CurveEditor
        {
            Name = "trial.curve",
            Bounds = column.Take(CurveHeight),
            Points = draft.AgePoints,
            Before = now.AgePoints,
            Chosen = model.CurvePoint,
            Scale = sheet.Scale,
            Choose = model.ChoosePoint,
            Move = (index, age, efficiency) => model.Edit(model.Draft.WithPoint(index, age, efficiency)),
            Tip = "Drag a point, or choose one with Page up and Page down and move it with the arrow keys",
            Key = "↑ ↓ ← →",
        });
        column.Text("trial.curve.days", "Days since the leaf unfolded", isQuiet: true);
    }

    private static void AddRun(Sheet sheet, Column column)
    {
        var (model, status) = (sheet.Model, sheet.Model.Trial.Status);
        var changes = model.Draft.Changes(model.OpenedScenario, sheet.State.Units);
        column.Text("trial.changes", changes.Count == 0 ? "Nothing is changed."
            : $"Changed: {string.Join("; ", changes)}.");
        if (model.Problem is { } problem)
        {
            column.Gap(4);
            column.Text("trial.problem", $"This cannot stand: {problem}");
        }

        column.Gap(8);
        var isRunning = status.Stage == TrialStage.Running;
        column.Buttons(
            isRunning
                ? ("trial.stop", "Stop", "", "Stop the season that is being grown", false, model.StopTrial)
                : ("trial.grow", "Grow it again", "", "Grow a draft season with these changes in the background",
                    model.Problem is null, model.StartTrial),
            ("trial.undo", "Undo the changes", "", "Everything as the scenario has it", false, model.UndoTrial));
        if (isRunning)
        {
            column.Gap(8);
            column.Text("trial.progress", $"A draft season is growing: {Measure.Number(100 * status.Share, 0)} %");
            column.Gap(2);
            sheet.Add(new ShareBar { Name = "trial.share", Bounds = column.Take(8), Share = status.Share });
        }
        else if (status.Stage == TrialStage.Failed)
        {
            column.Gap(8);
            column.Text("trial.failed", $"This season could not be grown: {status.Message}");
        }
    }

    private static void AddSave(Sheet sheet, Column column)
    {
        var model = sheet.Model;
        column.Rule("trial.save.rule");
        column.Text("trial.save.name", "Keep the changed block as a scenario", TextKind.Strong);
        column.Gap(4);
        sheet.Add(new TextField
        {
            Name = "trial.file",
            Bounds = column.Take(30),
            Value = model.FileName,
            Set = model.SetFileName,
            Accept = model.SaveTrial,
            Tip = "Name of the scenario's file",
            Key = "Enter saves",
        });
        column.Gap(6);
        column.Buttons(("trial.save", "Save as scenario", "", "Write the changed block as a scenario of its own", false,
            model.SaveTrial));
        if (model.SavedMessage.Length == 0) return;
        column.Gap(4);
        column.Text("trial.saved", model.SavedMessage);
    }
}
