using CanopySim.Growth;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Every season of the validation. What studies share stands here once, so that nothing runs twice.</summary>
internal static class SeasonCatalogue
{
    private const string Block = "warm-valley";
    private const ulong FirstSeed = 1;

    /// <summary>Days from bloom to the toppings by nodes.</summary>
    public const int DaysFromBloomToTopping = 10;

    private static readonly (int, int) FirstOfOctober = (10, 1);
    private static readonly (int, int) MiddleOfOctober = (10, 15);

    /// <summary>The block in five generated weathers, to 22 Brix or 1 October.</summary>
    public static IReadOnlyList<SeasonCase> Hedges { get; } =
        [.. Seeds().Select(seed => Valley($"hedge, weather {seed}", scenario => scenario, FirstOfOctober, seed))];

    /// <summary>The same, cut at the top wire when shoots reach 1.2 m.</summary>
    public static IReadOnlyList<SeasonCase> ToppedHedges { get; } =
        [.. Seeds().Select(seed => Valley($"topped hedge, weather {seed}", AtTopWire, FirstOfOctober, seed))];

    /// <summary>The first weather to leaf fall, nothing harvested, leaves listed every third day.</summary>
    public static SeasonCase WholeYear { get; } = new()
    {
        Name = "hedge to leaf fall",
        Block = Block,
        WeatherSeed = FirstSeed,
        Change = (scenario, _) => Unharvested(scenario),
        LeavesOn = year => [new DateOnly(year, 4, 30), .. EveryThirdDay(new DateOnly(year, 7, 1), new DateOnly(year, 11, 30))],
    };

    /// <summary>Free water and a decline after bloom six times slower.</summary>
    public static SeasonCase NeverStops { get; } = Valley("never stops", scenario => Unharvested(scenario) with
    {
        Growth = scenario.Growth with { DeclineAfterBloom = 1500 },
        Soil = scenario.Soil with { IrrigateBelow = 0.8 },
    }, MiddleOfOctober);

    /// <summary>No irrigation on a soil of 120 mm.</summary>
    public static SeasonCase Dry { get; } = Valley("dry", scenario => Unharvested(scenario) with
    {
        Soil = scenario.Soil with { IrrigateBelow = 0, TranspirableWater = 120 },
    }, MiddleOfOctober);

    /// <summary>Leaves that stay at their best from 20 days on.</summary>
    public static SeasonCase FlatCurve { get; } = Valley("flat curve", scenario => scenario with { LeafAge = Flat(scenario.LeafAge) }, FirstOfOctober);

    public static SeasonCase ToppedWithLaterals { get; } =
        Valley("topped at 12 nodes", (scenario, weather) => ToppedAfterBloom(scenario, weather, 12), MiddleOfOctober);

    public static SeasonCase ToppedWithoutLaterals { get; } =
        Valley("topped at 12 nodes, no laterals", (scenario, weather) => WithoutLaterals(ToppedAfterBloom(scenario, weather, 12)), MiddleOfOctober);

    /// <summary>Berries a cluster against the block's own, for <see cref="Crops"/>.</summary>
    public static IReadOnlyList<double> CropFactors { get; } = [0.5, 1, 1.5, 2, 3, 4.5];

    /// <summary>The hedge with each crop, to 1 October, nothing harvested.</summary>
    public static IReadOnlyList<SeasonCase> Crops { get; } = [.. CropFactors.Select(factor => Valley(
        $"crop times {NumberSay.Typed(factor)}", scenario => WithCrop(Unharvested(scenario), factor), FirstOfOctober))];

    /// <summary>Shoots a meter of canopy from open to dense, for <see cref="Densities"/>.</summary>
    public static IReadOnlyList<double> ShootsPerMeter { get; } = [10, 15, 25, 40];

    /// <summary>The hedge with each number of shoots, to 1 October, nothing harvested.</summary>
    public static IReadOnlyList<SeasonCase> Densities { get; } = [.. ShootsPerMeter.Select(shoots => WithShoots(shoots))];

    /// <summary>Ten days after bloom cut to so many leaves, no laterals, half the crop: until the end of October.</summary>
    public static SeasonCase FewLeaves(int leaves) => leaves == 6 ? SixLeaves : TwelveLeaves;

    /// <summary>The same with a quarter of the crop.</summary>
    public static SeasonCase SixLeavesQuarterCrop { get; } = CroppedTopped(6, 0.25);

    public static SeasonCase TwelveLeavesQuarterCrop { get; } = CroppedTopped(12, 0.25);

    /// <summary>The same with the whole crop.</summary>
    public static SeasonCase SixLeavesWholeCrop { get; } = CroppedTopped(6, 1);

    public static SeasonCase TwelveLeavesWholeCrop { get; } = CroppedTopped(12, 1);

    /// <summary>Vigor as on the vine that never stops, but no irrigation on a soil of 100 mm: only drought can stop it.</summary>
    public static SeasonCase VigorousAndDry { get; } = Valley("vigorous and dry", scenario => Unharvested(scenario) with
    {
        Growth = scenario.Growth with { DeclineAfterBloom = 1500 },
        Soil = scenario.Soil with { IrrigateBelow = 0, TranspirableWater = 100 },
    }, MiddleOfOctober);

    private static SeasonCase SixLeaves { get; } = CroppedTopped(6, 0.5);

    private static SeasonCase TwelveLeaves { get; } = CroppedTopped(12, 0.5);

    /// <summary>A block of a study of its own: first generated weather, nothing harvested.</summary>
    public static SeasonCase Valley(
        string name, Func<Scenario, Scenario> change, (int, int) until, ulong seed = FirstSeed, double work = 27 * 8) => new()
        {
            Name = name,
            Block = Block,
            WeatherSeed = seed,
            Change = (scenario, _) => change(scenario),
            Until = until,
            Work = work,
        };

    public static Scenario Unharvested(Scenario scenario) =>
        scenario with { Season = scenario.Season with { Harvest = HarvestRule.None } };

    public static Scenario WithCrop(Scenario scenario, double factor) =>
        scenario with { Fruit = scenario.Fruit with { BerriesPerCluster = factor * scenario.Fruit.BerriesPerCluster } };

    /// <summary>The hedge with so many shoots a meter of canopy, to 1 October, nothing harvested.</summary>
    public static SeasonCase WithShoots(double perMeter, Func<Scenario, Scenario>? change = null) => Valley(
        $"{NumberSay.Typed(perMeter)} shoots a meter",
        scenario =>
        {
            var vine = Unharvested(scenario) with { CanopyWork = scenario.CanopyWork with { ShootsPerMeter = perMeter } };
            return change is null ? vine : change(vine);
        },
        FirstOfOctober, work: 2 * perMeter * 8);

    private static IEnumerable<ulong> Seeds() => [1, 2, 3, 4, 5];

    private static SeasonCase Valley(string name, Func<Scenario, WeatherSeries, Scenario> change, (int, int) until) =>
        new() { Name = name, Block = Block, WeatherSeed = FirstSeed, Change = change, Until = until };

    private static SeasonCase CroppedTopped(int leaves, double crop) => Valley(
        $"{leaves} leaves a shoot, crop times {crop}",
        (scenario, weather) => WithCrop(WithoutLaterals(ToppedAfterBloom(Unharvested(scenario), weather, leaves)), crop),
        (10, 31));

    private static Scenario AtTopWire(Scenario scenario) => WithTopping(
        scenario, new Topping { WhenShootsReach = 1.2, Height = scenario.Trellis.TopWireHeightOrDefault });

    public static Scenario ToppedAfterBloom(Scenario scenario, WeatherSeries weather, int nodes) =>
        WithTopping(scenario, new Topping { On = ValidationWeather.Bloom(scenario, weather).AddDays(DaysFromBloomToTopping), Nodes = nodes });

    private static Scenario WithTopping(Scenario scenario, Topping topping) =>
        scenario with { CanopyWork = scenario.CanopyWork with { Topping = [topping] } };

    private static Scenario WithoutLaterals(Scenario scenario) =>
        scenario with { Growth = scenario.Growth with { LateralLeaves = 0 } };

    private static LeafAgeCurve Flat(LeafAgeCurve curve)
    {
        const double FlatFromDays = 20;
        return curve with { Points = [.. curve.Points.Where(point => point.Age < FlatFromDays), new LeafAgePoint(FlatFromDays, 1)] };
    }

    private static IEnumerable<DateOnly> EveryThirdDay(DateOnly from, DateOnly to)
    {
        for (var day = from; day <= to; day = day.AddDays(3)) yield return day;
    }
}
