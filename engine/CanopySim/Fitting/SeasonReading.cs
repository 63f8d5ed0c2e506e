using CanopySim.Results;

namespace CanopySim.Fitting;

/// <summary>Reads from a simulated season what someone in its rows would have noted.</summary>
public static class SeasonReading
{
    // A stage that the season's last day does not come near lies so much later, for want of better [d]. Assumed.
    private const double DaysToUnseenStage = 10;

    // Days whose warmth stands for those to come [d].
    private const int RecentDays = 7;

    // Blades of the middle of a shoot that people pick as full-grown: the largest third. Assumed.
    private const double LargestShare = 1.0 / 3;

    // Sugar of berries before veraison, when none is simulated [Brix]: common practice, no source.
    private const double GreenBerries = 5;

    /// <summary>What the season shows, in the unit of the observation.</summary>
    /// <param name="observation">What is asked for.</param>
    /// <param name="season">The season, run to the day of the observation or farther.</param>
    /// <param name="scenario">The scenario that it was run with.</param>
    public static double Predict(Observation observation, SeasonResult season, Scenario scenario)
    {
        var dates = season.Summary.Dates;
        return observation.Quantity switch
        {
            ObservedQuantity.ShootLength => (RowOn(observation.Date, season)?.ShootLengthCm ?? 0) / 100,
            ObservedQuantity.Nodes => RowOn(observation.Date, season)?.NodesPerShoot ?? 0,
            ObservedQuantity.Budbreak => dates.Budbreak?.DayNumber ?? season.Summary.Dates.End.DayNumber + DaysToUnseenStage,
            ObservedQuantity.Bloom => dates.Bloom?.DayNumber ?? Later(season, scenario.Cultivar.BloomSum),
            ObservedQuantity.Veraison =>
                dates.Veraison?.DayNumber ?? Later(season, scenario.Cultivar.BloomSum + scenario.Cultivar.VeraisonSum),
            ObservedQuantity.LeafSize => LeafSize(observation.Date, season),
            ObservedQuantity.ClustersPerShoot => scenario.Fruit.ClustersPerShoot,
            ObservedQuantity.Sugar => RowOn(observation.Date, season)?.SugarBrix ?? GreenBerries,
            _ => throw new ArgumentOutOfRangeException(nameof(observation), observation.Quantity, "unknown quantity"),
        };
    }

    private static DayRow? RowOn(DateOnly date, SeasonResult season) =>
        season.Days.LastOrDefault(row => row.Date <= date);

    // Where the weather ends before the stage, the warmth of the last days goes on.
    private static double Later(SeasonResult season, double sumFromBudbreak)
    {
        var (rows, end) = (season.Days, season.Summary.Dates.End.DayNumber);
        if (season.Summary.Dates.Budbreak is null || rows.Count <= RecentDays) return end + (3 * DaysToUnseenStage);
        var rate = (rows[^1].ThermalTimeDegCD - rows[^(RecentDays + 1)].ThermalTimeDegCD) / RecentDays;
        var rest = sumFromBudbreak - rows[^1].ThermalTimeDegCD;
        return rate > 0 ? end + Math.Max(1, rest / rate) : end + (3 * DaysToUnseenStage);
    }

    private static double LeafSize(DateOnly date, SeasonResult season)
    {
        var areas = season.Leaves.Where(leaf => leaf.Date == date && leaf.Order == 1)
            .Select(leaf => leaf.AreaCm2).OrderDescending().ToList();
        return areas.Count > 0 ? areas.Take(Math.Max(1, (int)(LargestShare * areas.Count))).Average() * 1e-4 : 0;
    }
}
