using System.Runtime.Intrinsics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>Turns hours into right-hand sides of the scattering problem, and its solution into watts by surface and budgets.</summary>
internal static class LightSolver
{
    private const int Lanes = ScatteringSolver.Lanes;

    public static LightSolution Solve(LightGeometry geometry, IReadOnlyList<IncidentLight> hours, Optics optics, int threads)
    {
        var (scene, nodes) = (geometry.Scene, geometry.Nodes);
        var suns = new SunRaster?[hours.Count];
        Workers.Run(threads, hours.Count, () => new SunRaster.Scratch(), (scratch, hour) =>
        {
            if (hours[hour].SunDirection is { } sun && sun.Z > 0 && ProjectedGrid.VerticalOf(scene.Cell, sun) > 0)
                suns[hour] = SunRaster.Draw(scene.Cell, geometry.Mesh, nodes, sun, geometry.Quality.SunPixel, scratch);
        });

        var solution = new LightSolution(hours.Count, scene.SurfaceCount, geometry.SkyGapFraction);
        var groups = (hours.Count + Lanes - 1) / Lanes;
        var bands = new[] { new BandOptics(scene, nodes, optics, nir: true), new BandOptics(scene, nodes, optics, nir: false) };

        // NIR first: it takes the most sweeps.
        Workers.Run(threads, 2 * groups, () => new Scratch(geometry), (scratch, item) =>
        {
            var (nir, group) = (item < groups, item % groups);
            var lanes = new LaneLight[Math.Min(Lanes, hours.Count - (group * Lanes))];
            for (var lane = 0; lane < lanes.Length; lane++)
            {
                var hour = (group * Lanes) + lane;
                lanes[lane] = LaneLight.Of(geometry.Sky, hours[hour], suns[hour], nir);
            }

            scratch.Fill(lanes);
            var solver = new ScatteringSolver(geometry.Matrix, nodes, bands[nir ? 0 : 1]);
            solver.Solve(scratch.Source, scratch.Incident, geometry.Quality.SolverTolerance, scratch.Received);
            for (var lane = 0; lane < lanes.Length; lane++)
                Collect(geometry, bands[nir ? 0 : 1], solver, scratch.Received, lanes[lane], lane, solution, (group * Lanes) + lane, nir);
        });

        for (var hour = 0; hour < hours.Count; hour++)
        {
            if (suns[hour] is not { } sun) continue;
            solution.GroundSunlitFraction[hour] = sun.GroundSunlitFraction;
            sun.SunlitShares(solution.SunlitShare.AsSpan(solution.IndexOf(hour, 0), scene.SurfaceCount));
        }

        return solution;
    }

    private static void Collect(
        LightGeometry geometry,
        BandOptics optics,
        ScatteringSolver solver,
        float[] received,
        LaneLight light,
        int lane,
        LightSolution solution,
        int hour,
        bool nir)
    {
        var (scene, nodes, matrix) = (geometry.Scene, geometry.Nodes, geometry.Matrix);
        var (linkPower, ground) = (geometry.Sky.LinkPower, scene.Cell.GroundArea);
        Span<double> absorbed = stackalloc double[3];
        for (var surface = 0; surface < nodes.Surfaces; surface++)
        {
            var at = solution.IndexOf(hour, surface);
            var (total, direct) = (0.0, 0.0);
            for (var node = 2 * surface; node < (2 * surface) + 2; node++)
            {
                // A face that no line met cannot send: it keeps all it received.
                var kept = matrix.LinksOfNode[node] > 0 ? optics.Absorptance(node) : 1;
                total += kept * received[(node * Lanes) + lane] * linkPower;
                direct += kept * light.DirectPower(node);
            }

            absorbed[(int)scene.Kinds[surface]] += total;
            if (nir)
                solution.AbsorbedNir[at] = total;
            else
                (solution.AbsorbedPar[at], solution.AbsorbedParDirect[at]) = (total, direct);
        }

        var absorbedGround = 0.0;
        for (var node = nodes.FirstGround; node < nodes.Count; node++)
            absorbedGround += optics.Absorptance(node) * received[(node * Lanes) + lane] * linkPower;
        var reflected = 0.0;
        for (var node = 0; node < nodes.Count; node++)
            reflected += solver.Radiosity[(node * Lanes) + lane] * matrix.SkyLinksOfNode[node] * linkPower;
        (nir ? solution.NirBudgets : solution.ParBudgets)[hour] = new LightBudget(
            light.IncidentDirect,
            light.IncidentDiffuse,
            absorbed[(int)SurfaceKind.Blade] / ground,
            absorbed[(int)SurfaceKind.Wood] / ground,
            absorbed[(int)SurfaceKind.Cluster] / ground,
            absorbedGround / ground,
            reflected / ground);
    }

    /// <summary>One hour of one band as a right-hand side.</summary>
    private sealed record LaneLight(SunRaster? Sun, double Normal, double[] Radiance, double IncidentDirect, double IncidentDiffuse)
    {
        public static LaneLight Of(SkyPatches sky, IncidentLight hour, SunRaster? sun, bool nir)
        {
            var normal = nir ? hour.DirectNormalNir : hour.DirectNormalPar;
            var diffuse = nir ? hour.DiffuseHorizontalNir : hour.DiffuseHorizontalPar;
            if (!(normal >= 0 && diffuse >= 0 && double.IsFinite(normal + diffuse)))
                throw new ArgumentException($"irradiances must be finite and not negative: {normal}, {diffuse}");
            var radiance = Array.ConvertAll(sky.Scale(hour.SkyRadiance), value => value * diffuse);
            return new LaneLight(sun, normal, radiance, sun is null ? 0 : normal * sun.Vertical, sky.Through(radiance));
        }

        public double DirectPower(int node) => Sun is null ? 0 : Normal * Sun.PowerOfNode[node];
    }

    private sealed class Scratch(LightGeometry geometry)
    {
        private readonly float[] _radiance = new float[geometry.Nodes.SkyDirections * Lanes];

        public float[] Source { get; } = new float[geometry.Nodes.Count * Lanes];

        public float[] Received { get; } = new float[geometry.Nodes.Count * Lanes];

        public double[] Incident { get; } = new double[Lanes];

        public void Fill(LaneLight[] lanes)
        {
            var (matrix, linkPower) = (geometry.Matrix, geometry.Sky.LinkPower);
            Array.Clear(_radiance);
            Array.Clear(Incident);
            for (var lane = 0; lane < lanes.Length; lane++)
            {
                Incident[lane] = (lanes[lane].IncidentDirect + lanes[lane].IncidentDiffuse) * geometry.Scene.Cell.GroundArea / linkPower;
                for (var direction = 0; direction < geometry.Nodes.SkyDirections; direction++)
                    _radiance[(direction * Lanes) + lane] = (float)lanes[lane].Radiance[direction];
            }

            for (var node = 0; node < geometry.Nodes.Count; node++)
            {
                var sum = Vector256<float>.Zero;
                for (var at = matrix.SkyStarts[node]; at < matrix.SkyStarts[node + 1]; at++)
                {
                    var radiance = Vector256.LoadUnsafe(ref _radiance[matrix.SkyDirections[at] * Lanes]);
                    sum += radiance * matrix.SkyCounts[at];
                }

                Vector256.StoreUnsafe(sum, ref Source[node * Lanes]);
                for (var lane = 0; lane < lanes.Length; lane++)
                    Source[(node * Lanes) + lane] += (float)(lanes[lane].DirectPower(node) / linkPower);
            }
        }
    }
}
