using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Protection;

/// <summary>Why a spray of sulfur or oil calls for a caution.</summary>
public enum SprayRisk
{
    /// <summary>Sulfur on a day, or before days, of more than 85 °F.</summary>
    SulfurInHeat,

    /// <summary>Sulfur and oil within 14 days of each other.</summary>
    SulfurNearOil,
}

/// <summary>A caution on one spray.</summary>
/// <param name="Spray">The spray.</param>
/// <param name="Risk">What the risk is.</param>
/// <param name="On">The day of the heat, or of the other spray.</param>
/// <param name="MaximumCelsius">The highest temperature of that day [°C]; null for the other risk.</param>
public readonly record struct SprayCaution(SprayOnDay Spray, SprayRisk Risk, DateOnly On, double? MaximumCelsius)
{
    /// <summary>The caution as a sentence, metric.</summary>
    public string Words => Risk == SprayRisk.SulfurInHeat
        ? FormattableString.Invariant(
            $"canopy_work.sprays.{Spray.Number} on {Spray.Date:yyyy-MM-dd} is sulfur, and {On:yyyy-MM-dd} reaches {MaximumCelsius:0.#} °C: over 29.4 °C (85 °F) it can burn leaves and fruit; the label decides.")
        : FormattableString.Invariant(
            $"canopy_work.sprays.{Spray.Number} on {Spray.Date:yyyy-MM-dd} is sulfur, and oil is sprayed on {On:yyyy-MM-dd}: within {SprayCautions.DaysFromOil} days of each other they can burn leaves; the label decides.");
}

/// <summary>A spray on its day.</summary>
/// <param name="Number">Its number in the scenario's list, from 0.</param>
/// <param name="Label">Its name.</param>
/// <param name="Date">The day.</param>
/// <param name="Kind">What it holds.</param>
public readonly record struct SprayOnDay(int Number, string Label, DateOnly Date, SprayKind Kind);

/// <summary>
/// Sulfur burns leaves in heat and beside oil. Not at or before more than 85 °F (Michigan State University Extension in
/// Western Farm Press; labels name 90 to 100 °F, from memory); not within 14 days of oil, either way (labels, from
/// memory; some say 10 to 21). The label decides.
/// </summary>
public static class SprayCautions
{
    /// <summary>Heat in which sulfur may burn [°C]: 85 °F.</summary>
    public const double HeatCelsius = (85 - 32) / 1.8;

    /// <summary>Days between sulfur and oil.</summary>
    public const int DaysFromOil = 14;

    // How long after the spray heat is looked for: what a forecast tells, assumed.
    private const int DaysAhead = 3;

    /// <summary>The cautions on sprays, in their order; the hottest of the days in question is named.</summary>
    public static IReadOnlyList<SprayCaution> Of(IReadOnlyList<SprayOnDay> sprays, IReadOnlyList<WeatherDay> days)
    {
        var cautions = new List<SprayCaution>();
        for (var i = 0; i < sprays.Count; i++)
        {
            if (sprays[i].Kind != SprayKind.Sulfur) continue;
            var (from, to) = (sprays[i].Date, sprays[i].Date.AddDays(DaysAhead));
            var hottest = days.Where(day => day.Date >= from && day.Date <= to)
                .MaxBy(day => day.MaximumTemperatureCelsius);
            if (hottest is { MaximumTemperatureCelsius: > HeatCelsius and var celsius })
                cautions.Add(new SprayCaution(sprays[i], SprayRisk.SulfurInHeat, hottest.Date, celsius));
            foreach (var other in sprays)
                if (other.Kind == SprayKind.Oil && Math.Abs(other.Date.DayNumber - from.DayNumber) < DaysFromOil)
                    cautions.Add(new SprayCaution(sprays[i], SprayRisk.SulfurNearOil, other.Date, null));
        }

        return cautions;
    }
}
