using CanopySim.Growth;
using CanopySim.Plants;

namespace CanopySim.Assessment;

/// <summary>How the tips of a canopy stand on an evening, and what holds them back.</summary>
public sealed record TipSurvey
{
    // Finished internodes that are told, from the tip down, and how many of them each end of the trend means. Assumed.
    private const int InternodesTold = 6;
    private const int InternodesOfTrend = 3;

    public required DateOnly Date { get; init; }

    /// <summary>Share of the primary shoots whose tips grow freely [0 to 1].</summary>
    public required double GrowingFreely { get; init; }

    /// <summary>Share whose tips slow down [0 to 1].</summary>
    public required double Slowing { get; init; }

    /// <summary>Share whose tips stopped or were cut off [0 to 1].</summary>
    public required double Stopped { get; init; }

    /// <summary>
    /// Mean lengths of the last internodes that are done elongating, the youngest first, of the shoots whose tips have
    /// not stopped [m]; fewer where shoots are short.
    /// </summary>
    public required IReadOnlyList<double> LastInternodes { get; init; }

    /// <summary>Share of the soil's transpirable water that is left [0 to 1].</summary>
    public required double SoilWaterFraction { get; init; }

    /// <summary>Carbon that main axes got over what they could use, smoothed over a week, vines' mean [1].</summary>
    public required double MainSupplyIndex { get; init; }

    /// <summary>
    /// The youngest three of <see cref="LastInternodes"/> over the three below them [1]; null where shoots have fewer.
    /// </summary>
    public double? InternodeTrend => LastInternodes.Count == InternodesTold
        ? LastInternodes.Take(InternodesOfTrend).Sum() / LastInternodes.Skip(InternodesOfTrend).Sum()
        : null;

    /// <summary>Surveys the tips; null where no shoot stands.</summary>
    public static TipSurvey? Of(DateOnly date, Canopy canopy, GrowthParameters growth, double soilWaterFraction)
    {
        var count = new int[3];
        var (sums, seen) = (new double[InternodesTold], new int[InternodesTold]);
        foreach (var shoot in canopy.PrimaryShoots())
        {
            var state = ShootTip.Of(shoot, growth);
            count[(int)state]++;
            if (state != TipState.Stopped) AddInternodes(shoot, growth, sums, seen);
        }

        double all = count.Sum();
        if (all == 0) return null;
        return new TipSurvey
        {
            Date = date,
            GrowingFreely = count[(int)TipState.GrowingFreely] / all,
            Slowing = count[(int)TipState.Slowing] / all,
            Stopped = count[(int)TipState.Stopped] / all,
            LastInternodes = [.. sums.Zip(seen).TakeWhile(place => place.Second > 0)
                .Select(place => place.First / place.Second)],
            SoilWaterFraction = soilWaterFraction,
            MainSupplyIndex = canopy.Vines.Average(vine => vine.Carbon.MainSupplyIndex),
        };
    }

    private static void AddInternodes(Shoot shoot, GrowthParameters growth, double[] sums, int[] seen)
    {
        var finished = shoot.Phytomers.Count - 1;
        while (finished >= 0 && shoot.Phytomers[finished].ThermalAge < growth.InternodeElongation) finished--;
        for (var i = 0; i < InternodesTold && finished - i >= 0; i++)
        {
            sums[i] += shoot.Phytomers[finished - i].InternodeLength;
            seen[i]++;
        }
    }
}
