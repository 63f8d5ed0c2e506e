using System.Numerics;
using System.Runtime.InteropServices;

namespace CanopySim.Light;

/// <summary>
/// The hours of a geometry put together from parts that are each solved once: pieces of the sky, and every sun by itself. Light
/// adds up, so that is exact where the sky is even within each piece, and the days between two geometries cost next to nothing,
/// whatever their weather.
/// </summary>
internal sealed class ComposedLight(LightGeometry geometry, Optics optics, int threads)
{
    private const int MostSectors = 8;

    // Rings of the sky from the zenith down, each cut into sectors. Tried: more pieces change a season's carbon by some 0.2 %.
    private static readonly (double LowestSine, int Sectors)[] Rings = [(0.75, 1), (0.4, 3), (0, 5)];

    private readonly int[][] _pieces = PiecesOf(geometry.Sky);
    private readonly float _nearest = (float)Math.Cos(geometry.Quality.SunAngle * Math.PI / 180);
    private readonly List<Part> _suns = [];
    private readonly List<Part> _skies = [];

    /// <summary>The light of some hours, as <see cref="LightGeometry.Solve(IReadOnlyList{IncidentLight}, Optics, int)"/> gives it.</summary>
    public LightSolution Solve(IReadOnlyList<IncidentLight> hours)
    {
        SolveMissing(hours);
        var solution = new LightSolution(hours.Count, geometry.Scene.SurfaceCount, geometry.SkyGapFraction);
        for (var hour = 0; hour < hours.Count; hour++) Compose(solution, hour, hours[hour]);
        return solution;
    }

    private void SolveMissing(IReadOnlyList<IncidentLight> hours)
    {
        var missing = new List<IncidentLight>();
        if (_skies.Count == 0)
        {
            foreach (var piece in _pieces)
            {
                var radiance = new double[geometry.Sky.Directions.Count];
                foreach (var direction in piece) radiance[direction] = 1;
                missing.Add(new IncidentLight { DiffuseHorizontalPar = 1, DiffuseHorizontalNir = 1, SkyRadiance = radiance });
            }
        }

        foreach (var hour in hours)
        {
            if (!IsUp(hour) || Near(hour.SunDirection!.Value) is not null) continue;
            missing.Add(new IncidentLight { SunDirection = hour.SunDirection, DirectNormalPar = 1, DirectNormalNir = 1 });
        }

        if (missing.Count == 0) return;
        var solved = geometry.Solve(missing, optics, threads);
        for (var i = 0; i < missing.Count; i++)
        {
            if (missing[i].SunDirection is { } sun) _suns.Add(new Part(solved, i, ProjectedGrid.VerticalOf(geometry.Scene.Cell, sun), sun));
            else _skies.Add(new Part(solved, i, 1, null));
        }
    }

    private bool IsUp(IncidentLight hour) =>
        hour.SunDirection is { Z: > 0 } sun && ProjectedGrid.VerticalOf(geometry.Scene.Cell, sun) > 0;

    private Part? Near(Vector3 sun)
    {
        var (best, found) = (_nearest, (Part?)null);
        foreach (var part in _suns)
        {
            var cosine = Vector3.Dot(part.Sun!.Value, sun);
            if (cosine >= best) (best, found) = (cosine, part);
        }

        return found;
    }

    private void Compose(LightSolution solution, int hour, IncidentLight light)
    {
        var shares = SharesOf(light);
        for (var piece = 0; piece < shares.Length; piece++)
            Add(solution, hour, _skies[piece], shares[piece] * light.DiffuseHorizontalPar, shares[piece] * light.DiffuseHorizontalNir);
        if (!IsUp(light) || Near(light.SunDirection!.Value) is not { } sun) return;

        // Another day's sun stands a little higher or lower, but what comes into the cell is this one's.
        var vertical = ProjectedGrid.VerticalOf(geometry.Scene.Cell, light.SunDirection.Value);
        var scale = vertical / sun.Vertical;
        var direct = scale * light.DirectNormalPar;
        Add(solution, hour, sun, direct, scale * light.DirectNormalNir);
        var (to, of) = (solution.IndexOf(hour, 0), sun.Solution.IndexOf(sun.Hour, 0));
        for (var i = 0; i < solution.SurfaceCount; i++)
        {
            solution.AbsorbedParDirect[to + i] = direct * sun.Solution.AbsorbedParDirect[of + i];
            solution.SunlitShare[to + i] = sun.Solution.SunlitShare[of + i];
        }

        solution.GroundSunlitFraction[hour] = sun.Solution.GroundSunlitFraction[sun.Hour];
    }

    private static void Add(LightSolution solution, int hour, Part part, double par, double nir)
    {
        var (to, of) = (solution.IndexOf(hour, 0), part.Solution.IndexOf(part.Hour, 0));
        var count = solution.SurfaceCount;
        Add(solution.AbsorbedPar.AsSpan(to, count), part.Solution.AbsorbedPar.AsSpan(of, count), par);
        Add(solution.AbsorbedNir.AsSpan(to, count), part.Solution.AbsorbedNir.AsSpan(of, count), nir);
        solution.ParBudgets[hour] = Plus(solution.ParBudgets[hour], part.Solution.ParBudgets[part.Hour], par);
        solution.NirBudgets[hour] = Plus(solution.NirBudgets[hour], part.Solution.NirBudgets[part.Hour], nir);
    }

    private static void Add(Span<double> sum, ReadOnlySpan<double> part, double factor)
    {
        var sums = MemoryMarshal.Cast<double, Vector<double>>(sum);
        var parts = MemoryMarshal.Cast<double, Vector<double>>(part);
        for (var i = 0; i < sums.Length; i++) sums[i] += parts[i] * factor;
        for (var i = sums.Length * Vector<double>.Count; i < sum.Length; i++) sum[i] += part[i] * factor;
    }

    // Of the diffuse irradiance, the share that comes from each piece of the sky.
    private double[] SharesOf(IncidentLight light)
    {
        var shares = new double[_pieces.Length];
        for (var piece = 0; piece < shares.Length; piece++)
            foreach (var direction in _pieces[piece])
                shares[piece] += geometry.Sky.HorizontalWeights[direction] * (light.SkyRadiance?[direction] ?? 1);
        var all = shares.Sum();
        return all > 0 ? [.. shares.Select(share => share / all)] : shares;
    }

    // Directions by ring and sector; those in the hillside too, whose light a horizontal plane in the open would have.
    private static int[][] PiecesOf(SkyPatches sky)
    {
        return [.. Enumerable.Range(0, sky.Directions.Count).Where(direction => sky.HorizontalWeights[direction] > 0)
            .GroupBy(direction => PieceOf(sky.Directions[direction])).OrderBy(piece => piece.Key).Select(piece => piece.ToArray())];

        static int PieceOf(Vector3 direction)
        {
            var ring = 0;
            while (ring < Rings.Length - 1 && direction.Z < Rings[ring].LowestSine) ring++;
            var turn = (Math.Atan2(direction.X, direction.Y) / (2 * Math.PI)) + 0.5;
            var sector = Math.Min(Rings[ring].Sectors - 1, (int)(turn * Rings[ring].Sectors));
            return (ring * MostSectors) + sector;
        }
    }

    private static LightBudget Plus(in LightBudget sum, in LightBudget part, double factor) => new(
        sum.IncidentDirect + (part.IncidentDirect * factor),
        sum.IncidentDiffuse + (part.IncidentDiffuse * factor),
        sum.AbsorbedLeaves + (part.AbsorbedLeaves * factor),
        sum.AbsorbedWood + (part.AbsorbedWood * factor),
        sum.AbsorbedClusters + (part.AbsorbedClusters * factor),
        sum.AbsorbedGround + (part.AbsorbedGround * factor),
        sum.Reflected + (part.Reflected * factor));

    /// <summary>One part: light of 1 W m⁻² from the sky, or from a sun's direction.</summary>
    private sealed record Part(LightSolution Solution, int Hour, double Vertical, Vector3? Sun);
}
