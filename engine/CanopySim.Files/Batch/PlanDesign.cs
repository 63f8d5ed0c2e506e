using CanopySim.Numerics;
using CanopySim.Sampling;

namespace CanopySim.Files.Batch;

/// <summary>How the keys with a distribution are sampled together, and by how many points.</summary>
/// <param name="Kind">The design.</param>
/// <param name="Size">Points; of a Morris design paths, of a Saltelli design the points it is built from.</param>
/// <param name="Levels">Levels of a Morris design.</param>
public sealed record PlanDesign(DesignKind Kind, int Size, int Levels = 4)
{
    /// <summary>How many points the design has in so many dimensions.</summary>
    public long Count(int dimensions) => Kind switch
    {
        DesignKind.Morris => (long)Size * (dimensions + 1),
        DesignKind.Saltelli => (long)Size * SaltelliDesign.RowLength(dimensions),
        _ => Size,
    };

    /// <summary>How many keys it can sample; null where any number.</summary>
    public int? MostDimensions => Kind switch
    {
        DesignKind.SobolSequence => SobolSequence.MostDimensions,
        DesignKind.Saltelli => SaltelliDesign.MostFactors,
        _ => null,
    };

    /// <summary>The points, each coordinate in [0, 1); the same for the same seed.</summary>
    public double[][] Points(int dimensions, ulong seed) => Kind switch
    {
        DesignKind.Random => [.. Enumerable.Range(0, Size).Select(point => RandomPoint(point, dimensions, seed))],
        DesignKind.LatinHypercube => LatinHypercube.Points(Size, dimensions, seed),
        DesignKind.SobolSequence => SobolSequence.Points(Size, dimensions, seed),
        DesignKind.Morris => MorrisDesign.Points(Size, dimensions, Levels, seed),
        DesignKind.Saltelli => SaltelliDesign.Points(Size, dimensions, seed),
        _ => throw new ArgumentOutOfRangeException(nameof(seed), Kind, "a design that is not known"),
    };

    private static double[] RandomPoint(int point, int dimensions, ulong seed) =>
        [.. Enumerable.Range(0, dimensions).Select(key => SeededValue.Uniform(seed, "plan", point, key))];
}
