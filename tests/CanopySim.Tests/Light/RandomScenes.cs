using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;

namespace CanopySim.Tests.Light;

/// <summary>Scenes of the tests, put together triangle by triangle.</summary>
internal sealed class RandomScenes(Cell cell)
{
    private readonly List<Vector3> _corners = [];
    private readonly List<int> _surfaces = [];
    private readonly List<SurfaceKind> _kinds = [];

    public int AddSurface(SurfaceKind kind)
    {
        _kinds.Add(kind);
        return _kinds.Count - 1;
    }

    public void AddTriangle(int surface, Vector3 a, Vector3 b, Vector3 c)
    {
        _corners.AddRange([a, b, c]);
        _surfaces.Add(surface);
    }

    /// <summary>A parallelogram whose upper side looks along edge1 × edge2.</summary>
    public void AddQuad(int surface, Vector3 corner, Vector3 edge1, Vector3 edge2)
    {
        AddTriangle(surface, corner, corner + edge1, corner + edge1 + edge2);
        AddTriangle(surface, corner, corner + edge1 + edge2, corner + edge2);
    }

    /// <summary>A closed box, outer faces outward.</summary>
    public void AddBox(SurfaceKind kind, Vector3 low, Vector3 size)
    {
        var surface = AddSurface(kind);
        var (x, y, z) = (new Vector3(size.X, 0, 0), new Vector3(0, size.Y, 0), new Vector3(0, 0, size.Z));
        AddQuad(surface, low + z, x, y);
        AddQuad(surface, low, y, x);
        AddQuad(surface, low, x, z);
        AddQuad(surface, low + y, z, x);
        AddQuad(surface, low, z, y);
        AddQuad(surface, low + x, y, z);
    }

    /// <summary>
    /// A blade of six triangles folded along its midrib: a pentagon fan of each half, <paramref name="size"/> [m] long and wide.
    /// </summary>
    public void AddFoldedBlade(Vector3 center, Vector3 midrib, Vector3 sideways, float size, float fold)
    {
        var surface = AddSurface(SurfaceKind.Blade);
        var up = Vector3.Cross(midrib, sideways);
        for (var half = -1; half <= 1; half += 2)
        {
            Vector3 At(float along, float aside) =>
                center + (size * (((along - 0.5f) * midrib) + (half * aside * sideways) + (fold * aside * up)));
            Vector3[] rim = [At(0, 0.05f), At(0.25f, 0.5f), At(0.7f, 0.42f), At(1, 0)];
            var root = At(0, 0);
            for (var i = 0; i + 1 < rim.Length; i++)
            {
                // Right-handed seen from above on both halves.
                if (half > 0) AddTriangle(surface, root, rim[i], rim[i + 1]);
                else AddTriangle(surface, root, rim[i + 1], rim[i]);
            }
        }
    }

    public Scene Build() => new()
    {
        Cell = cell,
        Corners = [.. _corners],
        SurfaceOfTriangle = [.. _surfaces],
        Kinds = [.. _kinds],
        LeafIds = [.. _kinds.Select((kind, index) => kind == SurfaceKind.Blade ? index : -1)],
    };

    /// <summary>
    /// A hedge along the middle of the cell, some blades over its edges: leaves with spherical inclinations between 0.8 and 2 m,
    /// a trunk and two clusters.
    /// </summary>
    public static Scene Hedge(int leaves, ulong seed, Cell cell, float hedgeWidth = 0.5f, float leafSize = 0.125f, bool wood = true)
    {
        var scene = new RandomScenes(cell);
        for (var leaf = 0; leaf < leaves; leaf++)
        {
            double Value(string purpose) => SeededValue.Uniform(seed, purpose, leaf);
            var x = (cell.Across / 2) + ((Value("x") - 0.5) * hedgeWidth);
            var (y, z) = (Value("y") * cell.Along, 0.8 + (Value("z") * 1.2));
            var (midrib, sideways) = Frame(Value("height"), Value("azimuth"), Value("turn"));
            z += (cell.RiseAcross * x) + (cell.RiseAlong * y);
            scene.AddFoldedBlade(new Vector3((float)x, (float)y, (float)z), midrib, sideways, leafSize, (float)(0.6 * Value("fold")));
        }

        if (wood)
        {
            var (x, y) = ((float)cell.Across / 2, (float)cell.Along / 3);
            var ground = (float)((cell.RiseAcross * x) + (cell.RiseAlong * y));
            scene.AddBox(SurfaceKind.Wood, new Vector3(x - 0.02f, y - 0.02f, ground + 0.001f), new Vector3(0.04f, 0.04f, 0.9f));
            scene.AddBox(SurfaceKind.Cluster, new Vector3(x + 0.05f, y, ground + 0.75f), new Vector3(0.08f, 0.08f, 0.12f));
            scene.AddBox(SurfaceKind.Cluster, new Vector3(x - 0.13f, y + 0.2f, ground + 0.75f), new Vector3(0.08f, 0.08f, 0.12f));
        }

        return scene.Build();
    }

    /// <summary>Midrib and the direction across it for a blade whose normal is uniform over the upper hemisphere.</summary>
    public static (Vector3 Midrib, Vector3 Sideways) Frame(double height, double azimuth, double turn)
    {
        var normal = SkyRings.Direction(Math.Acos(height) * 180 / Math.PI, 360 * azimuth);
        var horizontal = Vector3.Normalize(Vector3.Cross(normal, Math.Abs(normal.Z) < 0.9f ? Vector3.UnitZ : Vector3.UnitX));
        var other = Vector3.Cross(normal, horizontal);
        var (sine, cosine) = Math.SinCos(2 * Math.PI * turn);
        return (((float)cosine * horizontal) + ((float)sine * other), ((float)-sine * horizontal) + ((float)cosine * other));
    }
}
