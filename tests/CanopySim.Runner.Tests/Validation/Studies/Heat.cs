using CanopySim.Numerics;
using CanopySim.Photosynthesis;
using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What heat does to a leaf, and to a canopy in a hot fortnight.</summary>
internal sealed class Heat : Study
{
    private const string Optimum =
        "Zufferey, Murisier & Schultz 2000: 27 to 32 °C in the field; 25 to 30 °C (Kriedemann 1968, Vitis 7:213; Williams 1996), from memory";

    private static readonly Limit OptimumRange = new WithinRange(25, 32);

    // Next to nothing is assimilated at 45 °C: common practice, no source.
    private static readonly Limit ShareAt45 = WithinRange.AtMost(0.10);

    // Greer & Weedon 2013: -35 %, within 20 points.
    private static readonly Limit Fall = new WithinRange(0.15, 0.55);

    private const double LeafTemperatureOfHeat = 45;
    private const double HotMaximum = 42;
    private const double WarmerNights = 5;

    private static readonly (int Month, int From, int To) HotDays = (7, 8, 21);

    private static readonly SeasonCase Heated = new()
    {
        Name = "hot fortnight",
        Block = SeasonCatalogue.WholeYear.Block,
        WeatherSeed = SeasonCatalogue.WholeYear.WeatherSeed,
        Change = SeasonCatalogue.WholeYear.Change,
        ChangeWeather = (weather, _) => weather with { Days = [.. weather.Days.Select(day => IsHot(day.Date) ? Hot(day) : day)] },
        Until = (HotDays.Month, HotDays.To),
        Work = 27 * 4,
    };

    public override string Title => "Heat";

    public override string Done =>
        "A leaf at its best in 1500 µmol m⁻² s⁻¹ of PAR, wind 2 m/s, vapor pressure 1.5 kPa while the air warms, 420 µmol mol⁻¹ CO₂, "
        + "`leaf.growth_temperature` 30 °C; conductance, energy balance and assimilation coupled. "
        + "The canopy of `warm-valley` in its first generated weather, whose 8 to 21 July are made hot: maxima of 42 °C, nights 5 °C warmer, "
        + "vapor pressure kept.";

    public override IReadOnlyList<SeasonCase> Seasons => [Heated, SeasonCatalogue.WholeYear];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var leaf = WarmedLeaf(seasons.Prepared(SeasonCatalogue.WholeYear).Scenario);
        var best = leaf.MaxBy(point => point.NetAssimilation);
        var (hot, plain) = (Gain(seasons, Heated), Gain(seasons, SeasonCatalogue.WholeYear));
        return new StudyResult(
            Finding.Judged(
                "leaf temperature of the highest net assimilation [°C]", Standing.Predicted, OptimumRange, Optimum, best.LeafTemperatureCelsius) with
            {
                Note = $"{NumberSay.Number(best.NetAssimilation)} µmol m⁻² s⁻¹",
            },
            Finding.Judged(
                "net assimilation at a leaf temperature of 45 °C over the highest [1]", Standing.Arithmetic, ShareAt45,
                "common practice, no source", At(leaf, LeafTemperatureOfHeat) / best.NetAssimilation) with
            {
                Note = "follows from where heat is assumed to close a leaf, 40 to 46 °C",
            },
            Finding.Judged(
                "fall of the canopy's net assimilation over the hot fortnight [1]", Standing.Predicted, Fall,
                "Greer & Weedon 2013, Front Plant Sci 4:491, Semillon, 14 days over 40 °C", 1 - (hot / plain)) with
            {
                Published = "0.35, ± 0.20",
            });
    }

    private static List<LeafGasExchange> WarmedLeaf(Scenario scenario)
    {
        const double Par = 1500;
        const double FirstAir = 14;
        const double LastAir = 56;
        const double Step = 0.1;
        var (leaf, optics) = (scenario.Leaf with { GrowthTemperature = 30 }, scenario.Optics);
        // As much energy in the near infrared as in PAR falls on it.
        var absorbedPar = Par * (1 - optics.LeafParReflectance - optics.LeafParTransmittance);
        var absorbedNir = Par / UnitConversion.MicromolesPerJouleOfDaylightPar * (1 - optics.LeafNirReflectance - optics.LeafNirTransmittance);
        var state = new LeafState(absorbedPar, absorbedNir, CapacityFactor: 1, RespirationFactor: 1, Width: 0.11, WaterStressFactor: 1);
        return
        [
            .. Enumerable.Range(0, (int)((LastAir - FirstAir) / Step) + 1).Select(i => LeafSolver.Solve(
                new LeafEnvironment(FirstAir + (i * Step), VaporPressure: 1.5, AirPressure: 101.3, WindSpeed: 2, Co2: 420), state, leaf)),
        ];
    }

    private static double At(List<LeafGasExchange> leaf, double temperature) =>
        leaf.MinBy(point => Math.Abs(point.LeafTemperatureCelsius - temperature)).NetAssimilation;

    private static double Gain(ValidationSeasons seasons, SeasonCase season) =>
        seasons.Of(season).Days.Where(row => IsHot(row.Date)).Sum(row => row.NetAssimilationGCo2PerVine);

    private static bool IsHot(DateOnly day) => day.Month == HotDays.Month && day.Day >= HotDays.From && day.Day <= HotDays.To;

    private static WeatherDay Hot(WeatherDay day)
    {
        var (minimum, maximum) = (day.MinimumTemperatureCelsius, day.MaximumTemperatureCelsius);
        var hotMinimum = minimum + WarmerNights;
        var stretch = (Math.Max(HotMaximum, maximum) - hotMinimum) / (maximum - minimum);
        return day with
        {
            Hours = [.. day.Hours.Select(hour => hour with { AirTemperatureCelsius = hotMinimum + (stretch * (hour.AirTemperatureCelsius - minimum)) })],
        };
    }
}
