using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.RayTracing;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// PAR in the fruit zone in one hour [W m⁻²]: on three bars in the middle of each wall of foliage at half its zone's
/// height, one that looks up and one to each side, as a grower holds a light bar into the canopy; and on the surface of
/// the clusters. The mean over walls and rows.
/// </summary>
/// <param name="Height">Of the bars over the ground, mean over walls [m].</param>
/// <param name="Up">On the bar that looks up.</param>
/// <param name="Right">On the one that looks to the right, 90° clockwise from the row azimuth.</param>
/// <param name="Left">On the one that looks to the left.</param>
/// <param name="Clusters">
/// On the clusters, per area of their outer surface; null where there are none, or where they reflect all.
/// </param>
public sealed record FruitZoneLight(
    double Height, SensorIrradiance Up, SensorIrradiance Right, SensorIrradiance Left, double? Clusters)
{
    /// <summary>Sensors of a bar.</summary>
    public const int SensorsOfBar = 40;

    /// <summary>Reads the fruit zone in every hour of a solution.</summary>
    public static FruitZoneLight[] Read(Scenario scenario, LightSolution solution, FaceRadiosity radiosity, int threads)
    {
        if (radiosity.Hours.Count == 0) return [];
        var scene = radiosity.Geometry.Scene;
        var zones = ZonesOf(scenario).ToList();
        var height = zones.Average(zone => zone.Height);
        Point3[] facings = [new(0, 0, 1), new(1, 0, 0), new(-1, 0, 0)];
        LightSensor[] sensors =
        [
            .. facings.SelectMany(facing =>
                zones.SelectMany(zone =>
                    LightBar.AlongRow(scene.Cell, zone.Across, zone.Height, SensorsOfBar, facing))),
        ];
        var readings = LightSensors.Place(radiosity.Geometry, sensors, threads).Read(radiosity, threads);
        var clusters = ClustersOf(scene).ToList();
        return [.. readings.Select((hour, index) => new FruitZoneLight(
            height, Bar(hour, 0), Bar(hour, 1), Bar(hour, 2),
            OnClusters(clusters, solution, index, 1 - scenario.Optics.WoodParReflectance)))];
    }

    private static IEnumerable<(double Across, double Height)> ZonesOf(Scenario scenario) =>
        from row in Enumerable.Range(0, scenario.Rows.RowsInCell)
        from wall in TrellisLayout.WallsOf(scenario.Trellis, row)
        select (scenario.Rows.AcrossOf(row) + wall.FruitZone.Across(0.5), wall.FruitZone.Height(0.5));

    // Sensors of all walls that look one way: a third of them all.
    private static SensorIrradiance Bar(SensorReading[] readings, int facing) =>
        LightBar.Mean(readings.AsSpan(readings.Length / 3 * facing, readings.Length / 3).ToArray()).Par;

    private static IEnumerable<(int Surface, double Area)> ClustersOf(Scene scene)
    {
        var areas = scene.SurfaceAreas();
        for (var surface = 0; surface < areas.Length; surface++)
            if (scene.Kinds[surface] == SurfaceKind.Cluster) yield return (surface, areas[surface]);
    }

    // A cluster keeps the same share of whatever falls on it.
    private static double? OnClusters(List<(int Surface, double Area)> clusters, LightSolution solution, int hour,
        double kept) =>
        clusters.Count > 0 && kept > 0
            ? clusters.Sum(cluster => solution.AbsorbedPar[solution.IndexOf(hour, cluster.Surface)]) / kept
            / clusters.Sum(cluster => cluster.Area)
            : null;
}
