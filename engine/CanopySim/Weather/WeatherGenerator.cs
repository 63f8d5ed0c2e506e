using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Makes days of weather like a record's: wet and dry days in spells, the rest as a seasonal mean plus residuals that last from
/// day to day and go with each other, by Richardson 1981, doi:10.1029/WR017i001p00182. Residuals are normal scores, not the
/// values themselves, so that skewed quantities stay so; moisture and wind are added to the paper's temperatures and radiation.
/// What is slower than days is not in it: whole years differ less than measured ones do.
/// </summary>
public static class WeatherGenerator
{
    // Long enough that nothing is left of where the chain and the residuals began.
    private const int WarmUpDays = 60;

    /// <summary>The weather of some days, the same bits for the same seed and days; by days, with what the record had.</summary>
    public static WeatherRecord Generate(WeatherClimate climate, ulong seed, DateOnly firstDay, int days)
    {
        var readings = new DailyReading[days];
        var isWet = false;
        var scores = new double[climate.Air.Count];
        for (var day = -WarmUpDays; day < days; day++)
        {
            var date = firstDay.AddDays(day);
            var wasWet = isWet;
            isWet = climate.Rain is { } rain && rain.NextIsWet(wasWet, date, seed);
            scores = climate.Persistence.Next(scores, date, seed);
            if (day >= 0) readings[day] = Reading(climate, seed, date, SeasonalDay.Of(date, isWet, wasWet), scores);
        }

        return new WeatherRecord { Days = readings, FirstDay = firstDay, IsGenerated = true };
    }

    private static DailyReading Reading(WeatherClimate climate, ulong seed, DateOnly date, SeasonalDay day, double[] scores)
    {
        double? Value(AirQuantity asked)
        {
            for (var index = 0; index < scores.Length; index++)
                if (climate.Air[index].Quantity == asked) return climate.Air[index].At(day, scores[index]);
            return null;
        }

        var maximum = Value(AirQuantity.Maximum)!.Value;
        return new DailyReading(
            Math.Min(Value(AirQuantity.Minimum)!.Value, maximum - climate.LeastRange),
            maximum,
            Value(AirQuantity.Moisture) * SaturationVaporPressure.At(maximum),
            Value(AirQuantity.Clearness) * ExtraterrestrialRadiation.Daily(climate.Latitude, date.DayOfYear),
            climate.Rain is { } rain ? day.IsWet ? rain.AmountOn(date, seed) : 0 : null,
            Value(AirQuantity.Wind));
    }
}
