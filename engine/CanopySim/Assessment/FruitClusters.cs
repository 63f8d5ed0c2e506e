using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>A cluster of a placed canopy.</summary>
/// <param name="Surface">Its surface in the scene.</param>
/// <param name="Side">Index of its side.</param>
/// <param name="Area">Area of its outer surface [m²].</param>
/// <param name="Diameter">Its width across [m].</param>
public readonly record struct FruitCluster(int Surface, int Side, double Area, double Diameter);

/// <summary>
/// The clusters of a placed canopy, each on its side of its wall. A cluster belongs to the wall of its row whose middle
/// is nearest at its height, and hangs on the side of that middle on which its own lies. Walls of one number are one
/// wall, whatever row of the cell they stand in. Sides without clusters are none of the list's.
/// </summary>
public sealed class FruitClusters
{
    private FruitClusters(IReadOnlyList<FruitSide> sides, IReadOnlyList<FruitCluster> clusters, double[] areas,
        int[] counts) =>
        (Sides, Clusters, AreaOfSide, CountOfSide) = (sides, clusters, areas, counts);

    public IReadOnlyList<FruitSide> Sides { get; }

    /// <summary>In the order of their surfaces.</summary>
    public IReadOnlyList<FruitCluster> Clusters { get; }

    /// <summary>Outer surface of a side's clusters together [m²].</summary>
    public IReadOnlyList<double> AreaOfSide { get; }

    public IReadOnlyList<int> CountOfSide { get; }

    /// <summary>Finds the clusters of a scene.</summary>
    /// <param name="scene">The cell.</param>
    /// <param name="rows">Its rows, each at the place of its number.</param>
    /// <param name="rowAzimuth">Direction in which the rows run, clockwise from north [deg].</param>
    public static FruitClusters Of(Scene scene, IReadOnlyList<RowOfWalls> rows, double rowAzimuth)
    {
        var found = new SortedDictionary<int, Extent>();
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            var surface = scene.SurfaceOfTriangle[triangle];
            if (scene.Kinds[surface] != SurfaceKind.Cluster) continue;
            found[surface] = found.GetValueOrDefault(surface, Extent.None).With(scene, triangle);
        }

        var placed =
            found.Select(pair =>
                (Surface: pair.Key, Extent: pair.Value,
                Place: PlaceOf(pair.Value, scene.Cell, rows[scene.RowOf(pair.Key)]))).ToList();
        var places = placed.Select(cluster => cluster.Place).Distinct().OrderBy(place => place).ToList();
        var sides = places.Select(place => FruitSide.Of(place.Wall, place.IsRight, rowAzimuth)).ToList();
        var clusters = placed.Select(cluster => new FruitCluster(
            cluster.Surface, places.IndexOf(cluster.Place), cluster.Extent.Area,
            cluster.Extent.HighX - cluster.Extent.LowX)).ToList();
        var (areas, counts) = (new double[sides.Count], new int[sides.Count]);
        foreach (var cluster in clusters)
        {
            areas[cluster.Side] += cluster.Area;
            counts[cluster.Side]++;
        }

        return new FruitClusters(sides, clusters, areas, counts);
    }

    private static (int Wall, bool IsRight) PlaceOf(in Extent extent, in Cell cell, RowOfWalls row)
    {
        var (x, y) = (0.5 * (extent.LowX + extent.HighX), 0.5 * (extent.LowY + extent.HighY));
        var z = (0.5 * (extent.LowZ + extent.HighZ)) - (cell.RiseAlong * y);
        var (best, nearest, right) = (0, double.MaxValue, true);
        foreach (var wall in row.Walls)
        {
            // Heights of a wall count from the ground under its cordon.
            var cordon = row.Across + wall.CordonAcross;
            var (sin, cos) = Math.SinCos(wall.Tilt);
            var (across, up) = (x - cordon, z - wall.CordonHeight - (cell.RiseAcross * cordon));
            var square = (cos * across) - (sin * up);

            // Where two walls stand on one plane, the fruit is that of the nearer zone.
            var zone = wall.FruitZone;
            var outside = Math.Max(0, Math.Max(zone.From - up, up - zone.To));
            var distance = wall.IsFlat ? Math.Abs(across) + outside : Math.Abs(square) + outside;
            if (distance >= nearest) continue;
            (best, nearest) = (wall.Index, distance);
            right = wall.IsFlat ? across > 0 : Math.Sign(cos) * square > 0;
        }

        return (best, right);
    }

    private readonly record struct Extent(double LowX, double HighX, double LowY, double HighY, double LowZ,
        double HighZ, double Area)
    {
        public static Extent None { get; } = new(
            double.MaxValue, double.MinValue, double.MaxValue, double.MinValue, double.MaxValue, double.MinValue, 0);

        public Extent With(Scene scene, int triangle)
        {
            var extent = this;
            for (var corner = 3 * triangle; corner < 3 * (triangle + 1); corner++)
            {
                var at = scene.Corners[corner];
                extent = new Extent(
                    Math.Min(extent.LowX, at.X), Math.Max(extent.HighX, at.X), Math.Min(extent.LowY, at.Y),
                    Math.Max(extent.HighY, at.Y),
                    Math.Min(extent.LowZ, at.Z), Math.Max(extent.HighZ, at.Z), extent.Area);
            }

            return extent with { Area = Area + scene.TriangleArea(triangle) };
        }
    }
}
