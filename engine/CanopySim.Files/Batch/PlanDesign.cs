using CanopySim.Numerics;

namespace CanopySim.Files.Batch;

/// <summary>How the keys with a distribution are sampled together, and by how many points.</summary>
/// <param name="Kind">The design.</param>
/// <param name="Size">Points; of a Morris design paths, of a Saltelli design the points it is built from.</param>
/// <param name="Levels">Levels of a Morris design.</param>
/// <param name="SecondOrder">Whether a Saltelli design has points for pairs.</param>
public sealed record PlanDesign(DesignKind Kind, int Size, int Levels = 4, bool SecondOrder = false)
{
    /// <summary>How many points the design has in so many dimensions.</summary>
    public long Count(int dimensions) => Kind switch
    {
        DesignKind.Morris => (long)Size * (dimensions + 1),
        DesignKind.Saltelli => (long)Size * (SecondOrder ? (2 * dimensions) + 2 : dimensions + 2),
        _ => Size,
    };

    /// <summary>The points, each coordinate in [0, 1); the same for the same seed.</summary>
    public double[][] Points(int dimensions, ulong seed) => Kind switch
    {
        DesignKind.Random => [.. Enumerable.Range(0, Size).Select(point => RandomPoint(point, dimensions, seed))],
        _ => throw new NotSupportedException($"{Kind} is not built in yet"),
    };

    private static double[] RandomPoint(int point, int dimensions, ulong seed) =>
        [.. Enumerable.Range(0, dimensions).Select(key => SeededValue.Uniform(seed, "plan", point, key))];
}
