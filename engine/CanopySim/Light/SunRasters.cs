using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Suns drawn on one geometry. From day to day the sun of an hour hardly moves: where the quality allows, a sun that stands
/// near enough to one already drawn casts that one's shadows.
/// </summary>
internal sealed class SunRasters(Scene scene, LightMesh mesh, LightNodes nodes, LightQuality quality, SunRaster.ScratchPool pool)
{
    private readonly List<(Vector3 Direction, SunRaster Raster)> _drawn = [];
    private readonly float _nearest = (float)Math.Cos(quality.SunAngle * Math.PI / 180);

    /// <summary>The sun of each hour; null where it is down or behind the hillside.</summary>
    public SunRaster?[] Of(IReadOnlyList<IncidentLight> hours, int threads)
    {
        lock (_drawn) return Draw(hours, threads);
    }

    private SunRaster?[] Draw(IReadOnlyList<IncidentLight> hours, int threads)
    {
        var suns = new SunRaster?[hours.Count];
        var missing = new List<int>();
        for (var hour = 0; hour < suns.Length; hour++)
        {
            if (hours[hour].SunDirection is not { } sun || sun.Z <= 0 || ProjectedGrid.VerticalOf(scene.Cell, sun) <= 0) continue;
            suns[hour] = Near(sun);
            if (suns[hour] is null) missing.Add(hour);
        }

        Workers.Run(threads, missing.Count, () => true, (_, item) =>
        {
            var (hour, scratch) = (missing[item], pool.Take());
            suns[hour] = SunRaster.Draw(scene, mesh, nodes, hours[hour].SunDirection!.Value, quality.SunPixel, scratch);
            pool.Return(scratch);
        });
        if (quality.SunAngle > 0)
            foreach (var hour in missing) _drawn.Add((hours[hour].SunDirection!.Value, suns[hour]!));
        return suns;
    }

    private SunRaster? Near(Vector3 sun)
    {
        var (best, found) = (_nearest, (SunRaster?)null);
        foreach (var (direction, raster) in _drawn)
        {
            var cosine = Vector3.Dot(direction, sun);
            if (cosine > best) (best, found) = (cosine, raster);
        }

        return found;
    }
}
