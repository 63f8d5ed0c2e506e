using System.Runtime.Intrinsics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>Turns hours into right-hand sides of the scattering problem, and its solution into watts by surface and budgets.</summary>
internal static class LightSolver
{
    private const int Lanes = ScatteringSolver.Lanes;

    public static LightSolution Solve(
        LightGeometry geometry, IReadOnlyList<IncidentLight> hours, Optics optics, int threads, FaceRadiosity? kept = null)
    {
        var (scene, nodes) = (geometry.Scene, geometry.Nodes);
        var suns = geometry.Suns.Of(hours, threads);
        var solution = new LightSolution(hours.Count, scene.SurfaceCount, geometry.SkyGapFraction);
        for (var hour = 0; hour < suns.Length; hour++)
        {
            if (suns[hour] is not { } sun) continue;
            solution.GroundSunlitFraction[hour] = sun.GroundSunlitFraction;
            sun.SunlitShares.CopyTo(solution.SunlitShare, solution.IndexOf(hour, 0));
        }

        var groups = (hours.Count + Lanes - 1) / Lanes;
        var bands = new[] { new BandOptics(scene, nodes, optics, nir: true), new BandOptics(scene, nodes, optics, nir: false) };

        // NIR first: it takes the most sweeps.
        Workers.Run(threads, 2 * groups, () => true, (_, item) =>
        {
            var arrays = geometry.Arrays.Take(geometry.Nodes);
            var (nir, group) = (item < groups, item % groups);
            var lanes = new LaneLight[Math.Min(Lanes, hours.Count - (group * Lanes))];
            for (var lane = 0; lane < lanes.Length; lane++)
            {
                var hour = (group * Lanes) + lane;
                lanes[lane] = LaneLight.Of(geometry, hours[hour], suns[hour], nir);
            }

            var incident = new double[Lanes];
            Fill(geometry, lanes, arrays, incident);
            var solver = new ScatteringSolver(geometry.Matrix, nodes, bands[nir ? 0 : 1], arrays);
            solver.Solve(arrays.Source, incident, geometry.Quality.SolverTolerance, arrays.Received);
            Collect(geometry, bands[nir ? 0 : 1], solver, arrays.Received, lanes, solution, group * Lanes, nir);
            kept?.Keep(solver, group, nir);
            geometry.Arrays.Return(arrays);
        });

        return solution;
    }

    private static void Collect(
        LightGeometry geometry,
        BandOptics optics,
        ScatteringSolver solver,
        float[] received,
        LaneLight[] lanes,
        LightSolution solution,
        int firstHour,
        bool nir)
    {
        var (scene, nodes, matrix) = (geometry.Scene, geometry.Nodes, geometry.Matrix);
        var (linkPower, ground) = (geometry.Sky.LinkPower, scene.Cell.GroundArea);
        Span<double> absorbed = stackalloc double[4 * Lanes];
        for (var surface = 0; surface < nodes.Surfaces; surface++)
        {
            // A face that no line met cannot send: it keeps all it received.
            var (upper, lower) = (2 * surface, (2 * surface) + 1);
            var upperKept = matrix.LinksOfNode[upper] > 0 ? optics.Absorptance(upper) : 1;
            var lowerKept = matrix.LinksOfNode[lower] > 0 ? optics.Absorptance(lower) : 1;
            var ofKind = absorbed.Slice((int)scene.Kinds[surface] * Lanes, lanes.Length);
            var atUpper = received.AsSpan(upper * Lanes, Lanes);
            var atLower = received.AsSpan(lower * Lanes, Lanes);
            for (var lane = 0; lane < ofKind.Length; lane++)
            {
                var total = ((upperKept * atUpper[lane]) + (lowerKept * atLower[lane])) * linkPower;
                ofKind[lane] += total;
                var at = solution.IndexOf(firstHour + lane, surface);
                if (nir)
                {
                    solution.AbsorbedNir[at] = total;
                    continue;
                }

                var (power, normal) = (lanes[lane].Power, lanes[lane].Normal);
                solution.AbsorbedPar[at] = total;
                solution.AbsorbedParDirect[at] = power.Length == 0 ? 0 : normal * ((upperKept * power[upper]) + (lowerKept * power[lower]));
            }
        }

        Span<double> absorbedGround = stackalloc double[Lanes];
        Span<double> reflected = stackalloc double[Lanes];
        for (var node = 0; node < nodes.Count; node++)
        {
            var toSky = matrix.SkyLinksOfNode[node] * linkPower;
            var radiosity = solver.Radiosity.Slice(node * Lanes, Lanes);
            for (var lane = 0; lane < Lanes; lane++) reflected[lane] += radiosity[lane] * toSky;
            if (node < nodes.FirstGround) continue;
            for (var lane = 0; lane < Lanes; lane++)
                absorbedGround[lane] += optics.Absorptance(node) * received[(node * Lanes) + lane] * linkPower;
        }

        for (var lane = 0; lane < lanes.Length; lane++)
        {
            (nir ? solution.NirBudgets : solution.ParBudgets)[firstHour + lane] = new LightBudget(
                lanes[lane].IncidentDirect,
                lanes[lane].IncidentDiffuse,
                absorbed[((int)SurfaceKind.Blade * Lanes) + lane] / ground,
                (absorbed[((int)SurfaceKind.Wood * Lanes) + lane] + absorbed[((int)SurfaceKind.Stalk * Lanes) + lane]) / ground,
                absorbed[((int)SurfaceKind.Cluster * Lanes) + lane] / ground,
                absorbedGround[lane] / ground,
                reflected[lane] / ground);
        }
    }

    // What sun and sky bring to each node in links, and what comes in altogether.
    private static void Fill(LightGeometry geometry, LaneLight[] lanes, SolverArrays arrays, double[] incident)
    {
        var (matrix, linkPower, source) = (geometry.Matrix, geometry.Sky.LinkPower, arrays.Source);
        var radiances = new float[geometry.Nodes.SkyDirections * Lanes];
        for (var lane = 0; lane < lanes.Length; lane++)
        {
            incident[lane] = (lanes[lane].IncidentDirect + lanes[lane].IncidentDiffuse) * geometry.Scene.Cell.GroundArea / linkPower;
            for (var direction = 0; direction < geometry.Nodes.SkyDirections; direction++)
                radiances[(direction * Lanes) + lane] = (float)lanes[lane].Radiance[direction];
        }

        for (var node = 0; node < geometry.Nodes.Count; node++)
        {
            var (first, second) = (Vector256<float>.Zero, Vector256<float>.Zero);
            for (var at = matrix.SkyStarts[node]; at < matrix.SkyStarts[node + 1]; at++)
            {
                ref var radiance = ref radiances[matrix.SkyDirections[at] * Lanes];
                first += Vector256.LoadUnsafe(ref radiance) * matrix.SkyCounts[at];
                second += Vector256.LoadUnsafe(ref radiance, Lanes / 2) * matrix.SkyCounts[at];
            }

            first.StoreUnsafe(ref source[node * Lanes]);
            second.StoreUnsafe(ref source[node * Lanes], Lanes / 2);
        }

        for (var lane = 0; lane < lanes.Length; lane++)
        {
            var (power, perLink) = (lanes[lane].Power, lanes[lane].Normal / linkPower);
            for (var node = 0; node < power.Length; node++) source[(node * Lanes) + lane] += (float)(perLink * power[node]);
        }
    }

    /// <summary>One hour of one band as a right-hand side.</summary>
    private sealed record LaneLight(SunRaster? Sun, double Normal, double[] Radiance, double IncidentDirect, double IncidentDiffuse)
    {
        public static LaneLight Of(LightGeometry geometry, IncidentLight hour, SunRaster? sun, bool nir)
        {
            var normal = nir ? hour.DirectNormalNir : hour.DirectNormalPar;
            var diffuse = nir ? hour.DiffuseHorizontalNir : hour.DiffuseHorizontalPar;
            if (!(normal >= 0 && diffuse >= 0 && double.IsFinite(normal + diffuse)))
                throw new ArgumentException($"irradiances must be finite and not negative: {normal}, {diffuse}");
            var radiance = Array.ConvertAll(geometry.Sky.Scale(hour.SkyRadiance), value => value * diffuse);
            var through = geometry.Sky.Through(radiance);
            if (sun is null) return new LaneLight(null, 0, radiance, 0, through);

            // Another day's sun stands a little higher or lower, but what comes into the cell is this one's.
            var direct = normal * ProjectedGrid.VerticalOf(geometry.Scene.Cell, hour.SunDirection!.Value);
            return new LaneLight(sun, direct / sun.Vertical, radiance, direct, through);
        }

        /// <summary>Power of the sun on each node per normal irradiance [m²]; empty where it is down.</summary>
        public double[] Power { get; } = Sun?.PowerOfNode ?? [];
    }
}
