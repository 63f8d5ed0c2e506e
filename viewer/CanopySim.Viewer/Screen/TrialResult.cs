using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Results;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>The season as it was and as it was tried, side by side.</summary>
internal static class TrialResult
{
    private const string None = "–";

    /// <summary>What the changes did, in a sentence; null while nothing was grown.</summary>
    public static string? Answer(ScreenModel model)
    {
        if (model.Trial.Status is not { Stage: TrialStage.Done, Result: { } after }
            || model.Opened.Outcome() is not { } before) return null;
        var (was, now) = (before.Summary.Dates.TargetSugar, after.Summary.Dates.TargetSugar);
        var sugar = after.Summary.Harvest?.SugarBrix is { } brix ? $" at {Measure.Number(brix, 1)} Brix" : "";
        var changes = model.GrownDraft?.IsLike(model.Draft) != false ? "With these changes"
            : "With the changes that were grown last";
        return (was, now) switch
        {
            ({ } first, { } second) when first == second =>
                $"{changes} the fruit is ripe on the same day, {ChartAxis.DayText(second, isShort: false)}.",
            ({ } first, { } second) =>
                $"{changes} the fruit is ripe {DaysText(second.DayNumber - first.DayNumber)}, "
                    + $"on {ChartAxis.DayText(second, isShort: false)}.",
            ({ }, null) => $"{changes} the fruit does not get ripe: it ends{sugar}.",
            (null, { } second) => $"{changes} the fruit gets ripe, on {ChartAxis.DayText(second, isShort: false)}.",
            _ => $"{changes} the fruit does not get ripe either: it ends{sugar}.",
        };
    }

    public static void Add(Sheet sheet, Column column)
    {
        var model = sheet.Model;
        if (model.Trial.Status is not { Stage: TrialStage.Done, Result: { } after }) return;
        column.Gap(12);
        if (model.Opened.Outcome() is not { } before)
        {
            column.Text("trial.wait",
                "The season that was opened is still being computed: there is nothing to compare with yet.");
            return;
        }

        var units = sheet.State.Units;
        IReadOnlyList<float> widths = [62, 62, 58];
        column.Row("trial.head", ["", "before", "after", "change"], widths, isStrong: true);
        column.Gap(2);
        column.Row("trial.ripe", ["Ripe", Date(before), Date(after), DaysChange(before, after)], widths);
        var row = 0;
        foreach (var figure in GrowerFigure.All)
        {
            var unit = figure.Unit(units);
            column.Gap(2);
            column.Row(
                $"trial.figure.{Measure.Number(row++, 0)}",
                [unit.Length > 0 ? $"{figure.Name}, {unit}" : figure.Name, figure.Number(before.Summary, units),
                    figure.Number(after.Summary, units),
                    figure.Difference(after.Summary, before.Summary, units)],
                widths);
        }

        foreach (var (sentence, i) in after.Summary.Warnings.Select(warning =>
            $"Not as planned: {warning}.".Replace("..", ".", StringComparison.Ordinal))
            .Concat(after.Summary.Cautions).Select((text, i) => (text, i)))
        {
            column.Gap(6);
            column.Text($"trial.heed.{Measure.Number(i, 0)}", sentence);
        }

        if (model.Opened.Head.Quality != "draft")
        {
            column.Gap(6);
            column.Text(
                "trial.quality", $"After is a draft, before was computed at {model.Opened.Head.Quality} quality: small "
                    + "changes may come from that.", isQuiet: true);
        }

        if (model.Trial.Status.Recording is null) return;
        column.Gap(8);
        column.Buttons(
            ("trial.show.before", "Show before", "S", "The season as it was, in the picture", !sheet.State.ShowsTrial,
                () => model.ShowTrial(false)),
            ("trial.show.after", "Show after", "S", "The season as tried, in the picture", sheet.State.ShowsTrial, () =>
                model.ShowTrial(true)));
    }

    private static string Date(SeasonResult season) =>
        season.Summary.Dates.TargetSugar is { } ripe ? ChartAxis.DayText(ripe, isShort: true) : "not";

    private static string DaysChange(SeasonResult before, SeasonResult after)
    {
        if (before.Summary.Dates.TargetSugar is not { } was
            || after.Summary.Dates.TargetSugar is not { } now) return None;
        var days = now.DayNumber - was.DayNumber;
        return days == 0 ? "same" : $"{(days > 0 ? "+" : "")}{Measure.Number(days, 0)} d";
    }

    private static string DaysText(int days) =>
        $"{Measure.Number(Math.Abs(days), 0)} {(Math.Abs(days) == 1 ? "day" : "days")} "
        + (days > 0 ? "later" : "earlier");
}
