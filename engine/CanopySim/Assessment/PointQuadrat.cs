using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// Virtual point quadrat: rods pushed through the fruit zone of each wall of foliage at seeded places, square to the wall, or from
/// below where the canopy lies flat; leaves and clusters counted once each a rod, in the order met. Wood does not count. A rod of one
/// wall ends half way to the next, so that each curtain is read by itself. After the field method of Smart &amp; Robinson 1991
/// (at least 50 insertions; here 200 in all, and at least 100 a wall), from memory.
/// </summary>
public static class PointQuadrat
{
    private const int Insertions = 200;
    private const int LeastOfWall = 100;

    /// <summary>Reads a canopy, its walls together.</summary>
    public static QuadratReading Read(Scene scene, Scenario scenario) =>
        QuadratReading.Together(ReadWalls(scene, TrellisLayout.WallsOf(scenario.Trellis), scenario.Seed));

    /// <summary>Reads every wall of a row by itself, in the order of the list.</summary>
    /// <param name="scene">The cell with one row in its middle.</param>
    /// <param name="walls">The walls of that row.</param>
    /// <param name="seed">Decides where the rods go.</param>
    public static IReadOnlyList<QuadratReading> ReadWalls(Scene scene, IReadOnlyList<FoliageWall> walls, ulong seed)
    {
        if (walls.Count == 0) throw new ArgumentException("a canopy has at least one wall", nameof(walls));
        var near = new TrianglesAlong(scene);
        var ofWall = Math.Max(LeastOfWall, Insertions / walls.Count);
        var readings = new QuadratReading[walls.Count];
        for (var wall = 0; wall < walls.Count; wall++)
        {
            var (rods, places) = (new IReadOnlyList<SurfaceKind>[ofWall], new double[ofWall]);
            for (var insertion = 0; insertion < ofWall; insertion++)
            {
                var rod = QuadratRod.At(scene.Cell, walls, wall, seed, insertion);
                (rods[insertion], places[insertion]) = (Contacts(scene, near, rod), rod.Place);
            }

            readings[wall] = new QuadratReading { Insertions = rods, Places = places };
        }

        return readings;
    }

    // Across the wall only this row counts; along it, and under a roof both ways, the cell repeats.
    private static List<SurfaceKind> Contacts(Scene scene, TrianglesAlong near, QuadratRod rod)
    {
        var (origin, direction, length, _) = rod;
        var nearest = new Dictionary<int, float>();
        var acrossCopies = direction.X == 0 ? 1 : 0;
        for (var i = -acrossCopies; i <= acrossCopies; i++)
        {
            for (var j = -1; j <= 1; j++)
            {
                var (across, along) = (i * scene.Cell.Across, j * scene.Cell.Along);
                var rise = (across * scene.Cell.RiseAcross) + (along * scene.Cell.RiseAlong);
                var shifted = origin - new Vector3((float)across, (float)along, (float)rise);
                foreach (var triangle in near.At(shifted.Y))
                {
                    if (Distance(scene, triangle, shifted, direction) is not { } distance || distance > length) continue;
                    var key = (((scene.SurfaceOfTriangle[triangle] * 3) + i + 1) * 3) + j + 1;
                    nearest[key] = Math.Min(distance, nearest.GetValueOrDefault(key, float.MaxValue));
                }
            }
        }

        return [.. nearest.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key).Select(pair => scene.Kinds[pair.Key / 9])];
    }

    // Möller & Trumbore 1997, doi:10.1080/10867651.1997.10487468.
    private static float? Distance(Scene scene, int triangle, Vector3 origin, Vector3 direction)
    {
        var corner = scene.Corners[3 * triangle];
        var (edge1, edge2) = (scene.Corners[(3 * triangle) + 1] - corner, scene.Corners[(3 * triangle) + 2] - corner);
        var p = Vector3.Cross(direction, edge2);
        var determinant = Vector3.Dot(edge1, p);
        if (Math.Abs(determinant) < 1e-12f) return null;
        var from = origin - corner;
        var u = Vector3.Dot(from, p) / determinant;
        if (u is < 0 or > 1) return null;
        var q = Vector3.Cross(from, edge1);
        var v = Vector3.Dot(direction, q) / determinant;
        if (v < 0 || u + v > 1) return null;
        var distance = Vector3.Dot(edge2, q) / determinant;
        return distance > 0 ? distance : null;
    }
}
