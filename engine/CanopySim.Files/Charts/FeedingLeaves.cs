using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>
/// The leaves that gave most of the ripening weeks' carbon: the shortest run of age classes with over half of it.
/// </summary>
/// <param name="FromD">Youngest age of the run [d].</param>
/// <param name="ToD">Oldest age of the run [d]; null where its last class is open.</param>
/// <param name="Share">Share of the leaves' net carbon gain, 0 to 1.</param>
public sealed record FeedingLeaves(int FromD, int? ToD, double Share)
{
    /// <summary>A class wider than this is read as open at its old end [d].</summary>
    internal const int WidestClosedClassD = 10;

    public string AgesText => ToD is { } to ? $"{FromD} to {to} days old" : $"{FromD} days and older";

    public string PercentText => $"{Measure.Number(100 * Share, 0)} %";

    /// <summary>The run of a season; null where veraison was not reached or no fruit was there to be fed.</summary>
    public static FeedingLeaves? Of(SeasonSummary summary) =>
        HasFruit(summary) ? Of(summary.RipeningCarbonByLeafAge) : null;

    internal static bool HasFruit(SeasonSummary summary) => summary.Harvest is { YieldKgPerVine: > 0 };

    /// <summary>The run, or null where nothing was gained while the fruit ripened.</summary>
    public static FeedingLeaves? Of(IReadOnlyList<LeafAgeShare> shares)
    {
        var ordered = shares.Where(s => double.IsFinite(s.Share)).OrderBy(s => s.FromD).ToList();
        for (var length = 1; length <= ordered.Count; length++)
        {
            FeedingLeaves? best = null;
            for (var start = 0; start + length <= ordered.Count; start++)
            {
                var run = ordered.GetRange(start, length);
                var share = run.Sum(s => s.Share);
                var last = run[^1];
                int? to = last.ToD - last.FromD <= WidestClosedClassD ? last.ToD : null;
                if (share > 0.5 && share > (best?.Share ?? 0)) best = new FeedingLeaves(run[0].FromD, to, share);
            }

            if (best is not null) return best;
        }

        return null;
    }
}
