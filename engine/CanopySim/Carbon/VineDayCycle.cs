using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Plants;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Carbon;

/// <summary>Settles the account of one vine for one day: prices the day's potential growth, shares the carbon, grows the organs.</summary>
public sealed class VineDayCycle(Scenario scenario)
{
    // What roots and permanent wood can grow in a day at full warmth, of their own mass. Assumed.
    private const double RootGrowthPerDay = 0.0015;

    private readonly CarbonParameters _carbon = scenario.Carbon;
    private readonly CarbonSharing _sharing = new(scenario.Carbon);
    private readonly OrganExpansion _expansion = new(scenario.Growth, scenario.Carbon);
    private readonly StemThickening _thickening =
        new(scenario.Carbon, [.. TrellisLayout.WallsOf(scenario.Trellis).Select(wall => wall.Hangs && wall.IsHeld)]);
    private readonly BerryGrowth _berries = new(scenario.Fruit);

    /// <summary>Settles the day.</summary>
    /// <param name="vine">The vine.</param>
    /// <param name="weather">The day's weather.</param>
    /// <param name="day">What the day offers to growth.</param>
    /// <param name="fruitDemand">What the fruit could take.</param>
    /// <param name="season">Where the season stands.</param>
    /// <param name="warmth">Share of the fastest development that the day's temperature allows [0 to 1].</param>
    /// <param name="netAssimilation">The leaves' gain over 24 hours [g CH₂O].</param>
    /// <param name="lost">What was shed, cut or killed since the account of the day before.</param>
    /// <param name="stockBefore">Carbon of the vine when the account of the day before was closed [g C].</param>
    public VineDay Settle(
        Vine vine, WeatherDay weather, GrowthConditions day, FruitDemand fruitDemand, CarbonSeason season, double warmth,
        double netAssimilation, LostMass lost, double stockBefore)
    {
        var maintenance = Maintenance.OfDay(vine, weather, _carbon);
        var growth = _expansion.Prepare(vine, day);
        var thickening = _thickening.Prepare(vine, warmth);
        var demands = new SinkDemands(
            growth.MainAxes,
            growth.Laterals,
            fruitDemand.Price(_carbon),
            thickening * _carbon.StemCost,
            RootGrowthPerDay * warmth * vine.Carbon.ReferenceDryMass * _carbon.RootCost,
            _sharing.ReserveDemand(vine.Carbon, season));
        var shared = _sharing.Share(vine.Carbon, netAssimilation, maintenance, demands, season, warmth);
        var grown = _expansion.Grow(vine, Part(shared.MainAxes, demands.MainAxes), Part(shared.Laterals, demands.Laterals), day.Date);
        var fruitShare = Part(shared.Fruit, demands.Fruit);
        BerryGrowth.Grow(vine.Crop, fruitDemand, fruitShare);
        var thickened = StemThickening.Grow(vine, Part(shared.Thickening, demands.Thickening));
        var rootGrowth = (shared.Roots / _carbon.RootCost) + (shared.Overflow / _carbon.StemCost);
        vine.Carbon.PerennialDryMass += rootGrowth - (shared.FromPerennials * CarbonContent.Carbohydrate / CarbonContent.Wood);
        vine.Carbon.Reserves += shared.ToReserves - shared.FromReserves;
        SmoothIndices(vine, shared, demands);

        var structural = (grown.LeafDryMass * CarbonContent.Leaf) + (grown.StemDryMass * CarbonContent.Wood)
            + (thickened * CarbonContent.Wood)
            + (rootGrowth * CarbonContent.Wood)
            + (fruitShare * ((fruitDemand.Structure * CarbonContent.FruitStructure) + (fruitDemand.Sugar * CarbonContent.Carbohydrate)));
        var spent = shared.MainAxes + shared.Laterals + shared.Fruit + shared.Thickening + shared.Roots + shared.Overflow;
        var growthRespiration = (spent * CarbonContent.Carbohydrate) - structural;
        var otherSinks = shared.MainAxes + shared.Laterals + shared.Thickening + shared.Roots;
        return new VineDay
        {
            NetAssimilation = netAssimilation,
            Maintenance = shared.MaintenancePaid,
            GrowthRespirationCarbon = growthRespiration,
            RipeningCapacity = Math.Max(0, shared.LeafSupply - otherSinks) / _carbon.SugarCost,
            Growth = grown,
            FruitDemand = fruitDemand,
            FruitShare = fruitShare,
            Ledger = new CarbonLedger(
                stockBefore,
                CarbonStock.Of(vine, _carbon),
                netAssimilation * CarbonContent.Carbohydrate,
                shared.MaintenancePaid * CarbonContent.Carbohydrate,
                growthRespiration,
                CarbonLedger.CarbonOf(lost)),
        };
    }

    /// <summary>Fruit's demand on a day, by its stage [g].</summary>
    public FruitDemand FruitDemand(Vine vine, double progressBefore, double progressAfter, int? daysSinceVeraison, WeatherDay weather)
    {
        if (vine.Crop.Berries <= 0) return default;
        if (daysSinceVeraison is not { } days) return _berries.StructureDemand(vine.Crop, progressBefore, progressAfter);
        var factor = 0.0;
        foreach (var hour in weather.Hours) factor += LoadingTemperature.Factor(hour.AirTemperatureCelsius) / weather.Hours.Count;
        return _berries.SugarDemand(vine.Crop, days, factor);
    }

    private static void SmoothIndices(Vine vine, SharedCarbon shared, SinkDemands demands)
    {
        var main = demands.MainAxes > 0 ? shared.MainAxes / demands.MainAxes : 1;
        var pull = demands.MainAxes + (0.5 * demands.Laterals) + demands.Fruit + (0.5 * demands.Thickening);
        var all = pull > 0 ? Math.Max(0, shared.LeafSupply + shared.FromReserves) / pull : 1;
        vine.Carbon.SmoothIndices(main, all);
    }

    private static double Part(double given, double wanted) => wanted > 0 ? given / wanted : 1;
}
