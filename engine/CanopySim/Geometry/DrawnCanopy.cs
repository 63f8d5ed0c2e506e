using System.Numerics;
using CanopySim.Plants;

namespace CanopySim.Geometry;

/// <summary>A blade as drawn: <see cref="BladeMesh.Drawn"/>, scaled by the root of its area, in its frame.</summary>
/// <param name="LeafId">Number of the leaf.</param>
/// <param name="Vine">Number of its vine.</param>
/// <param name="Shoot">Number of its shoot.</param>
/// <param name="Order">1 on a primary shoot, 2 on a lateral.</param>
/// <param name="Rank">Its node's number from the shoot's base, 1 = oldest.</param>
/// <param name="Area">One-sided area [m²].</param>
/// <param name="Frame">Where it is.</param>
public readonly record struct DrawnBlade(int LeafId, int Vine, int Shoot, int Order, int Rank, float Area, BladeFrame Frame);

/// <summary>A piece of axis or a petiole: two ends and the radius at each [m].</summary>
public readonly record struct DrawnStalk(Vector3 From, Vector3 To, float FromRadius, float ToRadius);

/// <summary>A cluster: the point it hangs from, its length and its largest radius [m].</summary>
public readonly record struct DrawnCluster(Vector3 Top, float Length, float Radius);

/// <summary>
/// What a season grew, in few numbers, in the frame of the cell; wood of many years is not in it. Blades stand in the order of a scene's surfaces.
/// </summary>
public sealed record DrawnCanopy(
    IReadOnlyList<DrawnBlade> Blades, IReadOnlyList<DrawnStalk> Stalks, IReadOnlyList<DrawnCluster> Clusters);

/// <summary>Collects a canopy's organs as they are drawn.</summary>
internal sealed class DrawnShapes : ICanopyShapes
{
    private readonly List<DrawnBlade> _blades = [];
    private readonly List<DrawnStalk> _stalks = [];
    private readonly List<DrawnCluster> _clusters = [];

    public DrawnCanopy Build() => new(_blades, _stalks, _clusters);

    public void Vine(Vine vine)
    {
    }

    public void Shoot(Shoot shoot, Vector3[] points)
    {
        for (var i = 0; i < points.Length - 1; i++)
            _stalks.Add(new DrawnStalk(points[i], points[i + 1], ShootRadius.At(i, points.Length), ShootRadius.At(i + 1, points.Length)));
    }

    public void Stalk(Vector3 from, Vector3 to, float radius, int index) => _stalks.Add(new DrawnStalk(from, to, radius, radius));

    public void Blade(Leaf leaf, in BladeFrame frame) => _blades.Add(new DrawnBlade(
        leaf.Id.Value, leaf.Shoot.Vine.Value, leaf.Shoot.Id.Value, leaf.Shoot.Order, leaf.Rank, (float)leaf.Area, frame));

    public void Cluster(Vector3 top, float length, float radius) => _clusters.Add(new DrawnCluster(top, length, radius));
}
