using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// Clusters: a body of revolution, broad in the shoulders and narrow at the tip, hung and sized for each.
/// </summary>
internal sealed class ClusterLayer(GL gl) : IDisposable
{
    // Radius on the way down, both as shares. Assumed.
    private static readonly (float Down, float Radius)[] Near =
        [(0, 0.15f), (0.08f, 0.78f), (0.25f, 1), (0.55f, 0.85f), (0.85f, 0.45f), (1, 0.05f)];
    private static readonly (float Down, float Radius)[] Far = [(0, 0.2f), (0.28f, 1), (1, 0.05f)];

    private readonly CellMesh _near = new(gl, 3, 3, 2);
    private readonly CellMesh _far = new(gl, 3, 3, 2);

    public void Set(IReadOnlyList<DrawnCluster> clusters)
    {
        Fill(_near, clusters, Near, 9);
        Fill(_far, clusters, Far, 4);
    }

    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, bool isNear) =>
        (isNear ? _near : _far).Draw(program, offsets);

    public void Dispose()
    {
        _near.Dispose();
        _far.Dispose();
    }

    private static void Fill(CellMesh mesh, IReadOnlyList<DrawnCluster> clusters, (float Down, float Radius)[] rings,
        int sides)
    {
        mesh.Begin();
        foreach (var (top, length, radius) in clusters)
        {
            for (var ring = 0; ring < rings.Length; ring++)
            {
                var (above, below) = (rings[Math.Max(0, ring - 1)], rings[Math.Min(rings.Length - 1, ring + 1)]);
                var slope = Vector2.Normalize(
                    new Vector2(length * (below.Down - above.Down), radius * (below.Radius - above.Radius)));
                for (var side = 0; side <= sides; side++)
                {
                    var angle = 2 * MathF.PI * side / sides;
                    var (sin, cos) = MathF.SinCos(angle);
                    var (outward, down) = (radius * rings[ring].Radius, length * rings[ring].Down);
                    mesh.Corner(
                        top.X + (outward * cos), top.Y + (outward * sin), top.Z - down, slope.X * cos, slope.X * sin,
                            slope.Y, angle, -down / radius);
                    if (ring == rings.Length - 1 || side == sides) continue;
                    var (a, lower) = (mesh.CornerCount - 1, mesh.CornerCount + (uint)sides);
                    mesh.Triangle(a, lower, lower + 1);
                    mesh.Triangle(a, lower + 1, a + 1);
                }
            }
        }

        mesh.End();
    }
}
