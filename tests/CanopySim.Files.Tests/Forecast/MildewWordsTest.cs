using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Forecast;

/// <summary>
/// By hand: good days from 1 to 5 June, so 20, 40, 60, 80, 100; then ten points less each day, 0 on 15 June; 16 June is hot
/// and not good, still 0; good days from 18 June on: 20, 40, 60.
/// </summary>
public sealed class MildewWordsTest
{
    [Theory]
    [InlineData(20, 60, "moderate")]
    [InlineData(12, 30, "low")]
    [InlineData(8, 70, "high")]
    public void The_state_is_that_of_the_day(int day, int points, string name)
    {
        var words = State(new DateOnly(2023, 6, day));
        Assert.StartsWith(
            $"The temperature index after Gubler & Thomas stands at {points} of 100 on {day} June, which is {name}; it began on 3 June", words);
    }

    [Fact]
    public void Favorable_days_of_the_last_week_are_counted() =>
        Assert.EndsWith("and 3 of the last 7 days were favorable.", State(InventedVine.AsOf));

    [Fact]
    public void Before_it_begins_it_says_what_it_waits_for()
    {
        Assert.EndsWith("it waits for three favorable days in a row, and has 2.", State(new DateOnly(2023, 6, 2)));
        Assert.EndsWith("and has none yet.", State(new DateOnly(2023, 5, 20)));
        Assert.StartsWith("Before budbreak", State(new DateOnly(2023, 3, 1)));
    }

    [Theory]
    [InlineData(20, "At a moderate index print names 10 to 17 days between sprays of sulfur, and 21 days or the label's longest")]
    [InlineData(12, "At a low index print names 14 to 21 days")]
    [InlineData(8, "At a high index print names 7 days between sprays of sulfur, and 14 days or the label's shortest")]
    public void The_printed_interval_goes_with_the_class_and_the_label_stands_above(int day, string words)
    {
        var vine = InventedVine.Standing(new DateOnly(2023, 6, day));
        var interval = MildewWords.Interval(vine, MildewWords.Days(vine));
        Assert.StartsWith(words, interval);
        Assert.Contains("The label stands above both.", interval);
    }

    [Fact]
    public void From_twelve_Brix_on_print_ends_sprays()
    {
        var vine = InventedVine.Standing(new DateOnly(2023, 9, 1));
        Assert.Contains("print ends sprays", MildewWords.Interval(vine, MildewWords.Days(vine)));
        var early = InventedVine.Standing();
        Assert.DoesNotContain("print ends sprays", MildewWords.Interval(early, MildewWords.Days(early)));
    }

    [Fact]
    public void The_last_days_stand_in_a_table_latest_first()
    {
        var rows = MildewWords.Rows(MildewWords.Days(InventedVine.Standing())).ToList();
        Assert.Equal(10, rows.Count);
        Assert.Equal(["20 June", "8", "no", "60"], rows[0]);
        Assert.Equal(["16 June", "0", "yes", "0"], rows[4]);
        Assert.Equal(["11 June", "0", "no", "40"], rows[9]);
    }

    [Fact]
    public void Estimated_hours_are_named()
    {
        var weather = InventedVine.Standing().Weather;
        Assert.StartsWith("Its hours are estimated", MildewWords.Limits(weather));
        Assert.StartsWith("It knows temperature", MildewWords.Limits(weather with { EstimatedInputs = [EstimatedInput.Wind] }));
        Assert.Contains("70 to 85 °F", MildewWords.Rules(Units.Us));
    }

    private static string State(DateOnly day) => MildewWords.State(MildewWords.Days(InventedVine.Standing(day)));
}
