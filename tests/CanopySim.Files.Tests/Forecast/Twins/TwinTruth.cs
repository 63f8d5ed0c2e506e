using CanopySim.Fitting;
using CanopySim.Growth;
using CanopySim.Numerics;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Forecast.Twins;

/// <summary>
/// A vine that a forecast has to find: its season is known, and only notes of it and a station's weather are told. Unless it shares the
/// forecast's model it answers to another base temperature, its leaves age by another curve, the station is off, and who counts its
/// nodes is off by about one. Sizes of these are assumed.
/// </summary>
internal sealed class TwinTruth
{
    // How far the base temperature may be off at most [K], and the logarithm of the pace of aging.
    private const double BaseTemperatureSpread = 3;
    private const double AgingSpread = 0.25;

    // Standard deviations of the station: of its whole year and of each day's extremes [K], of its radiation as a share.
    private const double StationBias = 0.5;
    private const double StationNoise = 0.7;
    private const double StationRadiationBias = 0.05;

    // Standard deviation of the warmth of a year [K].
    private const double SeasonSpread = 0.7;

    private readonly TwinBlock _block;
    private readonly ulong _seed;

    /// <param name="block">The block.</param>
    /// <param name="seed">What is drawn by chance.</param>
    /// <param name="sharesModel">True for a vine of the forecast's own model under its own weather.</param>
    public TwinTruth(TwinBlock block, ulong seed, bool sharesModel)
    {
        (_block, _seed, SharesModel) = (block, seed, sharesModel);
        var year = WithWarmth(WeatherGenerator.Generate(block.Climate, seed, block.FirstDay, 365));
        StationWeather = sharesModel ? year : ByStation(year);
        var traits = Enumerable.Range(0, VineTraits.All.Count).Select(trait => Normal("twin's trait", trait)).ToArray();
        Scenario = VineTraits.Apply(sharesModel ? block.Scenario : OtherModel(block.Scenario), traits);
        Season = Simulation.Run(
            Scenario, WeatherBuilder.Complete(year, Scenario.Weather, Scenario.Site, block.UtcOffsetHours), block.UtcOffsetHours,
            new SeasonOptions { Quality = Quality.Draft, Threads = 2, LeavesOn = [LeafDay], IsAssessed = false });
    }

    /// <summary>The day on which blades are measured.</summary>
    public DateOnly LeafDay => new(_block.FirstDay.Year, 5, 19);

    public bool SharesModel { get; }

    public Scenario Scenario { get; }

    public SeasonResult Season { get; }

    /// <summary>The year as the station has it.</summary>
    public WeatherRecord StationWeather { get; }

    /// <summary>Nodes by which each count is off.</summary>
    public double Miscount => SharesModel ? 0 : Math.Sign(Normal("twin's counter")) * 1.0;

    public StageDates Dates => Season.Summary.Dates;

    public double? LeafAreaAtVeraison => Dates.Veraison is { } veraison
        ? Season.Days.Single(day => day.Date == veraison).LeafAreaM2PerVine
        : null;

    public double Normal(string purpose, long a = 0, long b = 0) => SeededValue.Normal(_seed, purpose, a, b);

    private WeatherRecord WithWarmth(WeatherRecord made) => WeatherShift.Apply(
        made, new WeatherOptions { File = "", Warming = SeasonSpread * Normal("twin's season") }, _block.Scenario.Site);

    private WeatherRecord ByStation(WeatherRecord year)
    {
        var (bias, bright) = (StationBias * Normal("station's bias"), 1 + (StationRadiationBias * Normal("station's light")));
        return year with
        {
            Days =
            [
                .. year.Days.Select((day, i) =>
                    Read(day, bias + (StationNoise * Normal("low", i)), bias + (StationNoise * Normal("high", i)), bright)),
            ],
        };
    }

    private static DailyReading Read(DailyReading day, double low, double high, double bright)
    {
        var minimum = day.MinimumTemperatureCelsius + low;
        return day with
        {
            MinimumTemperatureCelsius = minimum,
            MaximumTemperatureCelsius = Math.Max(minimum, day.MaximumTemperatureCelsius + high),
            GlobalRadiation = day.GlobalRadiation * bright,
        };
    }

    // As much development in a usual year, by another base: sums and intervals take the ratio of its units.
    private Scenario OtherModel(Scenario scenario)
    {
        var growth = scenario.Growth;
        var other = growth.BaseTemperature + (BaseTemperatureSpread * ((2 * SeededValue.Uniform(_seed, "twin's base")) - 1));
        var spring = Ratio((3, 28), (5, 18));
        var summer = Ratio((5, 18), (7, 26));
        var stretch = Math.Exp(AgingSpread * ((2 * SeededValue.Uniform(_seed, "twin's aging")) - 1));
        return scenario with
        {
            Growth = growth with
            {
                BaseTemperature = other,
                Phyllochron = growth.Phyllochron * spring,
                PreformedPhyllochron = growth.PreformedPhyllochron * spring,
                BladeExpansion = growth.BladeExpansion * spring,
                InternodeElongation = growth.InternodeElongation * spring,
                LateralDelay = growth.LateralDelay * spring,
                DeclineAfterBloom = growth.DeclineAfterBloom * summer,
                ReleasedDecline = growth.ReleasedDecline * summer,
            },
            Cultivar = scenario.Cultivar with
            {
                BloomSum = scenario.Cultivar.BloomSum * spring,
                VeraisonSum = scenario.Cultivar.VeraisonSum * summer,
            },
            LeafAge = new LeafAgeCurve
            {
                Points = [.. scenario.LeafAge.Points.Select(point => point with { Age = point.Age * stretch })],
            },
        };

        double Ratio((int Month, int Day) from, (int Month, int Day) to) =>
            _block.UsualUnits(from, to, other) / _block.UsualUnits(from, to, growth.BaseTemperature);
    }
}
