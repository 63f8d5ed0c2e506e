using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests;

public partial class SunTests
{
    // What design and readers ask of the program; the engine's own test holds the model to a tenth of it.
    private const double AllowedDegrees = 0.01;

    // solar_astropy_reference.csv: astropy 5.2.1 (ERFA), get_sun -> AltAz, topocentric apparent, pressure 0, UT1-UTC forced to 0;
    // 403 random instants of 1990-2040.
    [Fact]
    public void A_table_of_times_gets_positions_that_agree_with_an_independent_ephemeris()
    {
        var reference = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "solar_astropy_reference.csv"))
            .Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')).ToList();
        Assert.Equal(403, reference.Count);
        using var folder = new TemporaryFolder();
        folder.Write("times.csv", "utc,latitude_deg,longitude_deg,elevation_m\n"
            + string.Concat(reference.Select(row => $"{row[0]},{row[2]},{row[3]},{row[4]}\n")));

        var run = RunnerProcess.Run(folder.Path, "sun", "--times", "times.csv");

        Assert.True(run.ExitCode == 0, run.ToString());
        Assert.Empty(run.Error);
        var lines = run.Output.TrimEnd('\n').Split('\n');
        Assert.Equal("utc,zenith_deg,azimuth_deg", lines[0]);
        Assert.Equal(reference.Count, lines.Length - 1);
        var worst = 0.0;
        foreach (var (line, row) in lines.Skip(1).Zip(reference))
        {
            Assert.Matches(Row(), line);
            var cells = line.Split(',');
            Assert.Equal(row[0], cells[0]);
            worst = Math.Max(worst, Angle(Number(cells[1]), Number(cells[2]), Number(row[6]), Number(row[7])));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"largest angle {worst:F6} deg"));
        Assert.InRange(worst, 0, AllowedDegrees);
    }

    [Fact]
    public void One_time_is_the_same_as_a_row_of_a_table_and_an_offset_is_brought_to_universal_time()
    {
        using var folder = new TemporaryFolder();
        folder.Write("times.csv", "utc\n2025-06-21T12:00:00Z\n");
        var place = new[] { "--latitude", "38.4", "--longitude", "-122.3" };
        var table = RunnerProcess.Run(folder.Path, ["sun", "--times", "times.csv", .. place]);
        var one = RunnerProcess.Run(folder.Path, ["sun", "--at", "2025-06-21T05:00:00-07:00", .. place]);
        Assert.True(one.ExitCode == 0, one.ToString());
        Assert.Equal(table.Output, one.Output);
    }

    /// <summary>Angle [deg] between two directions given by zenith and azimuth [deg].</summary>
    private static double Angle(double zenith, double azimuth, double otherZenith, double otherAzimuth)
    {
        var (x, y, z) = Direction(zenith, azimuth);
        var (u, v, w) = Direction(otherZenith, otherAzimuth);
        var chord = Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v)) + ((z - w) * (z - w)));
        return double.RadiansToDegrees(2 * Math.Asin(chord / 2));
    }

    private static (double X, double Y, double Z) Direction(double zenith, double azimuth)
    {
        var (sinZenith, cosZenith) = Math.SinCos(double.DegreesToRadians(zenith));
        var (sinAzimuth, cosAzimuth) = Math.SinCos(double.DegreesToRadians(azimuth));
        return (sinZenith * sinAzimuth, sinZenith * cosAzimuth, cosZenith);
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z,\d+\.\d+,\d+\.\d+$")]
    private static partial Regex Row();
}
