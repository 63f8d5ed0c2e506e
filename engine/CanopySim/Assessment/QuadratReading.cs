using CanopySim.Geometry;

namespace CanopySim.Assessment;

/// <summary>A number with its sampling error: the standard error over insertions. NaN never stands here.</summary>
/// <param name="Value">The number.</param>
/// <param name="Error">Its standard error; 0 where all insertions were alike.</param>
public readonly record struct Sampled(double Value, double Error);

/// <summary>What thin rods through the fruit zone met.</summary>
public sealed record QuadratReading
{
    /// <summary>Leaves and clusters in the order met, an array for each insertion.</summary>
    public required IReadOnlyList<IReadOnlyList<SurfaceKind>> Insertions { get; init; }

    /// <summary>
    /// Where each insertion went: share of the way from the lower to the upper end of its fruit zone [0 to 1]; under a roof, across it.
    /// </summary>
    public required IReadOnlyList<double> Places { get; init; }

    /// <summary>Leaf contacts over insertions.</summary>
    public Sampled LeafLayers => MeanOf(rod => rod.Count(kind => kind == SurfaceKind.Blade));

    /// <summary>Insertions that met nothing over insertions.</summary>
    public Sampled Gaps => MeanOf(rod => rod.Count == 0 ? 1 : 0);

    /// <summary>Leaf contacts that were neither first nor last over leaf contacts; 0 where no leaf was met.</summary>
    public Sampled InteriorLeaves => ShareInside(SurfaceKind.Blade) ?? new Sampled(0, 0);

    /// <summary>The same for clusters; null where none was met.</summary>
    public Sampled? InteriorClusters => ShareInside(SurfaceKind.Cluster);

    /// <summary>Leaf contacts over insertions.</summary>
    public double LeafLayerNumber => LeafLayers.Value;

    /// <summary>Insertions that met nothing over insertions.</summary>
    public double GapFraction => Gaps.Value;

    /// <summary>Interior leaf contacts over leaf contacts.</summary>
    public double InteriorLeafFraction => InteriorLeaves.Value;

    /// <summary>Interior clusters over clusters; null where none was met.</summary>
    public double? InteriorClusterFraction => InteriorClusters?.Value;

    /// <summary>Walls taken together: every insertion counts alike.</summary>
    public static QuadratReading Together(IEnumerable<QuadratReading> walls) =>
        new() { Insertions = [.. walls.SelectMany(wall => wall.Insertions)], Places = [.. walls.SelectMany(wall => wall.Places)] };

    /// <summary>The insertions of a part of the fruit zone, from one place to another [0 to 1].</summary>
    public QuadratReading Between(double from, double to)
    {
        var inside = Enumerable.Range(0, Insertions.Count).Where(rod => Places[rod] >= from && Places[rod] < to).ToList();
        return new QuadratReading { Insertions = [.. inside.Select(rod => Insertions[rod])], Places = [.. inside.Select(rod => Places[rod])] };
    }

    private Sampled MeanOf(Func<IReadOnlyList<SurfaceKind>, int> count)
    {
        var values = Insertions.Select(rod => (double)count(rod)).ToList();
        var mean = values.Average();
        return new Sampled(mean, StandardError(values.Sum(value => (value - mean) * (value - mean)), values.Count));
    }

    // A ratio of two counts of the same rod: its error from the residuals about it (Cochran 1977, chapter 6, from
    // memory).
    private Sampled? ShareInside(SurfaceKind kind)
    {
        var counts = Insertions.Select(rod => (Inside: Inside(rod, kind), All: rod.Count(of => of == kind))).ToList();
        var all = counts.Sum(rod => rod.All);
        if (all == 0) return null;
        var share = counts.Sum(rod => rod.Inside) / (double)all;
        var squares = counts.Sum(rod => Math.Pow(rod.Inside - (share * rod.All), 2));
        return new Sampled(share, StandardError(squares, counts.Count) * counts.Count / all);
    }

    private static int Inside(IReadOnlyList<SurfaceKind> rod, SurfaceKind kind)
    {
        var inside = 0;
        for (var i = 1; i < rod.Count - 1; i++)
            if (rod[i] == kind) inside++;
        return inside;
    }

    private static double StandardError(double squares, int count) =>
        count > 1 ? Math.Sqrt(squares / (count - 1) / count) : 0;
}
