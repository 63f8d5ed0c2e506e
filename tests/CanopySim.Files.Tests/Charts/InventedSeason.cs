using System.Collections.Concurrent;
using CanopySim.Files.Charts;
using CanopySim.Growth;
using CanopySim.Phenology;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Charts;

/// <summary>
/// A season made up for the tests of charts and report: shaped like one, but out of plain formulas, not out of the model.
/// Nothing here is a result.
/// </summary>
internal static class InventedSeason
{
    public static DateOnly Budbreak { get; } = new(2023, 4, 3);

    public static DateOnly Bloom { get; } = new(2023, 5, 28);

    public static DateOnly Veraison { get; } = new(2023, 8, 2);

    public static DateOnly Ripe { get; } = new(2023, 9, 17);

    public static DateOnly End { get; } = new(2023, 10, 25);

    private static readonly ConcurrentDictionary<(string, Units), Lazy<IReadOnlyList<ChartPicture>>> Drawn = new();

    public static Scenario Scenario(string name = "Terrace block", string cultivar = "mid-season red") => new()
    {
        Name = name,
        Site = new Site { Latitude = 45.2, Longitude = 5.1 },
        Weather = new WeatherOptions { File = "weather.csv" },
        Cultivar = new Cultivar { Name = cultivar },
    };

    public static SeasonResult Full()
    {
        var days = Days(new DateOnly(2023, 1, 1), End).ToList();
        return new SeasonResult
        {
            Summary = Summary() with
            {
                RipeningCapacityGPerKgD = days.Where(d => d.Date >= Veraison && d.Date <= Ripe).Average(d => d.RipeningCapacityGPerKgD),
                CanopyScore = InventedAssessment.Score,
                FruitLight = InventedAssessment.Light,
                FruitHeat = InventedAssessment.Heat,
                NextYear = InventedAssessment.NextYear,
            },
            Days = days,
            LeafAges = [.. days.SelectMany(LeafAges)],
            Leaves = [],
            AgeCurve = new LeafAgeCurve(),
            Assessment = InventedAssessment.Rows(days),
        };
    }

    /// <summary>The same season, cut after a day: later stages are null, and so is what needs them.</summary>
    public static SeasonResult EndedOn(DateOnly end)
    {
        var full = Full();
        var dates = full.Summary.Dates;
        DateOnly? Kept(DateOnly? date) => date <= end ? date : null;
        return full with
        {
            Days = [.. full.Days.Where(d => d.Date <= end)],
            LeafAges = [.. full.LeafAges.Where(d => d.Date <= end)],
            Assessment = end >= Veraison ? full.Assessment : AssessmentResult.Nothing,
            Summary = full.Summary with
            {
                EndReason = "weather_ended",
                Dates = new StageDates(
                    Kept(dates.Budbreak), Kept(dates.Bloom), Kept(dates.Veraison), Kept(dates.TargetSugar), Kept(dates.Harvest), end),
                PublishedSums = new PublishedDates(
                    Kept(full.Summary.PublishedSums.Flowering), Kept(full.Summary.PublishedSums.Veraison)),
                Canopy = end >= Veraison ? full.Summary.Canopy : null,
                CanopyScore = end >= Veraison ? full.Summary.CanopyScore : null,
                FruitLight = end >= Veraison ? full.Summary.FruitLight : null,
                FruitHeat = end >= Veraison ? full.Summary.FruitHeat : null,
                NextYear = end >= Bloom ? full.Summary.NextYear : null,
                NodesAtBloom = end >= Bloom ? full.Summary.NodesAtBloom : null,
                Harvest = end >= Veraison ? full.Summary.Harvest! with { SugarBrix = full.Days.Last(d => d.Date <= end).SugarBrix } : null,
                RipeningCapacityGPerKgD = end >= Veraison ? full.Summary.RipeningCapacityGPerKgD : null,
                RipeningCarbonByLeafAge = end >= Veraison ? full.Summary.RipeningCarbonByLeafAge : [],
            },
        };
    }

    public static SeasonResult WithoutFruit()
    {
        var full = Full();
        return full with
        {
            Days = [.. full.Days.Select(d => d with { FruitDryMassGPerVine = 0, SugarBrix = null, RipeningCapacityGPerKgD = null })],
            Assessment = AssessmentResult.Nothing,
            Summary = full.Summary with
            {
                Harvest = null,
                FruitLight = null,
                FruitHeat = null,
                RipeningCapacityGPerKgD = null,
                Dates = full.Summary.Dates with { TargetSugar = null, Harvest = null },
                Canopy = full.Summary.Canopy! with { InteriorClusterFraction = null },
            },
        };
    }

    public static SeasonResult Empty() => EndedOn(new DateOnly(2022, 12, 31));

    /// <summary>Charts of a season by its name, drawn once for all tests.</summary>
    public static IReadOnlyList<ChartPicture> Pictures(string name, SeasonResult season, Units units) =>
        Drawn.GetOrAdd((name, units), _ => new(() => SeasonCharts.All(season, Scenario(), units))).Value;

    private static SeasonSummary Summary() => new()
    {
        Scenario = "Terrace block",
        Seed = 7,
        Quality = "standard",
        EstimatedInputs = ["global radiation from the temperature range", "humidity from the daily minimum"],
        FilledGaps = 3,
        ThermalTime = new ThermalTimeBasis(6.5, "mean of the hours' response with optimum and ceiling"),
        Dates = new StageDates(Budbreak, Bloom, Veraison, Ripe, Ripe, End),
        PublishedSums = new PublishedDates(new DateOnly(2023, 5, 31), new DateOnly(2023, 8, 2)),
        EndReason = "leaf_fall",
        Canopy = new CanopySummary
        {
            ShootsPerVine = 24.5,
            ShootsPerM = 16.3,
            CanopyMPerRowM = 1,
            NodesPerShoot = 23.4,
            ShootLengthCm = 131.6,
            PrimaryLeafAreaPerShootCm2 = 2281,
            LateralLeafAreaPerShootCm2 = 1049,
            LeafAreaM2PerVine = 8.16,
            LeafAreaM2PerM = 5.44,
            LeafLayerNumber = 1.83,
            GapFraction = 0.21,
            InteriorLeafFraction = 0.27,
            InteriorClusterFraction = 0.62,
            GrowingTipsFraction = 0.04,
        },
        NodesAtBloom = 17.3,
        Harvest = new HarvestSummary(3.47, 9.64, 22.1, 2.29, 0.94, 3.69),
        Season = new SeasonTotals(9.83, 4.57, 611, 2873, 2.1),
        RipeningCapacityGPerKgD = null,
        RipeningCarbonByLeafAge =
        [
            new(0, 10, -0.012), new(10, 20, 0.008), new(20, 30, 0.017), new(30, 40, 0.031), new(40, 50, 0.042),
            new(50, 60, 0.064), new(60, 70, 0.131), new(70, 80, 0.152), new(80, 90, 0.163), new(90, 100, 0.144),
            new(100, 110, 0.121), new(110, 120, 0.083), new(120, 130, 0.039), new(130, 140, 0.014), new(140, 150, 0.003),
        ],
        Checks = new SeasonChecks(3.1e-12, 4.4e-13, 5912, 70944, 145),
        Seconds = new StageSeconds(41, 30, 20, 9),
    };

    private static IEnumerable<DayRow> Days(DateOnly from, DateOnly to)
    {
        for (var date = from; date <= to; date = date.AddDays(1))
        {
            double age = date.DayNumber - Budbreak.DayNumber;
            double ripening = date.DayNumber - Veraison.DayNumber;
            var grown = Step(age / 85);
            var weather = Weather(date);
            var leaves = 8.3 * grown * (age > 190 ? 0.7 : 1);
            yield return new DayRow
            {
                Date = date,
                Stage = date < Budbreak ? "dormant" : date < Bloom ? "budbreak" : date < Veraison ? "bloom" : date < Ripe ? "veraison" : "ripe",
                ThermalTimeDegCD = Math.Max(0, age * 9),
                NodesPerShoot = 23.6 * grown,
                ShootLengthCm = 132 * Step((age - 8) / 85),
                LeafAreaM2PerVine = leaves,
                LateralLeafAreaM2PerVine = 0.3 * leaves,
                MeanLeafAgeD = age > 0 ? age * 0.6 : null,
                MeanLeafEfficiency = age > 0 ? 0.8 : null,
                IncidentParMolM2 = 40 * weather,
                AbsorbedParMolPerVine = 60 * weather * grown,
                FractionParAbsorbed = 0.47 * grown * (0.9 + (0.1 * weather)),
                NetAssimilationGCo2PerVine = 75 * weather * grown,
                RespirationGCo2PerVine = 20 + (15 * grown),
                ReservesGPerVine = 400,
                FruitDryMassGPerVine = Math.Max(0, 900 * Step(ripening / 60)),
                SugarBrix = ripening < 0 ? null : 5.5 + (19 * (1 - Math.Exp(-ripening / 23))),
                RipeningCapacityGPerKgD = ripening < 0 ? null : Math.Max(0, (8.6 - (ripening * 0.07)) * weather),
                TranspirationLPerVine = 5.4 * weather * grown,
                GrowingTipsFraction = age < 60 ? 1 : 0,
                SoilWaterFraction = Math.Clamp(1 - (Math.Max(0, age - 20) * 0.0043) + (date.DayNumber % 41 < 3 ? 0.06 : 0), 0, 1),
            };
        }
    }

    private static IEnumerable<LeafAgeRow> LeafAges(DayRow day)
    {
        var curve = new LeafAgeCurve();
        double age = day.Date.DayNumber - Budbreak.DayNumber;
        for (var from = 0; from < 180 && from <= age; from += 10)
        {
            // Area unfolded between two days, of leaves that unfold from the fifth day on and fall at 180 days.
            var area = 8.3 * (Step((age - from) / 85) - Step((age - from - 10) / 85));
            if (area <= 0) continue;
            var efficiency = curve.At(from + 5);
            var gain = (area * ((13 * Weather(day.Date) * efficiency) - 1.1)) - (from == 0 ? 0.6 * area : 0);
            yield return new LeafAgeRow(day.Date, from, from + 10, area, 7 * area, gain, efficiency);
        }
    }

    private static double Step(double x)
    {
        x = Math.Clamp(x, 0, 1);
        return x * x * (3 - (2 * x));
    }

    /// <summary>Bright and dull days in turn, within a year's course of the sun; from 0.2 to 1.</summary>
    private static double Weather(DateOnly date) =>
        (0.62 + (0.38 * Math.Sin(date.DayNumber * 2.3) * Math.Sin(date.DayNumber * 0.37))) *
        (0.72 + (0.28 * Math.Cos((date.DayOfYear - 172) * 2 * Math.PI / 365)));
}
