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
    // Radii of wood [m]. Common practice, no source.
    private const float ShootBaseRadius = 0.0045f;
    private const float ShootTipRadius = 0.002f;
    private const float LateralRadius = 0.0015f;
    private const float PetioleRadius = 0.0012f;

    // Axes for light: one piece for so many internodes.
    private const int InternodesPerPiece = 4;

    // Blades smaller than this cannot be told from the axis [m²].
    private const double LeastBlade = 1e-4;

    // Fresh mass per volume of a cluster, air between berries counted [g m⁻³], and its length over its width. Assumed.
    private const double ClusterDensity = 0.55e6;
    private const double ClusterSlenderness = 1.8;
    private const double GreenClusterMass = 8;

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
        var triangles = new TriangleList();
        var leaves = new List<Leaf?>();
        var centers = new List<Vector3>();
        var areas = new List<double>();
        foreach (var vine in canopy.Vines)
        {
            triangles.Row = scenario.Rows.RowOf(vine.Id);
            triangles.Begin(SurfaceKind.Wood);
            _wood.Add(triangles, vine, cell);
            Register(null, default, 0);
            foreach (var shoot in vine.Shoots) AddShoot(shoot);
        }

        return new PlacedCanopy(triangles.Build(cell), leaves, centers, areas);

        void Register(Leaf? leaf, Vector3 center, double area)
        {
            leaves.Add(leaf);
            centers.Add(center);
            areas.Add(area);
        }

        void AddShoot(Shoot shoot)
        {
            var points = _places.Nodes(shoot);
            var stalks = triangles.Begin(SurfaceKind.Wood);
            AddAxis(triangles, points, detail);
            Register(null, default, 0);
            if (detail == SceneDetail.ForLight)
            {
                stalks = triangles.Begin(SurfaceKind.Stalk);
                Register(null, default, 0);
            }

            for (var i = 0; i < shoot.Phytomers.Count; i++)
            {
                var phytomer = shoot.Phytomers[i];
                var axis = CanopyPlaces.Axis(points, i);
                var node = points[i + 1];
                if (phytomer.Leaf is { } leaf) AddLeaf(leaf, node, axis, stalks);
                if (phytomer.Cluster is not null) AddCluster(canopy.Vines[shoot.Vine.Value], phytomer, node, shoot);
                if (phytomer.Lateral is { } lateral) AddLateral(lateral, node, axis, phytomer.Rank, stalks);
            }
        }

        // A shoot's petioles and laterals make one surface: they catch light that leaves would get, but nobody asks for
        // each of theirs.
        void AddLateral(Shoot lateral, Vector3 node, Vector3 axis, int rank, int stalks)
        {
            foreach (var at in _places.LateralNodes(lateral, node, axis, rank))
            {
                AddStalk(at.From, at.At, LateralRadius, stalks, at.Phytomer.Rank);
                if (at.Phytomer.Leaf is { } leaf) AddLeaf(leaf, at.At, at.Direction, stalks);
            }
        }

        void AddStalk(Vector3 from, Vector3 to, float radius, int stalks, int index)
        {
            triangles.Continue(stalks);
            if (detail == SceneDetail.Drawn) triangles.AddTube(from, to, radius, radius, 3);
            else triangles.AddStrip(from, to, radius, (float)GoldenAngle.Radians * index);
        }

        void AddLeaf(Leaf leaf, Vector3 node, Vector3 axis, int stalks)
        {
            if (leaf.Area < LeastBlade) return;
            var frame = _places.Blade(leaf, node, axis);
            AddStalk(node, frame.Base, PetioleRadius, stalks, leaf.Id.Value);
            triangles.Begin(SurfaceKind.Blade, leaf.Id.Value);
            var mesh = detail == SceneDetail.Drawn ? BladeMesh.Drawn : BladeMesh.ForLight;
            var scale = (float)Math.Sqrt(leaf.Area);
            for (var corner = 0; corner < mesh.Corners.Length; corner += 3)
            {
                triangles.Add(
                    frame.CellFromBlade(mesh.Corners[corner], scale),
                    frame.CellFromBlade(mesh.Corners[corner + 1], scale),
                    frame.CellFromBlade(mesh.Corners[corner + 2], scale));
            }

            Register(leaf, CanopyPlaces.BladeMiddle(leaf, frame), leaf.Area);
        }

        void AddCluster(Vine vine, Phytomer phytomer, Vector3 node, Shoot shoot)
        {
            var mass = GreenClusterMass;
            if (phytomer.Cluster?.Berries is { } berries && vine.Crop.Berries > 0)
                mass = Math.Max(mass,
                    _berries.FreshMass(vine.Crop) * berries / vine.Crop.Berries
                    * BerryGrowth.StructureProgress(vine.Crop, scenario.Fruit));
            var volume = mass / ClusterDensity;
            var radius = Math.Cbrt(volume / (ClusterSlenderness * Math.PI * 4 / 3));
            var away = SeededValue.Uniform(scenario.Seed, "cluster side", shoot.Id.Value, phytomer.Rank) < 0.5 ? -1 : 1;
            var top = node + new Vector3(0.03f * away, 0, -0.01f);
            triangles.Begin(SurfaceKind.Cluster);
            triangles.AddSpindle(top, (float)(2 * ClusterSlenderness * radius), (float)radius);
            Register(null, default, 0);
        }
    }

    private static void AddAxis(TriangleList triangles, Vector3[] points, SceneDetail detail)
    {
        var pieces = detail == SceneDetail.Drawn ? 1 : InternodesPerPiece;
        for (var i = 0; i < points.Length - 1; i += pieces)
        {
            var next = Math.Min(points.Length - 1, i + pieces);
            triangles.AddTube(points[i], points[next], Radius(i), Radius(next), 3);
        }

        float Radius(int node) =>
            ShootBaseRadius + ((ShootTipRadius - ShootBaseRadius) * node / Math.Max(1, points.Length - 1));
    }
}
