using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Who sees whom in a scene: made once, then any number of hours, skies, suns and optics are solved on it. Light between
/// faces travels along lines of equal solid angle through every pixel of the cell; neighbors on a line are linked.
/// </summary>
public sealed class LightGeometry
{
    // Links held before they are counted into the table: bounds memory at about 100 MB.
    private const double LinksAtOnce = 24e6;
    internal const int StripsOfGround = 12;

    private LightGeometry(Scene scene, LightQuality quality, LightMesh mesh, LightNodes nodes, LinkMatrix matrix, SkyPatches sky, LinkWorkers workers)
    {
        (Scene, Quality, Nodes, Matrix, Sky, Arrays) = (scene, quality, nodes, matrix, sky, workers.Arrays);
        Suns = new SunRasters(scene, mesh, nodes, quality, workers.Suns);
        var ground = 0.0;
        for (var node = nodes.FirstGround; node < nodes.Count; node++)
        {
            for (var at = matrix.SkyStarts[node]; at < matrix.SkyStarts[node + 1]; at++)
                if (sky.Sees(matrix.SkyDirections[at])) ground += matrix.SkyCounts[at];
        }

        SkyGapFraction = sky.TotalPixels > 0 ? ground / sky.TotalPixels : 0;
    }

    public Scene Scene { get; }

    public LightQuality Quality { get; }

    /// <summary>Share of the irradiance of a uniform sky that reaches the ground unshaded.</summary>
    public double SkyGapFraction { get; }

    /// <summary>
    /// Share of all links that end inside a closed body, where nothing should look: light lost there counts as absorbed by it.
    /// </summary>
    public double InsideLinkShare => Matrix.InsideShare;

    /// <summary>Pairs of faces that see each other, and faces that see a sky direction.</summary>
    public int LinkCount => Matrix.Senders.Length + Matrix.SkyDirections.Length;

    internal SunRasters Suns { get; }

    internal SolverArrays.Pool Arrays { get; }

    internal LightNodes Nodes { get; }

    internal LinkMatrix Matrix { get; }

    internal SkyPatches Sky { get; }

    /// <param name="scene">The periodic cell.</param>
    /// <param name="directions">Unit vectors of equal solid angle over the upper hemisphere. On a slope, those that point into
    /// the hillside are dark, and their lines carry links by their other end.</param>
    /// <param name="quality">Pixels and tolerance; the number of directions is that of the list.</param>
    /// <param name="threads">Workers; the result is the same for any number.</param>
    public static LightGeometry Build(Scene scene, IReadOnlyList<Vector3> directions, LightQuality quality, int threads) =>
        Build(scene, directions, quality, threads, new LinkWorkers());

    /// <summary>The same with the arrays of workers that have built before.</summary>
    internal static LightGeometry Build(Scene scene, IReadOnlyList<Vector3> directions, LightQuality quality, int threads, LinkWorkers workers)
    {
        if (directions.Count == 0) throw new ArgumentException("light needs at least one direction", nameof(directions));
        quality.Check();
        var mesh = new LightMesh(scene, threads);
        var nodes = new LightNodes(scene, StripsOfGround, directions.Count);
        var traced = LinkDirection.All(scene.Cell, directions, quality.SkyPixel);
        var pixels = new int[directions.Count];
        var table = LinkTable.Empty(nodes.FirstGround);
        var skyLinks = Array.ConvertAll(pixels, _ => new int[nodes.Count]);
        var batch = Math.Max(threads, (int)(LinksAtOnce / ExpectedLinks(scene, quality.SkyPixel)));
        for (var first = 0; first < traced.Length; first += batch)
        {
            var start = first;
            workers.Begin(nodes);
            Workers.Run(threads, Math.Min(batch, traced.Length - first), workers.Take, (worker, item) =>
            {
                var direction = traced[start + item];
                pixels[direction.Index] = worker.Tracer.Trace(scene.Cell, mesh, nodes, direction, worker.Links, skyLinks[direction.Index]);
            });
            table = table.With(workers.Counters, nodes, threads);
        }

        var sky = new SkyPatches(scene.Cell, directions, quality.SkyPixel, pixels);
        return new LightGeometry(scene, quality, mesh, nodes, LinkMatrix.From(table, skyLinks, nodes, threads), sky, workers);
    }

    /// <summary>
    /// Solves all hours and both bands at once. Where the quality lets suns share their shadows (<see cref="LightQuality.SunAngle"/>), those
    /// of earlier calls on this geometry are among them.
    /// </summary>
    public LightSolution Solve(IReadOnlyList<IncidentLight> hours, Optics optics, int threads) =>
        LightSolver.Solve(this, hours, optics, threads);

    /// <summary>Solves them and keeps what every face sends, for sensors: 128 bytes for each sixteen hours or fewer, face and strip of ground.</summary>
    public (LightSolution Solution, FaceRadiosity Radiosity) SolveWithRadiosity(IReadOnlyList<IncidentLight> hours, Optics optics, int threads)
    {
        var radiosity = new FaceRadiosity(this, hours);
        return (LightSolver.Solve(this, hours, optics, threads, radiosity), radiosity);
    }

    // A triangle meets half its area's pixels on average over directions; every line ends on the ground.
    private static double ExpectedLinks(Scene scene, double pixel)
    {
        var area = scene.Cell.GroundArea;
        foreach (var surface in scene.SurfaceAreas()) area += surface;
        return Math.Max(1, 0.5 * area / (pixel * pixel));
    }
}
