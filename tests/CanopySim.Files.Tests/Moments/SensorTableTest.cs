using CanopySim.Files.Moments;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Files.Tests.Moments;

public sealed class SensorTableTest : IDisposable
{
    private static readonly Cell Slope = new(2.4, 1.5, 0.1, -0.05);

    private readonly string _path = Path.Combine(Directory.CreateTempSubdirectory("canopysim-sensors-").FullName, "sensors.csv");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_path)!, recursive: true);

    [Fact]
    public void WordsOfTheCompassTurnWithTheRow()
    {
        var sensors = Read("# a bar\nsensor,x_m,y_m,z_m,facing\na,0.5,-1,1.2,up\n\"b, c\",0,0,1,East\nd,0,0,1,\ne,0,0,1,left\nf,0,0,1,sphere\ng,0,0,1,north\n", rowAzimuth: 30);
        Assert.Equal(["a", "b, c", "d", "e", "f", "g"], sensors.Select(sensor => sensor.Name));
        Assert.Equal(new LightSensor(new Point3(0.5, -1, 1.2), new Point3(0, 0, 1)), sensors[0].Sensor);
        Near(new Point3(Math.Sin(Math.PI / 3), Math.Cos(Math.PI / 3), 0), sensors[1].Sensor.Facing);
        Assert.Null(sensors[2].Sensor.Facing);
        Assert.Equal(new Point3(-1, 0, 0), sensors[3].Sensor.Facing);
        Assert.Null(sensors[4].Sensor.Facing);
        Near(new Point3(-0.5, Math.Sqrt(0.75), 0), sensors[5].Sensor.Facing);
    }

    // What begins with # is a comment unless it is quoted.
    [Theory]
    [InlineData("#1", "\"#1\",")]
    [InlineData("b, c", "\"b, c\",")]
    [InlineData("5\" pole", "\"5\"\" pole\",")]
    [InlineData("pole #1", "pole #1,")]
    public void NamesAreWrittenSoThatTheyAreReadAgain(string name, string cell)
    {
        var sensors = Read($"sensor,x_m,y_m,z_m\n\"{name.Replace("\"", "\"\"")}\",0,0,1\n");
        Assert.Equal(name, sensors[0].Name);
        SensorFiles.Write(_path, [new SensorRow(sensors[0], default, 1)]);
        Assert.StartsWith(cell, File.ReadAllLines(_path)[1], StringComparison.Ordinal);
    }

    [Fact]
    public void AVectorNeedNotHaveLengthOne()
    {
        var sensors = Read("facing_z;facing_y;facing_x;z_m;y_m;x_m;sensor\n0;0;-3;1;0;0;a\n;;;1;0;0;b\n1;1;0;1;0;0;c\n");
        Assert.Equal(new Point3(-1, 0, 0), sensors[0].Sensor.Facing);
        Assert.Null(sensors[1].Sensor.Facing);
        Near(new Point3(0, Math.Sqrt(0.5), Math.Sqrt(0.5)), sensors[2].Sensor.Facing);
    }

    [Fact]
    public void WithoutAFacingAllAreSpheresAndTheGroundHoldsThem()
    {
        var sensors = Read("sensor,x_m,y_m,z_m\na,1,2,-0.0005\nb,-1,0,-0.1\n");
        Assert.All(sensors, sensor => Assert.Null(sensor.Sensor.Facing));
        Assert.Equal(0, sensors[0].Sensor.Point.Z, 1e-12);
        Assert.Equal(-0.1, sensors[1].Sensor.Point.Z, 1e-12);
    }

    [Theory]
    [InlineData("sensor,x_m,y_m\na,0,0\n", 1, "z_m: no column z_m")]
    [InlineData("sensor,x_m,y_m,z\na,0,0,1\n", 1, "z: unknown column \"z\"; expected sensor, x_m, ")]
    [InlineData("sensor,x_m,y_m,z_m,facng\na,0,0,1,up\n", 1, "did you mean \"facing\"?")]
    [InlineData("sensor,x_m,x_m,y_m,z_m\na,0,0,0,1\n", 1, "the column x_m twice")]
    [InlineData("sensor,x_m,y_m,z_m,facing_x,facing_y\na,0,0,1,1,0\n", 1, "facing_z: no column facing_z")]
    [InlineData("sensor,x_m,y_m,z_m,facing,facing_x,facing_y,facing_z\na,0,0,1,up,0,0,1\n", 1, "facing as a word and as a vector")]
    [InlineData("sensor,x_m,y_m,z_m,facing\na,0,0,1\n", 2, "4 cells; expected 5")]
    [InlineData("sensor,x_m,y_m,z_m,facing\na,0,0,1,upp\n", 2, "column 5 (facing): \"upp\"; expected up, down, ", "did you mean \"up\"?")]
    [InlineData("sensor,x_m,y_m,z_m\n,0,0,1\n", 2, "column 1 (sensor): no name")]
    [InlineData("sensor,x_m,y_m,z_m\na,0,0,1\n\na,0,0,2\n", 4, "column 1 (sensor): \"a\" a second time, after line 2")]
    [InlineData("sensor,x_m,y_m,z_m\na,0,0,high\n", 2, "column 4 (z_m): \"high\"; expected a number from -1000 to 1000")]
    [InlineData("sensor,x_m,y_m,z_m\na,,0,1\n", 2, "column 2 (x_m): \"\"")]
    [InlineData("sensor,x_m,y_m,z_m\na,0,NaN,1\n", 2, "column 3 (y_m): \"NaN\"")]
    [InlineData("sensor,x_m,y_m,z_m\na,0,2e3,1\n", 2, "column 3 (y_m): \"2e3\"")]
    [InlineData("sensor,x_m,y_m,z_m\na,1,0,0.05\n", 2, "column 4 (z_m): \"0.05\", under the ground; expected 0.1 or more")]
    [InlineData("sensor,x_m,y_m,z_m,facing_x,facing_y,facing_z\na,0,0,1,0,0,0\n", 2, "column 5 (facing_x): a vector without length")]
    [InlineData("sensor,x_m,y_m,z_m,facing_x,facing_y,facing_z\na,0,0,1,0,,1\n", 2, "column 6 (facing_y): \"\"")]
    [InlineData("sensor,x_m,y_m,z_m\na,0,0,\"1\n", 2, "a quote that is not closed")]
    [InlineData("sensor,x_m,y_m,z_m\n# none yet\n", 2, "no sensors")]
    [InlineData("# nothing\n", 1, "no header")]
    public void WhatIsWrongIsNamedWithItsLine(string text, int line, params string[] parts)
    {
        var error = Assert.Throws<InputError>(() => Read(text));
        Assert.StartsWith($"{_path}:{line}: ", error.Message, StringComparison.Ordinal);
        foreach (var part in parts) Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SensorsOfAMomentHaveTheirColumns()
    {
        var reading = new SensorReading(new SensorIrradiance(100, 50, 10), new SensorIrradiance(120, 40, 60));
        var up = new NamedSensor("up, \"over\" row", new LightSensor(new Point3(0.5, 0.25, 1), new Point3(0, 0, 1)));
        SensorFiles.Write(_path, [new SensorRow(up, reading, 914), new SensorRow(up with { Name = "dark" }, default, 0)]);
        Assert.Equal(
            "sensor,x_m,y_m,z_m,par_direct_umol_m2_s,par_diffuse_umol_m2_s,par_scattered_umol_m2_s,par_umol_m2_s,par_share_of_above,nir_w_m2\n"
            + "\"up, \"\"over\"\" row\",0.5,0.25,1,457,228.5,45.7,731.2,0.8,220\ndark,0.5,0.25,1,0,0,0,0,,0\n",
            File.ReadAllText(_path));
    }

    private IReadOnlyList<NamedSensor> Read(string text, double rowAzimuth = 0)
    {
        File.WriteAllText(_path, text);
        return SensorTable.Read(_path, Slope, rowAzimuth);
    }

    private static void Near(Point3 expected, Point3? found)
    {
        var difference = expected - Assert.NotNull(found);
        Assert.InRange(Point3.Dot(difference, difference), 0, 1e-24);
    }
}
