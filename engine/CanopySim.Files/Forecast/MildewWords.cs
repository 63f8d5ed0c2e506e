using CanopySim.Files.Charts;
using CanopySim.Protection;
using CanopySim.Weather;

namespace CanopySim.Files.Forecast;

/// <summary>The temperature index for powdery mildew in plain words.</summary>
public static class MildewWords
{
    public const string Title = "Temperature index after Gubler & Thomas";

    private const int DaysTold = 10;

    /// <summary>How the index counts.</summary>
    public static string Rules(Units units) =>
        $"It begins with three days in a row of six or more continuous hours at {Range(units)}, 20 points each. From then on "
        + "such a day adds 20 points and any other takes 10; heat of "
        + $"{Measure.Temperature(units, MildewIndex.HotFromCelsius, 0)} takes 10 too; it stays within 0 and 100 (University of "
        + "California Cooperative Extension in Western Farm Press). Counted here from budbreak, when there is leaf to infect "
        + "(assumed).";

    /// <summary>What the index does not know.</summary>
    public static string Limits(WeatherSeries weather) =>
        (weather.EstimatedInputs.Contains(EstimatedInput.HourlyTemperature)
            ? "Its hours are estimated here from each day's lowest and highest temperature. " : "")
        + "It knows temperature at the weather station alone: no rain, no wet leaves, no spores, no infection was seen, and no "
        + "product is judged or recommended. Look for mildew in the canopy's inside, and follow local advice.";

    /// <summary>The index of each day from budbreak to the day of the forecast.</summary>
    public static IReadOnlyList<MildewDay> Days(StandingVine vine) => MildewIndex.Of(vine.DaysWithLeaves);

    /// <summary>The sentence to open with: where the index stands.</summary>
    public static string State(IReadOnlyList<MildewDay> days)
    {
        if (days.Count == 0) return "Before budbreak there is no leaf to infect: the index has not been counted.";
        var today = days[^1];
        if (!today.HasBegun)
        {
            return $"The temperature index after Gubler & Thomas has not begun by {Day(today.Date)}: it waits for three "
                + $"favorable days in a row, and has {Favorable(today.Points / 20)}.";
        }

        var begun = days.First(day => day.HasBegun).Date;
        return $"The temperature index after Gubler & Thomas stands at {today.Points} of 100 on {Day(today.Date)}, which is "
            + $"{Class(today.Pressure)}; it began on {Day(begun)}{Lately(days)}.";
    }

    /// <summary>Days between sprays that print names at this state, beside those since the last spray.</summary>
    public static string Interval(StandingVine vine, IReadOnlyList<MildewDay> days)
    {
        if (days.Count == 0 || !days[^1].HasBegun)
            return "The intervals that print names go with an index that has begun; before, local advice decides.";
        var interval = MildewInterval.Of(days[^1].Pressure);
        var sulfur = interval.SulfurFrom == interval.SulfurTo ? $"{interval.SulfurTo}"
            : $"{interval.SulfurFrom} to {interval.SulfurTo}";
        var since = vine.Season.Sprays.Count == 0 ? "No spray is noted or planned."
            : $"The last spray that is noted or planned was {vine.AsOf.DayNumber - vine.Season.Sprays.Max(spray => spray.Date).DayNumber} "
                + "days ago.";
        return $"At a {Class(days[^1].Pressure)} index print names {sulfur} days between sprays of sulfur, and "
            + $"{interval.Others} days or {interval.OfLabel} interval of synthetic fungicides (a trade help page that cites the "
            + "University of California and the American Phytopathological Society; secondary). The label stands above both. "
            + since + Sugar(vine);
    }

    /// <summary>The last days, latest first.</summary>
    public static IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<MildewDay> days) => days.Reverse().Take(DaysTold)
        .Select(day => (IReadOnlyList<string>)
        [
            Day(day.Date), $"{day.FavorableHours}", day.IsHot ? "yes" : "no",
            day.HasBegun || day.Points > 0 ? $"{day.Points}" : "–",
        ]);

    public static IReadOnlyList<string> Heads(Units units) =>
    [
        "Day", $"Longest run of hours at {Range(units)}",
        $"Reached {Measure.Temperature(units, MildewIndex.HotFromCelsius, 0)}", "Index",
    ];

    /// <summary>The class of the index in a word.</summary>
    public static string Class(MildewPressure pressure) => pressure switch
    {
        MildewPressure.Low => "low",
        MildewPressure.Moderate => "moderate",
        _ => "high",
    };

    private static string Lately(IReadOnlyList<MildewDay> days)
    {
        const int Week = 7;
        var last = days.Skip(Math.Max(0, days.Count - Week)).ToList();
        return $", and {last.Count(day => day.IsFavorable)} of the last {last.Count} days were favorable";
    }

    private static string Favorable(int days) => days switch
    {
        0 => "none yet",
        1 => "one",
        _ => $"{days}",
    };

    private static string Sugar(StandingVine vine) => vine.Season.Days.LastOrDefault()?.SugarBrix is { } brix
        && brix >= MildewInterval.LastSugarBrix
        ? $" The fruit of the model stands at {Measure.Number(brix, 1)} Brix: print ends sprays against powdery mildew of wine "
            + $"and raisin grapes at {MildewInterval.LastSugarBrix:0} Brix (UC IPM 2014)."
        : "";

    private static string Range(Units units) => units == Units.Us ? "70 to 85 °F" : "21 to 29 °C";

    private static string Day(DateOnly date) => ChartAxis.DayText(date, isShort: false);
}
