using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>What thin rods through the fruit zone met: contacts in order for each insertion.</summary>
/// <param name="LeafLayerNumber">Leaf contacts over insertions.</param>
/// <param name="GapFraction">Insertions that met nothing over insertions.</param>
/// <param name="InteriorLeafFraction">Leaf contacts that were neither first nor last over leaf contacts.</param>
/// <param name="InteriorClusterFraction">The same for clusters; null where none was met.</param>
public readonly record struct QuadratReading(
    double LeafLayerNumber, double GapFraction, double InteriorLeafFraction, double? InteriorClusterFraction);

/// <summary>
/// Virtual point quadrat: rods pushed through the fruit zone at seeded places, across the wall, or from below where the canopy
/// lies flat; leaves and clusters counted once each a rod, in the order met. Wood does not count. After the field method of
/// Smart &amp; Robinson 1991 (at least 50 insertions; here 200), from memory.
/// </summary>
public static class PointQuadrat
{
    private const int Insertions = 200;

    /// <summary>Reads a canopy.</summary>
    public static QuadratReading Read(Scene scene, Scenario scenario)
    {
        var flat = scenario.Trellis.Form == TrellisForm.Overhead;
        var near = new TrianglesAlong(scene);
        var (leafContacts, gaps, interiorLeaves, clusters, interiorClusters) = (0, 0, 0, 0, 0);
        for (var insertion = 0; insertion < Insertions; insertion++)
        {
            var (origin, direction) = Rod(scene.Cell, scenario, flat, insertion);
            var contacts = Contacts(scene, near, origin, direction);
            if (contacts.Count == 0) gaps++;
            for (var i = 0; i < contacts.Count; i++)
            {
                var interior = i > 0 && i < contacts.Count - 1;
                if (contacts[i] == SurfaceKind.Blade)
                {
                    leafContacts++;
                    if (interior) interiorLeaves++;
                }
                else
                {
                    clusters++;
                    if (interior) interiorClusters++;
                }
            }
        }

        return new QuadratReading(
            leafContacts / (double)Insertions,
            gaps / (double)Insertions,
            leafContacts > 0 ? interiorLeaves / (double)leafContacts : 0,
            clusters > 0 ? interiorClusters / (double)clusters : null);
    }

    private static (Vector3 Origin, Vector3 Direction) Rod(Cell cell, Scenario scenario, bool flat, int insertion)
    {
        var along = (float)(cell.Along * SeededValue.Uniform(scenario.Seed, "quadrat along", insertion));
        var second = SeededValue.Uniform(scenario.Seed, "quadrat across", insertion);
        var ground = (float)cell.RiseAlong * along;
        if (flat)
        {
            var across = (float)(cell.Across * (second - 0.5));
            return (new Vector3(across, along, ground + ((float)cell.RiseAcross * across)), Vector3.UnitZ);
        }

        var height = (float)TrellisLayout.WallsOf(scenario.Trellis)[0].FruitZone.Height(second);
        return (new Vector3((float)(-0.5 * cell.Across), along, ground + height), Vector3.UnitX);
    }

    // Across the wall only this row counts; along it, and under a roof both ways, the cell repeats.
    private static List<SurfaceKind> Contacts(Scene scene, TrianglesAlong near, Vector3 origin, Vector3 direction)
    {
        var nearest = new Dictionary<int, float>();
        var acrossCopies = direction.Z > 0 ? 1 : 0;
        for (var i = -acrossCopies; i <= acrossCopies; i++)
        {
            for (var j = -1; j <= 1; j++)
            {
                var (across, along) = (i * scene.Cell.Across, j * scene.Cell.Along);
                var rise = (across * scene.Cell.RiseAcross) + (along * scene.Cell.RiseAlong);
                var shifted = origin - new Vector3((float)across, (float)along, (float)rise);
                foreach (var triangle in near.At(shifted.Y))
                {
                    if (Distance(scene, triangle, shifted, direction) is not { } distance) continue;
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

    /// <summary>Triangles of leaves and clusters by where along the row they lie: rods run square to it.</summary>
    private sealed class TrianglesAlong
    {
        private const float Width = 0.02f;

        private readonly List<int>[] _bins;
        private readonly float _first;

        public TrianglesAlong(Scene scene)
        {
            // A bin more at each end: what lies on an edge is in both.
            var (low, high) = (0f, 0f);
            foreach (var corner in scene.Corners) (low, high) = (Math.Min(low, corner.Y), Math.Max(high, corner.Y));
            _first = low - Width;
            _bins = new List<int>[(int)((high - _first) / Width) + 3];
            for (var bin = 0; bin < _bins.Length; bin++) _bins[bin] = [];
            for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
            {
                if (scene.Kinds[scene.SurfaceOfTriangle[triangle]] is SurfaceKind.Wood or SurfaceKind.Stalk) continue;
                var (a, b, c) = (scene.Corners[3 * triangle].Y, scene.Corners[(3 * triangle) + 1].Y, scene.Corners[(3 * triangle) + 2].Y);
                var (from, to) = (Bin(Math.Min(a, Math.Min(b, c)) - 1e-5f), Bin(Math.Max(a, Math.Max(b, c)) + 1e-5f));
                for (var bin = from; bin <= to; bin++) _bins[bin].Add(triangle);
            }
        }

        public IReadOnlyList<int> At(float along)
        {
            var bin = Bin(along);
            return bin >= 0 && bin < _bins.Length ? _bins[bin] : [];
        }

        private int Bin(float along) => (int)MathF.Floor((along - _first) / Width);
    }
}
