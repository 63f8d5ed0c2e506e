using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Weather;

/// <summary>What is asked is added, to what is generated as to what is measured, and all else has the bits that it had.</summary>
public class WeatherShiftTests
{
    private static readonly DateOnly FirstDay = new(2001, 1, 1);

    private static readonly WeatherOptions Asked = new()
    {
        File = "none",
        Warming = 1.5,
        WinterWarming = 0.25,
        SpringWarming = -0.5,
        SummerWarming = 1,
        AutumnWarming = 2,
        RainFactor = 0.8,
    };

    private static readonly double[] NorthernByMonth = [1.75, 1.75, 1, 1, 1, 2.5, 2.5, 2.5, 3.5, 3.5, 3.5, 1.75];

    private static WeatherRecord Made { get; } = WeatherGenerator.Generate(
        WeatherClimate.Of(RecordedWeather.Invented, RecordedWeather.InventedSite), 3, FirstDay, FirstDay.AddYears(40).DayNumber - FirstDay.DayNumber);

    [Theory]
    [InlineData(38.4, 0)]
    [InlineData(-34.0, 6)]
    public void Means_of_each_month_move_by_what_was_asked_and_the_rest_stays(double latitude, int monthsLater)
    {
        var shifted = WeatherShift.Apply(Made, Asked, RecordedWeather.InventedSite with { Latitude = latitude });
        Assert.True(shifted.IsShifted && shifted.IsGenerated);
        for (var month = 1; month <= 12; month++)
        {
            var (before, after) = (Month(Made, month), Month(shifted, month));
            var warming = NorthernByMonth[(month - 1 + monthsLater) % 12];
            foreach (var of in new Func<DailyReading, double>[] { day => day.MinimumTemperatureCelsius, day => day.MaximumTemperatureCelsius })
            {
                Assert.Equal(before.Average(of) + warming, after.Average(of), 1e-10);
                Assert.Equal(Deviation(before, of), Deviation(after, of), 1e-10);
                Assert.Equal(WithDayBefore(before, of), WithDayBefore(after, of), 1e-10);
            }

            Assert.Equal(0.8 * before.Average(day => day.Rain!.Value), after.Average(day => day.Rain!.Value), 1e-10);
            Assert.Equal(before.Select(day => day.Rain > 0), after.Select(day => day.Rain > 0));
            Assert.Equal(before.Select(day => (day.GlobalRadiation, day.WindSpeed)), after.Select(day => (day.GlobalRadiation, day.WindSpeed)));
            foreach (var (one, other) in before.Zip(after))
                Assert.Equal(RelativeToMaximum(one), RelativeToMaximum(other), 1e-12);
        }
    }

    [Fact]
    public void Hours_are_moved_as_days_are()
    {
        var hours = Enumerable.Range(0, 24 * 60).Select(hour => new HourlyReading(10 + (hour % 24), 0.9, 100, null, null, hour % 5, 2, 101)).ToList();
        var record = new WeatherRecord { FirstDay = new DateOnly(2001, 2, 1), Hours = hours };
        var shifted = WeatherShift.Apply(record, Asked, RecordedWeather.InventedSite);
        for (var hour = 0; hour < hours.Count; hour++)
        {
            var (before, after) = (hours[hour], shifted.Hours[hour]);
            var warming = hour < 24 * 28 ? 1.75 : 1;
            Assert.Equal(before.AirTemperatureCelsius + warming, after.AirTemperatureCelsius, 1e-12);
            Assert.Equal(
                before.VaporPressure!.Value / SaturationVaporPressure.At(before.AirTemperatureCelsius),
                after.VaporPressure!.Value / SaturationVaporPressure.At(after.AirTemperatureCelsius), 1e-12);
            Assert.Equal(before with { AirTemperatureCelsius = 0, VaporPressure = 0, Rain = 0 }, after with { AirTemperatureCelsius = 0, VaporPressure = 0, Rain = 0 });
            Assert.Equal(0.8 * before.Rain!.Value, after.Rain!.Value, 1e-12);
        }
    }

    [Fact]
    public void Nothing_asked_changes_nothing()
    {
        Assert.Same(Made, WeatherShift.Apply(Made, new WeatherOptions { File = "none" }, RecordedWeather.InventedSite));
        var lacking = RecordedWeather.Measured with { Days = [.. RecordedWeather.Measured.Days.Take(3)] };
        Assert.All(WeatherShift.Apply(lacking, Asked, RecordedWeather.MeasuredSite).Days, day => Assert.True(day is { VaporPressure: null, GlobalRadiation: null }));
    }

    private static DailyReading[] Month(WeatherRecord record, int month) =>
        [.. record.Days.Where((_, day) => record.FirstDay.AddDays(day).Month == month)];

    private static double RelativeToMaximum(DailyReading day) => day.VaporPressure!.Value / SaturationVaporPressure.At(day.MaximumTemperatureCelsius);

    private static double Deviation(DailyReading[] days, Func<DailyReading, double> of)
    {
        var mean = days.Average(of);
        return Math.Sqrt(days.Average(day => (of(day) - mean) * (of(day) - mean)));
    }

    private static double WithDayBefore(DailyReading[] days, Func<DailyReading, double> of)
    {
        var mean = days.Average(of);
        return days.Zip(days.Skip(1)).Average(pair => (of(pair.First) - mean) * (of(pair.Second) - mean)) / Math.Pow(Deviation(days, of), 2);
    }
}
