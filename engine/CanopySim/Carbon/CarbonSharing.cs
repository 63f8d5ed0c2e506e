namespace CanopySim.Carbon;

/// <summary>What each sink of a vine was given on a day [g CH₂O], and the reserves behind it.</summary>
public readonly record struct SharedCarbon(
    double MainAxes,
    double Laterals,
    double Fruit,
    double Thickening,
    double Roots,
    double ToReserves,
    double FromReserves,
    double Overflow,
    double MaintenancePaid,
    double FromPerennials,
    double LeafSupply);

/// <summary>Where the season stands, as far as carbon minds.</summary>
public enum CarbonSeason
{
    Spring,
    FruitGrowth,
    Ripening,
}

/// <summary>
/// Shares a day's carbon: leaves' net gain pays maintenance; what remains goes to the sinks by weight and demand. Before bloom
/// reserves add what main axes lack, after veraison what a short-fed crop lacks, both within a daily share of what is usable.
/// A deficit is paid from reserves, first the usable, then all; when those are gone maintenance throttles, and only the
/// leaves' own loss can then cost permanent wood.
/// </summary>
public sealed class CarbonSharing(CarbonParameters carbon)
{
    // Reserves are spent on a ripening crop only when it gets less than this share of its demand. Assumed.
    private const double FruitShareBeforeReserves = 0.7;

    // Reserves aim to be full in about so many days. Assumed.
    private const double RefillDays = 20;

    /// <summary>What the vine's reserves could take on a day in a season [g CH₂O].</summary>
    public double ReserveDemand(VineCarbon vine, CarbonSeason season) => season == CarbonSeason.Spring
        ? 0
        : Math.Max(0, (carbon.ReserveCeiling * vine.ReferenceDryMass) - vine.Reserves) / RefillDays;

    /// <summary>Shares the day's carbon.</summary>
    /// <param name="vine">The vine's reserves.</param>
    /// <param name="netAssimilation">The leaves' gain over 24 hours [g CH₂O].</param>
    /// <param name="maintenance">Maintenance that falls due [g CH₂O].</param>
    /// <param name="demands">What the sinks could take.</param>
    /// <param name="season">Decides the fruit's weight and who may draw on reserves.</param>
    /// <param name="warmth">Share of the fastest development that the day's temperature allows [0 to 1].</param>
    public SharedCarbon Share(
        VineCarbon vine, double netAssimilation, double maintenance, SinkDemands demands, CarbonSeason season, double warmth)
    {
        var supply = netAssimilation - maintenance;
        if (supply < 0) return PayDeficit(vine, netAssimilation, maintenance, demands, season, warmth);
        Span<double> wanted = [demands.MainAxes, demands.Laterals, demands.Fruit, demands.Thickening, demands.Roots, demands.Reserves];
        var fruitWeight = season == CarbonSeason.Ripening ? carbon.RipeningFruitWeight : carbon.FruitWeight;
        Span<double> weights = [carbon.MainAxisWeight, carbon.LateralWeight, fruitWeight, carbon.ThickeningWeight, carbon.RootWeight, carbon.ReserveWeight];
        Span<double> given = stackalloc double[6];
        var left = SinkSharing.Share(supply, wanted, weights, given);
        var room = Math.Max(0, (carbon.ReserveCeiling * vine.ReferenceDryMass) - vine.Reserves - given[5]);
        var stored = Math.Min(left, room);
        var shared = new SharedCarbon(
            given[0], given[1], given[2], given[3], given[4], given[5] + stored, 0, left - stored, maintenance, 0, supply);
        return AddReserves(shared, vine, demands, season, warmth);
    }

    private SharedCarbon PayDeficit(
        VineCarbon vine, double netAssimilation, double maintenance, SinkDemands demands, CarbonSeason season, double warmth)
    {
        // The leaves' own loss comes first: Rd is spent already.
        var leafLoss = Math.Max(0, -netAssimilation);
        var gain = Math.Max(0, netAssimilation);
        var fromPerennials = Math.Max(0, leafLoss - vine.Reserves);
        var reserves = Math.Max(0, vine.Reserves - leafLoss);
        var paid = Math.Min(maintenance, gain + reserves);
        var drawn = Math.Min(vine.Reserves, leafLoss) + Math.Max(0, paid - gain);
        var shared = new SharedCarbon(0, 0, 0, 0, 0, 0, drawn, 0, paid, fromPerennials, netAssimilation - paid);
        return AddReserves(shared, vine, demands, season, warmth);
    }

    private SharedCarbon AddReserves(SharedCarbon shared, VineCarbon vine, SinkDemands demands, CarbonSeason season, double warmth)
    {
        var usable = Math.Max(0, vine.Reserves - shared.FromReserves - (carbon.UnusableReserves * vine.ReferenceDryMass));
        if (season == CarbonSeason.Spring)
        {
            var mobilized = Math.Min(carbon.SpringMobilization * usable * warmth, demands.MainAxes - shared.MainAxes);
            return shared with { MainAxes = shared.MainAxes + mobilized, FromReserves = shared.FromReserves + mobilized };
        }

        if (season != CarbonSeason.Ripening) return shared;
        var lack = (FruitShareBeforeReserves * demands.Fruit) - shared.Fruit;
        if (lack <= 0) return shared;
        var drawn = Math.Min(carbon.RipeningMobilization * usable, lack);
        return shared with { Fruit = shared.Fruit + drawn, FromReserves = shared.FromReserves + drawn };
    }
}
