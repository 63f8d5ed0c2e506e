using System.Numerics;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Geometry;

/// <summary>
/// A node of a lateral: the internode's ends in the cell's frame [m] and the axis' direction beyond the node.
/// </summary>
public readonly record struct LateralNode(Phytomer Phytomer, Vector3 From, Vector3 At, Vector3 Direction);

/// <summary>
/// A blade where it hangs: its node, the axis that bears it, and the middle of its midrib in the cell's frame [m].
/// </summary>
public readonly record struct PlacedBlade(Phytomer Phytomer, Leaf Leaf, Vector3 Middle);

/// <summary>
/// Where nodes and blades of the canopy are in the cell (x across the row, y along it, z up, the ground at the row's
/// origin at 0): the one place that says so, for the scene and for work in the canopy alike.
/// </summary>
public sealed class CanopyPlaces(Scenario scenario)
{
    private readonly ShootPath _path = new(scenario);
    private readonly LeafPlacement _placement = new(scenario);

    public Cell Cell { get; } = CanopyScene.CellOf(scenario);

    /// <summary>Positions of a primary shoot's base and of its nodes [m]: one more than there are phytomers.</summary>
    public Vector3[] Nodes(Shoot shoot)
    {
        // The cordon follows the ground, and a shoot stands on it whole.
        var row = scenario.Rows.AcrossOf(scenario.Rows.RowOf(shoot.Vine));
        var cellFromRow =
            new Vector3((float)row, 0, (float)((Cell.RiseAlong * shoot.PositionAlongRow) + (Cell.RiseAcross * row)));
        return Array.ConvertAll(_path.Nodes(shoot), point => point + cellFromRow);
    }

    /// <summary>Direction of a shoot along an internode.</summary>
    public static Vector3 Axis(Vector3[] points, int internode)
    {
        var along = points[internode + 1] - points[internode];
        return along.LengthSquared() > 1e-12f ? Vector3.Normalize(along) : Vector3.UnitZ;
    }

    /// <summary>Nodes of a lateral, from its base up.</summary>
    /// <param name="lateral">The lateral.</param>
    /// <param name="node">Where its mother's node is [m].</param>
    /// <param name="axis">Direction of its mother there.</param>
    /// <param name="rank">Rank of that node.</param>
    public IEnumerable<LateralNode> LateralNodes(Shoot lateral, Vector3 node, Vector3 axis, int rank)
    {
        var side = (float)SeededValue.Normal(scenario.Seed, "lateral direction", lateral.Id.Value);
        var across = rank % 2 == 0 ? -1 : 1;
        var direction = Vector3.Normalize(new Vector3(0.6f * across, 0.6f * side, 0.5f) + (0.4f * axis));
        var at = node;
        foreach (var phytomer in lateral.Phytomers)
        {
            var from = at;
            at += (float)phytomer.InternodeLength * direction;
            direction = Vector3.Normalize(direction - (0.08f * Vector3.UnitZ));
            yield return new LateralNode(phytomer, from, at, direction);
        }
    }

    /// <summary>The frame of a blade at its node.</summary>
    public BladeFrame Blade(Leaf leaf, Vector3 node, Vector3 axis) => _placement.Place(leaf, node, axis);

    /// <summary>Where a blade lies: the middle of its midrib [m].</summary>
    public static Vector3 BladeMiddle(Leaf leaf, BladeFrame frame) =>
        frame.Base + (0.5f * (float)leaf.MidribLength * frame.Tip);

    /// <summary>The blades of a primary shoot and of its laterals, node by node.</summary>
    public IEnumerable<PlacedBlade> Blades(Shoot shoot)
    {
        var points = Nodes(shoot);
        for (var i = 0; i < shoot.Phytomers.Count; i++)
        {
            var phytomer = shoot.Phytomers[i];
            var (node, axis) = (points[i + 1], Axis(points, i));
            if (phytomer.Leaf is { } leaf) yield return Placed(phytomer, leaf, node, axis);
            if (phytomer.Lateral is not { } lateral) continue;
            foreach (var at in LateralNodes(lateral, node, axis, phytomer.Rank))
                if (at.Phytomer.Leaf is { } small) yield return Placed(at.Phytomer, small, at.At, at.Direction);
        }
    }

    /// <summary>Height of a point over the ground under it [m].</summary>
    public double HeightOverGround(Vector3 point) => point.Z - (Cell.RiseAcross * point.X) - (Cell.RiseAlong * point.Y);

    private PlacedBlade Placed(Phytomer phytomer, Leaf leaf, Vector3 node, Vector3 axis) =>
        new(phytomer, leaf, BladeMiddle(leaf, Blade(leaf, node, axis)));
}
