namespace CanopySim.Carbon;

/// <summary>
/// Shares carbon between sinks: each gets by weight × demand, none more than its demand; what a full sink leaves is shared
/// again between the others.
/// </summary>
public static class SinkSharing
{
    /// <summary>Fills <paramref name="allocated"/> and returns what is left when every sink is full, in the unit of the supply.</summary>
    public static double Share(double supply, ReadOnlySpan<double> demands, ReadOnlySpan<double> weights, Span<double> allocated)
    {
        allocated.Clear();
        var left = Math.Max(0, supply);
        // Every round fills at least one sink or ends, so there are at most as many rounds as sinks.
        for (var round = 0; round <= demands.Length && left > 0; round++)
        {
            var pull = 0.0;
            for (var i = 0; i < demands.Length; i++)
                if (allocated[i] < demands[i])
                    pull += weights[i] * demands[i];
            if (pull <= 0) break;
            var anyFilled = false;
            var given = 0.0;
            for (var i = 0; i < demands.Length; i++)
            {
                if (allocated[i] >= demands[i]) continue;
                var part = left * weights[i] * demands[i] / pull;
                if (allocated[i] + part >= demands[i])
                {
                    part = demands[i] - allocated[i];
                    allocated[i] = demands[i];
                    anyFilled = true;
                }
                else
                {
                    allocated[i] += part;
                }

                given += part;
            }

            left = Math.Max(0, left - given);
            if (!anyFilled) return 0;
        }

        return left;
    }
}
