using CanopySim.Files.Charts;
using CanopySim.Fitting;
using CanopySim.Numerics;

namespace CanopySim.Files.Forecast;

/// <summary>What a grower asks of a forecast, answered in sentences from its members.</summary>
public static class ForecastVerdicts
{
    // Published for single and for divided canopies: Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181 [m²/kg].
    private static readonly (double From, double To) EnoughSingle = (0.8, 1.2);
    private static readonly (double From, double To) EnoughDivided = (0.5, 0.8);

    /// <summary>Whether enough young, lit leaf is on the way, with the figures by which it is judged.</summary>
    public static string EnoughLeaf(ForecastReport report, Units units)
    {
        var perFruit = report.Of(season => season.Summary.Harvest?.LeafAreaM2PerKgFruit);
        var young = report.Of(season => season.YoungLeaf?.ShareOfArea);
        var light = report.Of(season => season.YoungLeaf?.ShareOfLight);
        var capacity = report.Of(season => season.Summary.RipeningCapacityGPerKgD);
        if (perFruit is not { } leaf || young is not { } share || light is not { } lit)
            return "";
        var isDivided = Training.TrellisLayout.CanopyMetersPerRowMeter(report.Scenario.Trellis) > 1;
        var enough = isDivided ? EnoughDivided : EnoughSingle;
        var verdict = leaf.P50 < enough.From ? "There will be little leaf for the fruit"
            : leaf.P10 < enough.From ? "There may be little leaf for the fruit"
            : leaf.P50 > enough.To ? "There will be more leaf than the fruit needs" : "There will be leaf enough for the fruit";
        var sends = capacity is { } sent
            ? $" The leaves could send {Measure.SugarPerFruit.Text(units, sent.P50, 1)} of sugar a day to the fruit."
            : "";
        return $"{verdict}: {PerFruit(leaf.P50)} at ripeness ({PerFruit(leaf.P10)} to {PerFruit(leaf.P90)} in four seasons of five); "
            + $"a {(isDivided ? "divided" : "single")} canopy needs {PerFruit(enough.From)} to {PerFruit(enough.To)} (Kliewer & Dokoozlian "
            + $"2005). At veraison {ForecastSentences.Percent(share.P50)} of the leaf area will be younger than {AheadSeason.YoungDays} days, "
            + $"and take up {ForecastSentences.Percent(lit.P50)} of the light.{sends}";

        string PerFruit(double value) => Measure.LeafAreaPerFruit.Text(units, value, 2);
    }

    /// <summary>Which option changes the day of ripeness most; empty where none was tried.</summary>
    public static string Options(ForecastReport report)
    {
        var tried = report.Forecast.Options.Where(option => option.DaysLater.Count > 0).ToList();
        if (tried.Count == 0) return "";
        var most = tried.MaxBy(option => Math.Abs(Quantile.Of(option.DaysLater, 0.5)))!;
        var days = Quantile.Of(most.DaysLater, 0.5);
        return Math.Round(Math.Abs(days)) == 0
            ? "None of what can still be done moves the day of ripeness by more than half a day, against waiting."
            : $"Of what can still be done, to {most.Option.Words} on {ForecastSentences.Day(most.Option.Day)} moves ripeness most: {Later(days)}.";
    }

    /// <summary>Where the weather ahead comes from, and what the ranges do not hold.</summary>
    public static string Basis(ForecastReport report)
    {
        var forecast = report.Forecast;
        var outlook = report.Input.HasOutlook ? $", then the outlook to {ForecastSentences.Day(forecast.WeatherTo)}" : "";
        var spread = Measure.Number(forecast.SpreadBetweenSeasons, 1);
        var between = forecast.SpreadBetweenSeasons == 0
            ? "which differ as much as the record's seasons do. "
            : $"with {spread} K (standard deviation) more between seasons"
                + (forecast.SeasonsOfRecord < WeatherAhead.EnoughSeasons ? ", which is assumed: the record is short. " : ", as in the record. ");
        return $"The weather is the record's to {ForecastSentences.Day(report.AsOf)}{outlook}, and from there on days made like those of "
            + $"{report.Input.Record.FirstDay.Year} to {report.AsOf.Year}, {between}Disease, hail, frost and work that is neither noted nor "
            + "planned are not in it.";
    }

    /// <summary>What the forecast itself takes for granted, each with its mark.</summary>
    public static IReadOnlyList<string> Assumptions(ForecastReport report) =>
    [
        "The vines are moved towards the notes by an ensemble smoother with multiple data assimilation (Emerick & Reynolds 2013, from memory).",
        $"How far vines may differ from the scenario in {VineTraits.All.Count} traits ({string.Join(", ", VineTraits.All.Select(trait => trait.Words))}), "
            + "and how far notes may be off, is assumed.",
        $"For what the model itself has wrong the vines differ {Measure.Number(VineFit.ModelError, 1)} times as much as notes and traits say; the factor was fitted to "
            + "simulated vines of another model (Anderson & Anderson 1999, from memory). No real vineyard was forecast yet.",
        $"The weather ahead is made from {report.Forecast.SeasonsOfRecord} whole growing seasons of the record by a generator after Richardson 1981.",
        "Seasons are grown more roughly than by the season command: their light has an error that is small beside the range.",
    ];

    private static string Later(double days) => days < 0
        ? $"{Days(-days)} earlier than by waiting" : $"{Days(days)} later than by waiting";

    private static string Days(double days) => Math.Round(days) == 1 ? "1 day" : $"{Measure.Number(days, 0)} days";
}
