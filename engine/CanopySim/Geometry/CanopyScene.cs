using System.Numerics;
using CanopySim.Fruit;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Geometry;

/// <summary>How many triangles organs get.</summary>
public enum SceneDetail
{
    /// <summary>Blades of twelve triangles, axes in long pieces, petioles and laterals as strips.</summary>
    ForLight,

    /// <summary>Blades of fourteen triangles, every internode, petioles and laterals as tubes.</summary>
    Drawn,
}

/// <summary>The canopy of a day as triangles, with the leaves in the order of their surfaces.</summary>
/// <param name="Scene">The triangles.</param>
/// <param name="Leaves">The leaf of each surface; null for wood and clusters.</param>
/// <param name="Centers">Where each surface's blade lies: the middle of its midrib [m]; zero for others.</param>
/// <param name="Areas">Area of each blade when the scene was made [m²]; 0 for others.</param>
public sealed record PlacedCanopy(Scene Scene, IReadOnlyList<Leaf?> Leaves, IReadOnlyList<Vector3> Centers,
    IReadOnlyList<double> Areas);

/// <summary>
/// Places every organ of the canopy in the cell: shoots along their paths, blades, clusters, cordon and trunk.
/// </summary>
public sealed class CanopyScene(Scenario scenario)
{
    // Radii of stalks [m]. Common practice, no source.
    private const float LateralRadius = 0.0015f;
    private const float PetioleRadius = 0.0012f;

    // Blades smaller than this cannot be told from the axis [m²].
    private const double LeastBlade = 1e-4;

    // Fresh mass per volume of a cluster, air between berries counted [g m⁻³], and its length over its width. Assumed.
    private const double ClusterDensity = 0.55e6;
    private const double ClusterSlenderness = 1.8;
    private const double GreenClusterMass = 8;

    // How far a cluster hangs beside and under its node, to any side of the shoot [m]. Assumed.
    private const float ClusterOffset = 0.03f;
    private const float ClusterDrop = 0.01f;

    private readonly PermanentWood _wood = new(scenario);
    private readonly CanopyPlaces _places = new(scenario);
    private readonly BerryGrowth _berries = new(scenario.Fruit);

    /// <summary>The cell of the scenario's rows, tilted as its slope.</summary>
    public static Cell CellOf(Scenario scenario)
    {
        var (rows, rise) = (scenario.Rows, GroundRise.Of(scenario));
        return new Cell(rows.Spacing * rows.RowsInCell, rows.VineSpacing * rows.VinesInCell, rise.Across, rise.Along);
    }

    /// <summary>Places the canopy as it stands.</summary>
    public PlacedCanopy Place(Canopy canopy, SceneDetail detail)
    {
        var cell = CellOf(scenario);
        var shapes = new TriangleShapes(detail, _wood, cell, scenario.Rows);
        Walk(canopy, shapes);
        return shapes.Build();
    }

    /// <summary>The canopy as it stands in few numbers, for a recording and for pictures.</summary>
    public DrawnCanopy Draw(Canopy canopy)
    {
        var shapes = new DrawnShapes();
        Walk(canopy, shapes);
        return shapes.Build();
    }

    /// <summary>Trunks, arms and cordons of the block, which stay as they are all season.</summary>
    public Scene DrawWood(Canopy canopy)
    {
        var cell = CellOf(scenario);
        var triangles = new TriangleList();
        triangles.Begin(SurfaceKind.Wood);
        foreach (var vine in canopy.Vines) _wood.Add(triangles, vine, cell);
        return triangles.Build(cell);
    }

    private void Walk(Canopy canopy, ICanopyShapes shapes)
    {
        foreach (var vine in canopy.Vines)
        {
            shapes.Vine(vine);
            foreach (var shoot in vine.Shoots) WalkShoot(canopy, shoot, shapes);
        }
    }

    private void WalkShoot(Canopy canopy, Shoot shoot, ICanopyShapes shapes)
    {
        var points = _places.Nodes(shoot);
        shapes.Shoot(shoot, points);
        for (var i = 0; i < shoot.Phytomers.Count; i++)
        {
            var phytomer = shoot.Phytomers[i];
            var axis = CanopyPlaces.Axis(points, i);
            var node = points[i + 1];
            if (phytomer.Leaf is { } leaf) AddLeaf(leaf, node, axis, shapes);
            if (phytomer.Cluster is not null) AddCluster(canopy.Vines[shoot.Vine.Value], phytomer, node, shoot, shapes);
            if (phytomer.Lateral is not { } lateral) continue;
            foreach (var at in _places.LateralNodes(lateral, node, axis, phytomer.Rank))
            {
                shapes.Stalk(at.From, at.At, LateralRadius, at.Phytomer.Rank);
                if (at.Phytomer.Leaf is { } small) AddLeaf(small, at.At, at.Direction, shapes);
            }
        }
    }

    private void AddLeaf(Leaf leaf, Vector3 node, Vector3 axis, ICanopyShapes shapes)
    {
        if (leaf.Area < LeastBlade) return;
        var frame = _places.Blade(leaf, node, axis);
        shapes.Stalk(node, frame.Base, PetioleRadius, leaf.Id.Value);
        shapes.Blade(leaf, frame);
    }

    private void AddCluster(Vine vine, Phytomer phytomer, Vector3 node, Shoot shoot, ICanopyShapes shapes)
    {
        var mass = GreenClusterMass;
        if (phytomer.Cluster?.Berries is { } berries && vine.Crop.Berries > 0)
            mass = Math.Max(mass, _berries.FreshMass(vine.Crop) * berries / vine.Crop.Berries * BerryGrowth.StructureProgress(vine.Crop, scenario.Fruit));
        var volume = mass / ClusterDensity;
        var radius = Math.Cbrt(volume / (ClusterSlenderness * Math.PI * 4 / 3));
        var side = 2 * Math.PI * SeededValue.Uniform(scenario.Seed, "cluster side", shoot.Id.Value, phytomer.Rank);
        var (along, across) = ((float, float))Math.SinCos(side);
        var top = node + new Vector3(ClusterOffset * across, ClusterOffset * along, -ClusterDrop);
        shapes.Cluster(top, (float)(2 * ClusterSlenderness * radius), (float)radius);
    }
}
