using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Tests.Light;

/// <summary>Midsummer days of a block, and the light that each of its leaves absorbs in them.</summary>
internal sealed class VineyardDays(Scenario scenario, double utcOffsetHours)
{
    public const int Days = 3;

    private static readonly DateOnly Midsummer = new(2025, 6, 21);

    /// <summary>
    /// Hours of a clear day (Ineichen and Perez, Linke turbidity 3), of an overcast one (0.3 of the clear day's global, all diffuse)
    /// and of a mixed one (0.5 of the clear day's direct light, twice its diffuse), under the all-weather sky.
    /// </summary>
    public IncidentLight[][] Light(SkyFrame sky)
    {
        var days = Enumerable.Range(0, Days).Select(_ => new List<IncidentLight>()).ToArray();
        for (var hour = 0; hour < 24; hour++)
        {
            var sun = HourlySun.At(Midsummer, hour, scenario.Site, utcOffsetHours);
            var (global, direct, diffuse) = ClearSky.IneichenPerez(sun.CosZenith, AirMass.KastenYoung(sun.Position.ZenithRadians), 3, 0, 1330);
            if (!(global > 0)) continue;
            days[0].Add(sky.Of(Hour(direct, diffuse), sun)!);
            days[1].Add(sky.Of(Hour(0, 0.3 * global), sun)!);
            days[2].Add(sky.Of(Hour(0.5 * direct, 2 * diffuse), sun)!);

            WeatherHour Hour(double normal, double horizontal) => default(WeatherHour) with
            {
                DirectNormalIrradiance = normal,
                DiffuseHorizontalIrradiance = horizontal,
                GlobalHorizontalIrradiance = (normal * sun.CosZenith) + horizontal,
            };
        }

        return [.. days.Select(day => day.ToArray())];
    }

    /// <summary>PAR that each leaf absorbs in each day, by its number [W h], and the widest gap of a budget relative to what fell.</summary>
    public (double[][] LeafPar, double Closure) Absorbed(Scene scene, LightQuality quality, int leaves, int threads = 2)
    {
        var sky = new SkyFrame(scenario.Rows.Azimuth, quality.SkyDirectionCount);
        var days = Light(sky);
        var geometry = LightGeometry.Build(scene, sky.Directions, quality, threads);
        IncidentLight[] hours = [.. days.SelectMany(day => day)];
        var light = quality.IsComposed
            ? new ComposedLight(geometry, scenario.Optics, threads).Solve(hours)
            : geometry.Solve(hours, scenario.Optics, threads);
        var (par, closure, first) = (new double[Days][], 0.0, 0);
        for (var day = 0; day < Days; day++)
        {
            par[day] = new double[leaves];
            for (var hour = first; hour < first + days[day].Length; hour++)
            {
                for (var surface = 0; surface < scene.SurfaceCount; surface++)
                    if (scene.LeafIds[surface] >= 0) par[day][scene.LeafIds[surface]] += light.AbsorbedPar[light.IndexOf(hour, surface)];
                foreach (var budget in new[] { light.ParBudgets[hour], light.NirBudgets[hour] })
                    closure = Math.Max(closure, budget.Closure);
            }

            first += days[day].Length;
        }

        return (par, closure);
    }
}
