using CanopySim.Files.Charts;
using CanopySim.Fitting;
using CanopySim.Numerics;
using CanopySim.Protection;

namespace CanopySim.Files.Forecast;

/// <summary>Makes what pages show of a forecast.</summary>
public static class ForecastContents
{
    /// <param name="report">The forecast.</param>
    /// <param name="units">The reader's units.</param>
    /// <param name="printed">The day in the foot; null for none.</param>
    public static ForecastContent Of(ForecastReport report, Units units, DateOnly? printed = null)
    {
        var (forecast, input) = (report.Forecast, report.Input);
        return new ForecastContent
        {
            Vine = report.Standing,
            Tips = TipNotes.Readings(input.Notes, report.Standing),
            Members = forecast.Seasons.Count,
            Outlook = ForecastVerdicts.Basis(report),
            Bloom = Stage("Bloom", forecast.Bloom),
            Veraison = Stage("Veraison", forecast.Veraison),
            Target = Stage("Target sugar", forecast.TargetSugar),
            ShootLengthCm = report.ShootLength,
            LeafAreaM2PerVine = report.LeafArea,
            SugarBrix = report.Sugar,
            ChanceOfTarget = [.. report.Sugar.Select(day => (day.Date, forecast.ChanceBy(day.Date)))],
            NotedLengthsCm = Noted(report, ObservedQuantity.ShootLength, 100),
            NotedSugars = Noted(report, ObservedQuantity.Sugar, 1),
            FeedingLeaves = report.FeedingLeaves,
            AtVeraison = report.Of(season => season.YoungLeaf?.WholeArea) is { } area
                && report.Of(season => season.YoungLeaf?.ShareOfArea) is { } young
                    ? (new Tenths(area.P10, area.P50, area.P90), new Tenths(young.P10, young.P50, young.P90))
                    : null,
            LeafVerdict = ForecastVerdicts.EnoughLeaf(report, units),
            OptionVerdict = ForecastVerdicts.Options(report),
            ChanceByWeek = report.Chances,
            Options = [.. forecast.Options.Select(Option)],
            Notes = [.. report.Telling.Concat(report.Contradicting).Select(told => Note(told, units))],
            OddNotes = [.. input.Noted.Odd.Select(odd => NoteEffectWords.Odd(odd, units))],
            Assumptions = ForecastVerdicts.Assumptions(report),
            Understood = input.Document.Values,

            // The cautions on sprays have a section of their own.
            Warnings = [.. report.Standing.Season.Summary.Warnings.Except(
                SprayCautions.Of(report.Standing.Season.Sprays, report.Standing.Weather.Days).Select(caution => caution.Words))],
            Units = units,
            Printed = printed,
        };
    }

    private static StageOutlook Stage(string name, StageRange range) => new(name, range.P10, range.P50, range.P90, range.Chance);

    private static IReadOnlyList<(DateOnly Date, double Value)> Noted(ForecastReport report, ObservedQuantity quantity, double scale) =>
        [.. report.Input.Noted.Observations.Where(seen => seen.Quantity == quantity).Select(seen => (seen.Date, scale * seen.Value))];

    private static OptionOutlook Option(OptionAhead option) => new(
        Capital(option.Option.Words), option.Option.Day, option.Pairs.Count, TenthsOf(option.DaysLater), TenthsOf(option.Yield),
        TenthsOf(option.RipeningCapacity), option.Fault);

    private static Tenths? TenthsOf(IReadOnlyList<double> sorted) => sorted.Count == 0 ? null
        : new Tenths(Quantile.Of(sorted, 0.1), Quantile.Of(sorted, 0.5), Quantile.Of(sorted, 0.9));

    private static NoteOutlook Note(NotedEffect told, Units units)
    {
        var row = NoteEffectWords.Row(told, units);
        var lines = NoteEffectWords.Lines(told.Notes);
        return new NoteOutlook(
            $"{row[0]}, {row[1]}: {row[2]} ({lines})", row[3], row[4], told.Effect.Narrowing, told.Effect.IsExcluded);
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
