using CanopySim.Drawing.Painting;
using CanopySim.Training;

namespace CanopySim.Viewer.Tests.Painting;

public class SunPathTest
{
    [Fact]
    public void At_noon_of_the_northern_summer_the_sun_stands_in_the_south_and_highest()
    {
        var scenario = SyntheticBlock.Scenario;
        var path = SunPath.Of(scenario, 0, new DateOnly(2025, 6, 21));
        var highest = path.MaxBy(point => point.Direction.Z);
        Assert.InRange(highest.Hour, 11.8, 12.2);
        // Latitude 45, declination 23.4: 68.4 degrees high, to the south, so against the row's direction.
        Assert.Equal(Math.Sin(68.4 * Math.PI / 180), highest.Direction.Z, 3);
        Assert.True(highest.Direction.Y < -0.3f);
        Assert.InRange(path.Count, 6 * 15, 6 * 16);
    }

    [Fact]
    public void Rows_that_run_east_have_the_morning_sun_before_them()
    {
        var scenario = SyntheticBlock.Scenario with { Rows = new RowLayout { Azimuth = 90 } };
        var morning = SunPath.At(scenario, 0, new DateOnly(2025, 3, 20), 6.5);
        Assert.True(morning.Y > 0.95f, $"{morning}");
    }
}
