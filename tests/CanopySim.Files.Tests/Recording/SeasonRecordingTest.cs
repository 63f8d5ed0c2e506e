using System.Numerics;
using System.Text.Json;
using CanopySim.Files.Recording;
using Xunit;

namespace CanopySim.Files.Tests.Recording;

public sealed class SeasonRecordingTest
{
    [Fact]
    public void Its_days_are_those_of_the_season()
    {
        using var recording = ShortSeason.Recording();
        Assert.Equal(ShortSeason.Result.Days, Enumerable.Range(0, recording.DayCount).Select(recording.Row));
        Assert.Equal(ShortSeason.Result.Days, recording.Outcome()!.Days);
        Assert.True(recording.IsFinished);
    }

    [Fact]
    public void Being_recorded_changes_nothing_in_a_season()
    {
        var plain = ShortSeason.Run(ShortSeason.Scenario, ShortSeason.Weather());
        Assert.Equal(plain.Days, ShortSeason.Result.Days);
        Assert.Equal(plain.Leaves, ShortSeason.Result.Leaves);
    }

    [Fact]
    public void Its_leaves_are_those_of_the_tables()
    {
        using var recording = ShortSeason.Recording();
        var checkedRows = 0;
        foreach (var rows in ShortSeason.Result.Leaves.GroupBy(row => row.Date))
        {
            var day = Enumerable.Range(0, recording.DayCount).Single(number => recording.Row(number).Date == rows.Key);
            var (canopy, leaves) = (recording.Canopy(day), recording.Leaves(day));
            Assert.Equal(canopy.Blades.Count, leaves.Count);
            foreach (var row in rows)
            {
                var i = Enumerable.Range(0, leaves.Count).Single(blade => canopy.Blades[blade].LeafId == row.LeafId);
                var blade = canopy.Blades[i];
                Assert.Equal((row.Vine, row.Shoot, row.Order, row.Rank), (blade.Vine, blade.Shoot, blade.Order, blade.Rank));
                Assert.Equal(row.AreaCm2, 1e4 * leaves.Area[i], 1e-6 * row.AreaCm2);
                Assert.Equal(row.AreaCm2, 1e4 * blade.Area, 0.5 * row.AreaCm2);
                Assert.Equal((row.AgeD, row.UnfoldedOn), (leaves.AgeDays[i], rows.Key.AddDays(-leaves.AgeDays[i])));
                Assert.Equal(row.Efficiency, leaves.Efficiency[i], 1e-6);
                Assert.Equal(row.AbsorbedParMolD, leaves.AbsorbedParMoles[i], 1e-6);
                Assert.Equal(row.NetAssimilationGCo2D, leaves.NetAssimilationGrams[i], 1e-6);

                // The table has the middle of the midrib, which is as long as the root of the area. Steps of the box are below 0.1 mm here.
                var middle = blade.Frame.Base + (0.5f * MathF.Sqrt(blade.Area) * blade.Frame.Tip);
                Assert.True(Vector3.Distance(middle, new Vector3((float)row.XM, (float)row.YM, (float)row.ZM)) < 1e-4, $"{middle} {row}");
                checkedRows++;
            }
        }

        Assert.True(checkedRows > 50, $"{checkedRows}");
    }

    [Fact]
    public void Hours_of_a_leaf_add_up_to_its_day()
    {
        using var recording = ShortSeason.Recording();
        for (var day = 0; day < recording.DayCount; day++)
        {
            var (hours, leaves) = (recording.Hours(day), recording.Leaves(day));
            for (var leaf = 0; leaf < leaves.Count; leaf++)
            {
                var micromoles = 0.0;
                for (var hour = 0; hour < hours.Count; hour++) micromoles += hours.AbsorbedPpfd[hours.IndexOf(hour, leaf)] * 3600.0;

                // Half precision has eleven bits.
                var moles = micromoles * leaves.Area[leaf] * 1e-6;
                Assert.Equal(leaves.AbsorbedParMoles[leaf], moles, 6e-4 * moles);
            }
        }
    }

    [Fact]
    public void Blades_are_about_as_warm_as_the_air()
    {
        using var recording = ShortSeason.Recording();
        var hours = recording.Hours(recording.DayCount - 5);
        for (var hour = 0; hour < hours.Count; hour++)
            for (var leaf = 0; leaf < hours.LeafCount; leaf++)
                Assert.InRange(hours.Temperature[hours.IndexOf(hour, leaf)] - hours.AirTemperature[hour], -8, 12);
        Assert.True(hours.Count >= 14);
    }

    [Fact]
    public void From_it_the_season_can_be_computed_again()
    {
        using var recording = ShortSeason.Recording();
        var again = ShortSeason.Run(recording.Scenario, recording.Weather());
        Assert.Equal(ShortSeason.Result.Days, again.Days);
    }

    [Fact]
    public void What_the_season_gave_comes_back()
    {
        using var recording = ShortSeason.Recording();
        var outcome = recording.Outcome()!;
        Assert.Equal(JsonSerializer.Serialize(ShortSeason.Result.Summary), JsonSerializer.Serialize(outcome.Summary));
        Assert.Equal(ShortSeason.Result.LeafAges, outcome.LeafAges);
        Assert.Equal(ShortSeason.Result.AgeCurve.Points, outcome.AgeCurve.Points);
        Assert.NotNull(outcome.Summary.Dates.Veraison);
    }

    [Fact]
    public void Days_that_look_alike_share_a_canopy()
    {
        Assert.InRange(ShortSeason.Blocks.Count(BlockKind.Canopy), 5, ShortSeason.Blocks.Count(BlockKind.Day) - 1);
    }
}
