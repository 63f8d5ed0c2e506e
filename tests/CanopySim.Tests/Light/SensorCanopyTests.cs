using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Sensors in canopies, where the raster tells what every surface receives.</summary>
public class SensorCanopyTests
{
    // Over a blade [m]: far less than its parts are wide.
    private const double Over = 1e-4;

    // What lies on a blade reads, on both sides together, what the blade receives per area. Standard errors are those of points thrown on
    // the blade; the raster's own error is 2 % of a leaf's light with 300 directions, and little of that stays
    // in their sum: with 500 points a side sensors read 0.0 % and 0.3 % more than the raster, with a standard error of 0.2 %.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, 0.1)]
    public void On_a_blade_sensors_read_what_the_blade_receives(double riseAcross, double riseAlong)
    {
        const int Points = 300;
        var scene = RandomScenes.Hedge(50, 9, new Cell(1, 0.8, riseAcross, riseAlong), hedgeWidth: 1.1f);
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(300), LightCases.Quality(0.005, 0.002), 2);
        var hour = SensorCases.Day(SkyRings.Direction(50, 140));
        var (solution, radiosity) = geometry.SolveWithRadiosity([hour], new Optics(), 2);
        var areas = scene.SurfaceAreas();
        List<int> blades = [.. Enumerable.Range(0, scene.SurfaceCount).Where(surface => scene.Kinds[surface] == SurfaceKind.Blade)];
        var readings = LightSensors.Place(geometry, [.. blades.SelectMany(blade => OnBlade(scene, blade, Points))], 2, rays: 30).Read(radiosity, 2)[0];
        var (absorbedPar, absorbedNir) = (1 - 0.08 - 0.06, 1 - 0.45 - 0.40);
        var chi = 0.0;
        var (byRaster, bySensors, variance) = (0.0, 0.0, 0.0);
        for (var index = 0; index < blades.Count; index++)
        {
            var (blade, own) = (blades[index], readings.AsSpan(2 * Points * index, 2 * Points).ToArray());
            var par = Estimate.Of(BothSides(own, reading => reading.Par.Total));
            var nir = Estimate.Of(BothSides(own, reading => reading.Nir.Total));
            var direct = Estimate.Of(BothSides(own, reading => reading.Par.Direct));
            AssertClose(par, solution.AbsorbedPar[blade] / areas[blade] / absorbedPar);
            AssertClose(nir, solution.AbsorbedNir[blade] / areas[blade] / absorbedNir);
            AssertClose(direct, solution.AbsorbedParDirect[blade] / areas[blade] / absorbedPar);
            (byRaster, bySensors) = (byRaster + (solution.AbsorbedPar[blade] / absorbedPar), bySensors + (par.Mean * areas[blade]));
            variance += Math.Pow(par.StandardError * areas[blade], 2);
            chi += Math.Pow(par.Mean - (solution.AbsorbedPar[blade] / areas[blade] / absorbedPar), 2) / Variance(par);
        }

        Assert.InRange(chi / blades.Count, 0, 1 + (4 * Math.Sqrt(2.0 / blades.Count)));
        Assert.InRange(Math.Sqrt(variance), 0, 0.005 * byRaster);
        Assert.Equal(byRaster, bySensors, 4 * Math.Sqrt(variance));

        static double Variance(Estimate found) => Math.Pow(found.StandardError, 2) + Math.Pow(0.02 * found.Mean, 2);
        static void AssertClose(Estimate found, double expected) =>
            Assert.True(Math.Abs(found.Mean - expected) < 5 * Math.Sqrt(Variance(found)) + 1e-9, $"sensors {found}, blade {expected}");
        static double[] BothSides(SensorReading[] own, Func<SensorReading, double> value) =>
            [.. Enumerable.Range(0, own.Length / 2).Select(point => value(own[2 * point]) + value(own[(2 * point) + 1]))];
    }

    // What lies on a cluster, facing out, reads what its surface receives.
    [Fact]
    public void On_a_cluster_sensors_read_what_its_surface_receives()
    {
        const int Points = 400;
        var scene = RandomScenes.Hedge(60, 5, new Cell(1, 0.8));
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(300), LightCases.Quality(0.004, 0.002), 2);
        var (solution, radiosity) = geometry.SolveWithRadiosity([SensorCases.Day(SkyRings.Direction(50, 140))], new Optics(), 2);
        var areas = scene.SurfaceAreas();
        List<int> clusters = [.. Enumerable.Range(0, scene.SurfaceCount).Where(surface => scene.Kinds[surface] == SurfaceKind.Cluster)];
        Assert.Equal(2, clusters.Count);
        foreach (var cluster in clusters)
        {
            var outside = OnBlade(scene, cluster, Points).Where((_, index) => index % 2 == 0).ToList();
            var found = Estimate.Of([.. LightSensors.Place(geometry, outside, 2, rays: 100).Read(radiosity, 2)[0].Select(reading => reading.Par.Total)]);
            var expected = solution.AbsorbedPar[cluster] / areas[cluster] / (1 - new Optics().WoodParReflectance);
            Assert.True(Math.Abs(found.Mean - expected) < (4 * found.StandardError) + (0.02 * expected), $"sensors {found}, cluster {expected}");
        }
    }

    // Flat sensors strewn on the ground read what the ground receives: direct, through gaps from the sky, and in all.
    [Theory]
    [InlineData(1.5)]
    [InlineData(4)]
    public void Under_a_canopy_thrown_at_random_sensors_read_what_the_ground_receives(double leafAreaIndex)
    {
        const double Side = 0.06;
        const int Sensors = 1000;
        var cell = new Cell(1, 1);
        var thrown = ThrownBlades.Into(
            cell, (int)(leafAreaIndex / (Side * Side)), Side, BladeAngles.Spherical, new System.Numerics.Vector3(0, 0, 0.1f), new System.Numerics.Vector3(1, 1, 2), 3);
        var geometry = LightGeometry.Build(thrown.Scene, SkyRings.Spiral(300), LightCases.Quality(0.006, 0.004), 2);
        var hour = SensorCases.Day(SkyRings.Direction(30, 70));
        var optics = new Optics();
        var (solution, radiosity) = geometry.SolveWithRadiosity([hour], optics, 2);
        LightSensor[] sensors = [.. Enumerable.Range(0, Sensors).Select(index => SensorCases.At(Value("x", index), Value("y", index), 0, SensorCases.Up))];
        var readings = LightSensors.Place(geometry, sensors, 2, rays: 100).Read(radiosity, 2)[0];
        var sunny = 300 * Math.Cos(30 * Math.PI / 180);
        AssertClose(reading => reading.Par.Total, solution.ParBudgets[0].AbsorbedGround / (1 - optics.GroundParReflectance));
        AssertClose(reading => reading.Nir.Total, solution.NirBudgets[0].AbsorbedGround / (1 - optics.GroundNirReflectance));
        AssertClose(reading => reading.Par.Direct, sunny * solution.GroundSunlitFraction[0]);
        AssertClose(reading => reading.Par.Diffuse, 100 * geometry.SkyGapFraction);
        Assert.All(readings, reading => Assert.True(reading.Nir.Scattered > 0));

        // One part in a hundred: what 300 directions leave of the raster's gaps under four layers of leaf.
        void AssertClose(Func<SensorReading, double> value, double expected)
        {
            var found = Estimate.Of([.. readings.Select(value)]);
            Assert.True(Math.Abs(found.Mean - expected) < (4 * found.StandardError) + (0.01 * expected), $"sensors {found}, ground {expected}");
        }

        static double Value(string purpose, int index) => SeededValue.Uniform(71, purpose, index);
    }

    // Lengths and slopes that numbers hold exactly, so that a copy's rays are the same to the last bit.
    [Fact]
    public void A_copy_of_a_sensor_in_another_cell_reads_the_same()
    {
        var cell = new Cell(1.25, 0.75, 0.25, -0.125);
        var (geometry, radiosity) = Hedge(cell);
        LightSensor[] own = [.. Enumerable.Range(0, 12).Select(index => SensorCases.At(0.125 * index, 0.0625 * index, 1 + (0.03125 * index), Facing(index)))];
        LightSensor[] copies = [.. own.Select((sensor, index) =>
        {
            var (i, j) = (index - 5, 3 - index);
            return sensor with { Point = sensor.Point + new Point3(i * 1.25, j * 0.75, (i * 1.25 * 0.25) - (j * 0.75 * 0.125)) };
        })];
        Assert.Equal(LightSensors.Place(geometry, own, 2).Read(radiosity, 2), LightSensors.Place(geometry, copies, 2).Read(radiosity, 2));
    }

    [Fact]
    public void Threads_and_neighbors_change_no_bit()
    {
        var (geometry, radiosity) = Hedge(new Cell(1, 0.8));
        LightSensor[] sensors = [.. Enumerable.Range(0, 20).Select(index => SensorCases.At(0.05 * index, 0.04 * index, 0.7 + (0.05 * index), Facing(index)))];
        var one = LightSensors.Place(geometry, sensors, 1, 300).Read(radiosity, 1);
        Assert.Equal(one, LightSensors.Place(geometry, sensors, 5, 300).Read(radiosity, 5));
        Assert.Equal(one.Select(hour => hour[7]), LightSensors.Place(geometry, [sensors[7]], 1, 300).Read(radiosity, 1).Select(hour => hour[0]));
        Assert.True(one[0].Distinct().Count() == sensors.Length);
    }

    // More hours than the solver takes at once, so that they come from two groups.
    [Fact]
    public void Keeping_radiosity_changes_no_bit_and_each_hour_is_its_own()
    {
        var scene = RandomScenes.Hedge(40, 4, new Cell(1, 0.8));
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(60), LightCases.Quality(0.012, 0.008), 2);
        IncidentLight[] hours = [.. Enumerable.Range(0, 20).Select(hour => SensorCases.Day(SkyRings.Direction(20 + (3 * hour), 18 * hour)))];
        var (solution, radiosity) = geometry.SolveWithRadiosity(hours, new Optics(), 2);
        Assert.Equal(geometry.Solve(hours, new Optics(), 2).AbsorbedNir, solution.AbsorbedNir);
        var sensors = LightSensors.Place(geometry, [SensorCases.At(0.5, 0.3, 1.2, null)], 2, 300);
        var all = sensors.Read(radiosity, 2);
        foreach (var hour in new[] { 0, 15, 16, 19 })
        {
            var alone = sensors.Read(geometry.SolveWithRadiosity([hours[hour]], new Optics(), 2).Radiosity, 2)[0][0];
            Assert.Equal(alone.Nir.Direct, all[hour][0].Nir.Direct);
            Assert.Equal(alone.Nir.Scattered, all[hour][0].Nir.Scattered, 1e-4 * alone.Nir.Scattered);
        }
    }

    [Fact]
    public void A_bar_lies_over_the_ground_of_its_row_and_reads_the_mean()
    {
        var bar = LightBar.AlongRow(new Cell(2, 1.5, 0.2, -0.1), 0.5, 1, 3, SensorCases.Up);
        Assert.Equal([0.25, 0.75, 1.25], bar.Select(sensor => sensor.Point.Y));
        foreach (var sensor in bar)
        {
            Assert.Equal(0.5, sensor.Point.X);
            Assert.Equal(1, sensor.Point.Z - (0.2 * 0.5) + (0.1 * sensor.Point.Y), 1e-12);
        }

        var (par, nir) = (new SensorIrradiance(1, 2, 3), new SensorIrradiance(4, 6, 8));
        var mean = LightBar.Mean([new SensorReading(par, nir), new SensorReading(nir, nir)]);
        Assert.Equal(new SensorReading(new SensorIrradiance(2.5, 4, 5.5), nir), mean);
    }

    private static Point3? Facing(int index) => index % 4 == 0 ? null : SensorCases.Tilted(40 * index, 25 * index);

    private static (LightGeometry Geometry, FaceRadiosity Radiosity) Hedge(Cell cell)
    {
        var geometry = LightGeometry.Build(RandomScenes.Hedge(60, 5, cell), SkyRings.Spiral(100), LightCases.Quality(0.012, 0.008), 2);
        IncidentLight[] hours = [SensorCases.Day(SkyRings.Direction(40, 60)), SensorCases.Day(SkyRings.Direction(70, 200))];
        return (geometry, geometry.SolveWithRadiosity(hours, new Optics(), 2).Radiosity);
    }

    // A point on each side of the blade at every place, the upper first.
    private static IEnumerable<LightSensor> OnBlade(Scene scene, int blade, int count)
    {
        var points = new SurfacePoints(scene, blade);
        for (var index = 0; index < count; index++)
        {
            var (place, triangle) = points.At(index);
            var normal = points.Normal(triangle);
            yield return new LightSensor(place + (Over * normal), normal);
            yield return new LightSensor(place + (-Over * normal), -1 * normal);
        }
    }
}
