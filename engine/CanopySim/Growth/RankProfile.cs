namespace CanopySim.Growth;

/// <summary>How the size that an organ can reach depends on its rank on the shoot: shares of the largest, straight lines between ranks.</summary>
public static class RankProfile
{
    // Growth of blades by rank, general shape: Schultz 1992, Louarn et al. 2007, from memory; beyond 25 held.
    private static readonly (double Rank, double Share)[] BladePoints =
        [(1, 0.25), (2, 0.40), (3, 0.55), (4, 0.70), (5, 0.82), (6, 1.0), (12, 1.0), (15, 0.9), (20, 0.7), (25, 0.5)];

    // Assumed: rising to nodes 4 to 10, then falling slowly (Louarn et al. 2007, Schultz 1993 for the shape, from memory).
    private static readonly (double Rank, double Share)[] InternodePoints =
        [(1, 0.2), (2, 0.4), (3, 0.7), (4, 0.95), (5, 1.05), (6, 1.05), (7, 1.0), (9, 0.9), (12, 0.8), (15, 0.72), (20, 0.62), (25, 0.55)];

    /// <summary>Share of the largest blade [0 to 1] at a rank.</summary>
    public static double Blade(int rank) => Interpolate(BladePoints, rank);

    /// <summary>Share of the reference internode [0 to 1.05] at a rank.</summary>
    public static double Internode(int rank) => Interpolate(InternodePoints, rank);

    private static double Interpolate((double Rank, double Share)[] points, int rank)
    {
        if (rank <= points[0].Rank) return points[0].Share;
        for (var i = 1; i < points.Length; i++)
        {
            if (rank > points[i].Rank) continue;
            var (from, to) = (points[i - 1], points[i]);
            return from.Share + ((to.Share - from.Share) * (rank - from.Rank) / (to.Rank - from.Rank));
        }

        return points[^1].Share;
    }
}
