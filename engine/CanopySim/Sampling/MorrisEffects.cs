namespace CanopySim.Sampling;

/// <summary>
/// What a factor does to an output over its whole distribution, in the output's unit. Mu is the mean effect; mu* the mean of its
/// size, which effects of both signs do not cancel in; sigma its standard deviation, large where the effect depends on the other
/// factors or is not a straight line.
/// </summary>
public sealed record MorrisEffect(Estimate Mu, Estimate MuStar, Estimate Sigma);

/// <summary>
/// Elementary effects (y(x + Δ) − y(x)) / Δ from the outputs of a <see cref="MorrisDesign"/>: mu and sigma of Morris 1991,
/// doi:10.1080/00401706.1991.10484804, mu* of Campolongo, Cariboni &amp; Saltelli 2007, doi:10.1016/j.envsoft.2006.10.004. Δ is a share of the
/// factor's distribution. Intervals draw trajectories again.
/// </summary>
public sealed record MorrisEffects
{
    /// <summary>By factor; empty where no trajectory is left.</summary>
    public required IReadOnlyList<MorrisEffect> Factors { get; init; }

    /// <summary>Trajectories that counted.</summary>
    public required int Trajectories { get; init; }

    /// <summary>Trajectories that were left out because one of their outputs is missing.</summary>
    public required int DroppedTrajectories { get; init; }

    /// <summary>The effects on one output.</summary>
    /// <param name="points">The design's points, [point][factor].</param>
    /// <param name="outputs">In the order of the points; null or not finite where an item failed.</param>
    /// <param name="settings">Of the intervals.</param>
    /// <exception cref="ArgumentException">Points and outputs are not those of one design.</exception>
    public static MorrisEffects Of(double[][] points, IReadOnlyList<double?> outputs, BootstrapSettings settings)
    {
        if (points.Length == 0 || points.Length != outputs.Count)
            throw new ArgumentException($"{outputs.Count} outputs of {points.Length} points; expected one for every point of a design", nameof(outputs));
        var factors = points[0].Length;
        var length = factors + 1;
        if (points.Length % length != 0) throw new ArgumentException($"{points.Length} points; expected a multiple of {length}", nameof(points));

        var effects = new List<double[]>();
        for (var first = 0; first < points.Length; first += length)
            if (Trajectory(points, outputs, first, factors) is { } complete) effects.Add(complete);
        var estimates = effects.Count > 0 ? Bootstrap.Of(effects.Count, chosen => Moments(effects, chosen, factors), settings) : [];
        return new MorrisEffects
        {
            Factors =
            [
                .. Enumerable.Range(0, estimates.Length / 3).Select(factor =>
                    new MorrisEffect(estimates[3 * factor], estimates[(3 * factor) + 1], estimates[(3 * factor) + 2])),
            ],
            Trajectories = effects.Count,
            DroppedTrajectories = (points.Length / length) - effects.Count,
        };
    }

    // The effect of each factor, or null where an output is missing.
    private static double[]? Trajectory(double[][] points, IReadOnlyList<double?> outputs, int first, int factors)
    {
        var effects = new double[factors];
        for (var point = first; point <= first + factors; point++)
            if (outputs[point] is not { } value || !double.IsFinite(value)) return null;
        for (var point = first + 1; point <= first + factors; point++)
        {
            var changed = Changed(points[point - 1], points[point]);
            effects[changed] = (outputs[point]!.Value - outputs[point - 1]!.Value) / (points[point][changed] - points[point - 1][changed]);
        }

        return effects;
    }

    private static int Changed(double[] from, double[] to)
    {
        int[] changed = [.. Enumerable.Range(0, from.Length).Where(factor => from[factor] != to[factor])];
        return changed.Length == 1
            ? changed[0]
            : throw new ArgumentException($"{changed.Length} factors change from one point to the next; expected one", nameof(to));
    }

    // Mu, mu* and sigma of each factor in turn; sigma by n − 1.
    private static double[] Moments(List<double[]> effects, ReadOnlySpan<int> chosen, int factors)
    {
        var moments = new double[3 * factors];
        for (var factor = 0; factor < factors; factor++)
        {
            var (sum, size) = (0.0, 0.0);
            foreach (var row in chosen)
            {
                sum += effects[row][factor];
                size += Math.Abs(effects[row][factor]);
            }

            var mean = sum / chosen.Length;
            var squares = 0.0;
            foreach (var row in chosen) squares += (effects[row][factor] - mean) * (effects[row][factor] - mean);
            moments[3 * factor] = mean;
            moments[(3 * factor) + 1] = size / chosen.Length;
            moments[(3 * factor) + 2] = chosen.Length > 1 ? Math.Sqrt(squares / (chosen.Length - 1)) : 0;
        }

        return moments;
    }
}
