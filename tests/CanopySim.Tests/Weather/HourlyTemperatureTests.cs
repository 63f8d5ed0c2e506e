using CanopySim.Sky;
using CsCheck;
using Xunit;
using static CanopySim.Weather.HourlyTemperature;

namespace CanopySim.Tests.Weather;

public class HourlyTemperatureTests
{
    private static readonly SolarDay Equal12 = new(6, 12, 18);

    // By hand from Parton & Logan 1981 (Agric Meteorol 23:205-216), Y = 12, a = 1.86, c = -0.17: minimum at 5.83, maximum 7.86 h
    // later at 13.69; 10 deg C at 5.83, 26 at 13.69; at 9.76, half of the way, 10 + 16 sin(pi/4) = 21.3137.
    [Theory]
    [InlineData(5.83, 10)]
    [InlineData(9.76, 21.3137)]
    [InlineData(13.69, 26)]
    public void Day_is_the_published_sine(double hour, double expected)
    {
        var day = new Extremes(10, 26, Equal12);
        Assert.Equal(expected, At(hour, day, day, day), 5e-5);
    }

    // At sunset m = 12.17 and T = 10 + 16 sin(pi 12.17 / 15.72) = 20.4227. The published night leaves exp(-2.2) = 0.1108 of the
    // fall at the next minimum, 11.83 h later; stretched, half-way T = 10 + 10.4227 (exp(-1.1) - 0.1108) / (1 - 0.1108) =
    // 12.6030.
    [Fact]
    public void Night_is_the_stretched_exponential()
    {
        var day = new Extremes(10, 26, Equal12);
        Assert.Equal(20.4227, At(18, day, day, day), 5e-5);
        Assert.Equal(12.6030, At(18 + 11.83 / 2, day, day, day), 5e-5);
        Assert.Equal(10, At(5.83, day, day, day), 1e-9);
    }

    private static readonly Gen<Extremes> AnyExtremes =
        from minimum in Gen.Double[-15, 25]
        from range in Gen.Double[0, 25]
        from sunrise in Gen.Double[3, 9]
        from length in Gen.Double[6, 18]
        select new Extremes(minimum, minimum + range, new SolarDay(sunrise, sunrise + length / 2, sunrise + length));

    [Fact]
    public void Reproduces_the_extremes_and_never_leaves_them() =>
        Gen.Select(AnyExtremes, AnyExtremes, AnyExtremes).Sample((previous, day, next) =>
        {
            var hours = OfDay(previous, day, next);
            Assert.Equal(24, hours.Length);
            Assert.Equal(day.Minimum, hours.Min());
            Assert.Equal(day.Maximum, hours.Max());
        });

    [Fact]
    public void Is_continuous_at_midnight_at_sunset_and_at_the_minimum() =>
        Gen.Select(AnyExtremes, AnyExtremes, AnyExtremes, AnyExtremes).Sample((first, second, third, fourth) =>
        {
            if (first.Sun.SunsetHour > 24 || second.Sun.SunsetHour > 24) return;
            Assert.Equal(At(24, first, second, third), At(0, second, third, fourth), 1e-9);
            foreach (var hour in new[] { second.Sun.SunsetHour, second.MinimumHour })
                Assert.Equal(At(hour - 1e-9, first, second, third), At(hour + 1e-9, first, second, third), 1e-6);
        });

    // Where mornings alike follow days alike no clamp is at work: one hour joins the next, midnight included. The steepest hour
    // of a 16 degree range is the first after the minimum: 16 sin(1.5 pi / 15.72) = 4.7, the half hour of the pinned minimum in
    // it.
    [Fact]
    public void Days_alike_join_without_a_jump()
    {
        var day = new Extremes(10, 26, Equal12);
        var hours = OfDay(day, day, day);
        for (var hour = 0; hour < 24; hour++) Assert.InRange(Math.Abs(hours[(hour + 1) % 24] - hours[hour]), 0, 4.75);
        Assert.InRange(Math.Abs(hours[0] - hours[23]), 0, 1);
    }
}
