using CanopySim.Protection;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Protection;

/// <summary>
/// Worked sequences from the published rules (University of California Cooperative Extension in Western Farm Press; the
/// sums by hand). A letter a day: f six good hours, n none, h heat alone, b both.
/// </summary>
public class MildewIndexTests
{
    [Theory]
    [InlineData("fff", "20 40 60", "the start")]
    [InlineData("nffnfff", "0 20 40 0 20 40 60", "a start that is broken begins anew")]
    [InlineData("fffnn", "20 40 60 50 40", "a day without costs ten")]
    [InlineData("ffffff", "20 40 60 80 100 100", "never over 100")]
    [InlineData("fffhhhhhhhf", "20 40 60 50 40 30 20 10 0 0 20", "heat costs ten, never under 0, and it need not begin again")]
    [InlineData("fffbbh", "20 40 60 70 80 70", "heat on a good day leaves ten of the twenty")]
    [InlineData("fffffb", "20 40 60 80 100 100", "ten more than 100 is 100")]
    [InlineData("bbb", "20 40 60", "before it has begun the hours alone count")]
    [InlineData("ffh", "20 40 0", "heat without good hours breaks a start as any day without them")]
    [InlineData("nnfffnnnnnnnf", "0 0 20 40 60 50 40 30 20 10 0 0 20", "once begun it falls to 0 and rises again at once")]
    [InlineData(
        "fnffnnfffffhbnffffhh", "20 0 20 40 0 0 20 40 60 80 100 90 100 90 100 100 100 100 90 80",
        "a spring: two starts broken, the third holds; heat and cool days against good ones; the limit")]
    public void Follows_the_published_rules(string letters, string points, string why)
    {
        var days = MildewIndex.Of(letters.Select(Day));
        Assert.Equal(points, string.Join(' ', days.Select(day => day.Points)));
        Assert.NotEmpty(why);
    }

    [Fact]
    public void It_has_begun_on_the_third_day() =>
        Assert.Equal([false, false, true, true], MildewIndex.Of("fffn".Select(Day)).Select(day => day.HasBegun));

    // 70 and 85 °F belong to the range; hours must follow each other.
    [Theory]
    [InlineData(6, 70, 6)]
    [InlineData(6, 69.9, 0)]
    [InlineData(6, 85, 6)]
    [InlineData(6, 85.1, 0)]
    [InlineData(5, 75, 5)]
    public void Counts_hours_from_70_to_85_Fahrenheit(int hours, double fahrenheit, int favorable)
    {
        var day = WithHours((8, hours, (fahrenheit - 32) / 1.8));
        Assert.Equal(favorable, MildewIndex.Of([day])[0].FavorableHours);
        Assert.Equal(favorable >= 6 ? 20 : 0, MildewIndex.Of([day])[0].Points);
    }

    // The published heat is 95 °F for a quarter of an hour; here an hour's mean must reach it.
    [Theory]
    [InlineData(95, 70)]
    [InlineData(94.9, 80)]
    public void Heat_begins_at_95_Fahrenheit(double fahrenheit, int points)
    {
        var day = WithHours((8, 6, 25), (15, 1, (fahrenheit - 32) / 1.8));
        Assert.Equal(points, MildewIndex.Of([.. "fff".Select(Day), day])[3].Points);
        Assert.Equal(fahrenheit >= 95, MildewIndex.Of([day])[0].IsHot);
    }

    // Eight warm hours about midnight are five of one day and three of the next.
    [Fact]
    public void A_warm_run_through_midnight_counts_by_its_parts()
    {
        var days = MildewIndex.Of([WithHours((19, 5, 22)), WithHours((0, 3, 22)) with { Date = new DateOnly(2025, 5, 2) }]);
        Assert.Equal([5, 3], days.Select(day => day.FavorableHours));
        Assert.All(days, day => Assert.False(day.IsFavorable));
    }

    [Fact]
    public void Two_runs_of_three_hours_are_no_six() =>
        Assert.Equal(3, MildewIndex.Of([WithHours((8, 3, 25), (14, 3, 25))])[0].FavorableHours);

    [Theory]
    [InlineData(30, MildewPressure.Low)]
    [InlineData(40, MildewPressure.Moderate)]
    [InlineData(60, MildewPressure.Moderate)]
    [InlineData(70, MildewPressure.High)]
    public void Classes_are_the_published_ones(int points, MildewPressure pressure) =>
        Assert.Equal(pressure, new MildewDay(default, 0, false, true, points).Pressure);

    private static WeatherDay Day(char letter, int index) => letter switch
    {
        'f' => WithHours((9, 6, 25)),
        'h' => WithHours((15, 1, 35)),
        'b' => WithHours((8, 6, 25), (15, 1, 36)),
        _ => WithHours(),
    } with
    { Date = new DateOnly(2025, 5, 1).AddDays(index) };

    private static WeatherDay WithHours(params (int From, int Count, double Celsius)[] warm)
    {
        var hours = new WeatherHour[24];
        for (var hour = 0; hour < 24; hour++)
        {
            var celsius = 12.0;
            foreach (var (from, count, at) in warm)
                if (hour >= from && hour < from + count) celsius = at;
            hours[hour] = new WeatherHour(celsius, 1, 101, 1, 0, 0, 0, 0);
        }

        return new WeatherDay { Date = new DateOnly(2025, 5, 1), Hours = hours };
    }
}
