using CanopySim.Numerics;

namespace CanopySim.Sampling;

/// <summary>
/// Trajectories that change one factor at a time, each factor once: Morris 1991, doi:10.1080/00401706.1991.10484804. A trajectory
/// begins at a random level of every factor and takes the factors in a random order, each by half the levels up or down. The levels
/// are the middles of p equal shares of [0, 1), not the paper's 0 to 1, so that distributions without ends have a value at each; a
/// step is then ½ for any even p.
/// </summary>
public static class MorrisDesign
{
    /// <summary>Length of a step, as share of a factor's distribution.</summary>
    public const double Step = 0.5;

    /// <summary>Points of a design: a trajectory has one more than factors.</summary>
    public static int Count(int trajectories, int factors) => trajectories * (factors + 1);

    /// <summary>
    /// The points, [point][factor] in (0, 1), trajectory after trajectory; the same bits for the same seed.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">No trajectory, no factor, fewer than two levels or an odd number of them.</exception>
    public static double[][] Points(int trajectories, int factors, int levels, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(trajectories);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factors);
        ArgumentOutOfRangeException.ThrowIfLessThan(levels, 2);
        if (levels % 2 != 0) throw new ArgumentOutOfRangeException(nameof(levels), levels, "expected an even number of levels");
        var points = new double[Count(trajectories, factors)][];
        for (var trajectory = 0; trajectory < trajectories; trajectory++)
        {
            var order = Shuffle.Order(factors, seed, "morris order", trajectory);
            var at = new int[factors];
            for (var factor = 0; factor < factors; factor++)
                at[factor] = (int)(SeededValue.Uniform(seed, "morris start", trajectory, factor) * levels);
            var first = trajectory * (factors + 1);
            points[first] = Place(at, levels);
            for (var step = 0; step < factors; step++)
            {
                // From the lower half there is room only upward, from the upper one only downward.
                at[order[step]] += at[order[step]] < levels / 2 ? levels / 2 : -levels / 2;
                points[first + step + 1] = Place(at, levels);
            }
        }

        return points;
    }

    private static double[] Place(int[] at, int levels) => [.. at.Select(level => (level + 0.5) / levels)];
}
