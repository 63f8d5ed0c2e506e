using CanopySim.Geometry;

namespace CanopySim.Assessment;

/// <summary>Triangles of leaves and clusters by where along the row they lie: rods run square to it.</summary>
internal sealed class TrianglesAlong
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
            var (a, b, c) =
                (scene.Corners[3 * triangle].Y, scene.Corners[(3 * triangle) + 1].Y,
                scene.Corners[(3 * triangle) + 2].Y);
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
