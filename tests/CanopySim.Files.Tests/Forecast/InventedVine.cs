using CanopySim.Assessment;
using CanopySim.Files.Forecast;
using CanopySim.Files.Tests.Charts;
using CanopySim.Protection;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Forecast;

/// <summary>A vine on a day of June, made up for the tests of what a forecast says of it. Nothing here is a result.</summary>
internal static class InventedVine
{
    public static DateOnly AsOf { get; } = new(2023, 6, 20);

    /// <summary>The vine; its weather is mild, with 4 mm of rain once a week, 19 June among the days.</summary>
    public static StandingVine Standing(DateOnly? asOf = null, bool isSprayed = true)
    {
        var day = asOf ?? AsOf;
        var season = InventedSeason.EndedOn(day) with { Tips = [.. Tips(day)] };
        if (isSprayed)
        {
            season = season with
            {
                Sprays =
                [
                    new SprayOnDay(0, "sulfur first cover", new DateOnly(2023, 5, 12), SprayKind.Sulfur),
                    new SprayOnDay(2, "summer oil", new DateOnly(2023, 6, 15), SprayKind.Oil),
                    new SprayOnDay(3, "sulfur again", new DateOnly(2023, 6, 18), SprayKind.Sulfur),
                ],
                SprayCover =
                [
                    new ZoneCover(0, CoverZone.FruitZone, 2, 1.5, 30), new ZoneCover(0, CoverZone.Shoots, 3, 2.7, 90),
                    new ZoneCover(0, CoverZone.Laterals, 1, 1, 80), new ZoneCover(2, CoverZone.FruitZone, 2, 0.5, 8),
                    new ZoneCover(2, CoverZone.Shoots, 3, 0.9, 20), new ZoneCover(2, CoverZone.Laterals, 1, 0.4, 24),
                    new ZoneCover(3, CoverZone.FruitZone, 2, 2, 90), new ZoneCover(3, CoverZone.Shoots, 3, 0.3, 4),
                    new ZoneCover(3, CoverZone.Laterals, 1, 0.25, 9), new ZoneCover(null, CoverZone.FruitZone, 2, 0.5, 8),
                    new ZoneCover(null, CoverZone.Shoots, 3, 0.3, 4), new ZoneCover(null, CoverZone.Laterals, 1, 0.2, 9),
                ],
                Days = [.. season.Days.Select(row => row with { LeafAreaUnsprayedM2PerVine = 0.2 * row.LeafAreaM2PerVine })],
            };
        }

        var weather = new WeatherSeries { Days = [.. Weather()], EstimatedInputs = [EstimatedInput.HourlyTemperature] };
        return new StandingVine(InventedSeason.Scenario(), season, weather, day);
    }

    public static TipSurvey Tip(DateOnly date, double free = 0.75, double slowing = 0.25, double soil = 0.8, double supply = 0.9) => new()
    {
        Date = date,
        GrowingFreely = free,
        Slowing = slowing,
        Stopped = 1 - free - slowing,
        LastInternodes = [0.03, 0.035, 0.04, 0.05, 0.052, 0.055],
        SoilWaterFraction = soil,
        MainSupplyIndex = supply,
    };

    private static IEnumerable<TipSurvey> Tips(DateOnly last)
    {
        for (var date = InventedSeason.Budbreak; date <= last; date = date.AddDays(1)) yield return Tip(date);
    }

    // Eight hours of 25 °C on each day from 1 to 5 June and from 18 June on; an hour of 36 °C on 16, of 33 °C on 19 June.
    private static IEnumerable<WeatherDay> Weather()
    {
        for (var date = new DateOnly(2023, 1, 1); date <= InventedSeason.End; date = date.AddDays(1))
        {
            var isWarm = date >= new DateOnly(2023, 6, 1) && date <= new DateOnly(2023, 6, 5)
                || date >= new DateOnly(2023, 6, 18);
            yield return new WeatherDay
            {
                Date = date,
                Hours = [.. Enumerable.Range(0, 24).Select(hour => new WeatherHour(
                    Celsius(date, hour, isWarm), 1, 101, 1, hour == 6 && date.DayOfYear % 7 == 2 ? 4 : 0, 0, 0, 0))],
            };
        }
    }

    private static double Celsius(DateOnly date, int hour, bool isWarm) => hour switch
    {
        17 when date == new DateOnly(2023, 6, 19) => 33,
        17 when date == new DateOnly(2023, 6, 16) => 36,
        >= 8 and < 16 when isWarm => 25,
        _ => 14,
    };
}
