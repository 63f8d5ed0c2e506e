using CanopySim.Sky;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Weather;

public class WeatherBuilderTests
{
    private const double Offset = -8;

    private static readonly DateOnly FirstDay = new(2023, 12, 20);
    private static readonly Site Block = new() { Latitude = 38.4, Longitude = -122.6, Elevation = 120, WindHeight = 10 };
    private static readonly WeatherOptions Options = new() { File = "weather.csv" };

    private static WeatherRecord Daily(int count, Func<int, DailyReading> reading) =>
        new() { FirstDay = FirstDay, Days = [.. Enumerable.Range(0, count).Select(reading)] };

    private static DailyReading Bare(int day) =>
        new(3 + 5 * Math.Sin(day * 1.7), 16 + 7 * Math.Sin(day * 0.9), null, null, null, null);

    [Fact]
    public void Days_become_hours_and_every_estimate_is_named()
    {
        var series = WeatherBuilder.Complete(Daily(40, Bare), Options, Block, Offset);
        Assert.Equal(
            ["hourly_temperature", "global_radiation", "hourly_radiation", "direct_and_diffuse", "vapor_pressure", "air_pressure", "wind", "rain"],
            series.EstimatedInputs);
        Assert.Equal(40, series.Days.Count);
        for (var index = 0; index < 40; index++)
        {
            var day = series.Days[index];
            Assert.Equal(FirstDay.AddDays(index), day.Date);
            Assert.Equal(Bare(index).MinimumTemperatureCelsius, day.MinimumTemperatureCelsius);
            Assert.Equal(Bare(index).MaximumTemperatureCelsius, day.MaximumTemperatureCelsius);
            Assert.Equal(0, day.Rain);
            Assert.All(day.Hours, hour =>
            {
                Assert.Equal(AirState.DefaultWindSpeed, hour.WindSpeed);
                Assert.Equal(AirState.PressureAt(120), hour.AirPressure);
                Assert.InRange(hour.VaporPressure, 0, SaturationVaporPressure.At(hour.AirTemperatureCelsius) * (1 + 1e-12));
            });
        }
    }

    [Fact]
    public void Light_closes_with_the_hours_own_sun()
    {
        foreach (var (latitude, offset) in new[] { (38.4, -8.0), (-36, 11.5), (60, -6), (0, 0) })
        {
            var site = Block with { Latitude = latitude };
            var series = WeatherBuilder.Complete(Daily(370, Bare), Options, site, offset);
            foreach (var day in series.Days)
                for (var hour = 0; hour < 24; hour++)
                {
                    var light = day.Hours[hour];
                    var sun = HourlySun.At(day.Date, hour, site, offset);
                    Assert.Equal(
                        light.GlobalHorizontalIrradiance,
                        light.DirectNormalIrradiance * sun.CosZenith + light.DiffuseHorizontalIrradiance,
                        1e-9);
                    Assert.InRange(light.DirectNormalIrradiance, 0, ExtraterrestrialRadiation.Normal(sun.Position.DistanceAu));
                    Assert.True(light.DiffuseHorizontalIrradiance >= 0);
                    if (!sun.IsUp) Assert.Equal(0, light.GlobalHorizontalIrradiance);
                    else if (day.MaximumTemperatureCelsius > day.MinimumTemperatureCelsius) Assert.True(light.GlobalHorizontalIrradiance > 0);
                }
        }
    }

    [Fact]
    public void Measured_sums_of_a_day_are_kept()
    {
        var series = WeatherBuilder.Complete(
            Daily(60, day => Bare(day) with { GlobalRadiation = 3 + day * 0.2, Rain = 0.7 * day, WindSpeed = 3.2, VaporPressure = 0.4 }),
            Options, Block, Offset);
        Assert.Equal(["hourly_temperature", "hourly_radiation", "direct_and_diffuse", "air_pressure"], series.EstimatedInputs);
        for (var index = 0; index < 60; index++)
        {
            var day = series.Days[index];
            var sum = day.Hours.Sum(hour => hour.GlobalHorizontalIrradiance) * 3600 / 1e6;
            Assert.Equal(3 + index * 0.2, sum, 1e-9 * sum);
            Assert.Equal(0.7 * index, day.Rain, 1e-9);

            // Wind as in FAO-56 Example 14: 3.2 m/s at 10 m is 2.4 at 2 m.
            Assert.All(day.Hours, hour => Assert.Equal(2.4, hour.WindSpeed, 0.05));
        }
    }

    // Radiation is even about solar noon, so the mean hour of a day, weighted by it, is noon: within the hour's discreteness,
    // some minutes.
    [Fact]
    public void Radiation_is_centered_on_solar_noon()
    {
        var series = WeatherBuilder.Complete(Daily(300, Bare), Options, Block, Offset);
        foreach (var day in series.Days)
        {
            var total = day.Hours.Sum(hour => hour.GlobalHorizontalIrradiance);
            var center = Enumerable.Range(0, 24).Sum(hour => (hour + 0.5) * day.Hours[hour].GlobalHorizontalIrradiance) / total;
            Assert.Equal(SolarDay.At(day.Date, Block, Offset).NoonHour, center, 0.05);
        }
    }

    [Fact]
    public void Measured_hours_are_kept()
    {
        var sunny = new HourlyReading(20, 1.2, 400, 150, null, 0.5, 2, 99);
        var record = new WeatherRecord { FirstDay = new DateOnly(2023, 6, 1), Hours = [.. Enumerable.Repeat(sunny, 48)] };
        var series = WeatherBuilder.Complete(record, Options, Block with { WindHeight = 2 }, Offset);
        Assert.Empty(series.EstimatedInputs);
        Assert.Equal(2, series.Days.Count);
        var noon = series.Days[1].Hours[12];
        var sun = HourlySun.At(new DateOnly(2023, 6, 2), 12, Block, Offset);
        Assert.Equal((20, 1.2, 99, 0.5, 400, 150), (noon.AirTemperatureCelsius, noon.VaporPressure, noon.AirPressure, noon.Rain,
            noon.GlobalHorizontalIrradiance, noon.DiffuseHorizontalIrradiance));
        Assert.Equal(250 / sun.CosZenith, noon.DirectNormalIrradiance, 1e-9);

        // FAO-56 Eq. 47 changes wind at 2 m by less than 0.1 %: 4.87 / ln(130.18) = 1.00017.
        Assert.Equal(2, noon.WindSpeed, 2e-3);
        Assert.Equal(default, (series.Days[0].Hours[0].GlobalHorizontalIrradiance, series.Days[0].Hours[0].DirectNormalIrradiance));
    }

    [Fact]
    public void Gaps_in_measured_hours_are_estimated_one_by_one()
    {
        var full = new HourlyReading(18, 1.2, null, 100, 600, 0, 2, 99);
        var hours = Enumerable.Repeat(full, 24).ToArray();
        hours[4] = hours[4] with { AirTemperatureCelsius = 8 };
        var measured = new WeatherRecord { FirstDay = new DateOnly(2023, 6, 1), Hours = hours };
        Assert.Empty(WeatherBuilder.Complete(measured, Options, Block, Offset).EstimatedInputs);

        hours[11] = hours[11] with { DirectNormalIrradiance = null };
        hours[3] = hours[3] with { VaporPressure = null };
        var series = WeatherBuilder.Complete(measured with { Hours = hours }, Options, Block, Offset);
        Assert.Equal(["global_radiation", "hourly_radiation", "vapor_pressure"], series.EstimatedInputs);
        Assert.Equal(100, series.Days[0].Hours[11].DiffuseHorizontalIrradiance, 1e-9);
        Assert.True(series.Days[0].Hours[11].GlobalHorizontalIrradiance > 100);
        Assert.Equal(SaturationVaporPressure.At(8), series.Days[0].Hours[3].VaporPressure);

        // Its neighbor kept direct and diffuse, and so their sum.
        var sun = HourlySun.At(new DateOnly(2023, 6, 1), 10, Block, Offset);
        Assert.Equal(600 * sun.CosZenith + 100, series.Days[0].Hours[10].GlobalHorizontalIrradiance, 1e-9);
    }

    [Fact]
    public void Air_never_holds_more_vapor_than_saturation()
    {
        var record = Daily(3, day => Bare(day) with { VaporPressure = 3 });
        foreach (var hour in WeatherBuilder.Complete(record, Options, Block, Offset).Days.SelectMany(day => day.Hours))
            Assert.InRange(hour.VaporPressure, 0, SaturationVaporPressure.At(hour.AirTemperatureCelsius));
    }

    [Fact]
    public void Gives_the_same_bits_twice()
    {
        var first = WeatherBuilder.Complete(Daily(30, Bare), Options, Block, Offset);
        var second = WeatherBuilder.Complete(Daily(30, Bare), Options, Block, Offset);
        Assert.Equal(first.Days.SelectMany(day => day.Hours), second.Days.SelectMany(day => day.Hours));
    }
}
