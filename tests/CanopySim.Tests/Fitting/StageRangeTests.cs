using CanopySim.Fitting;
using Xunit;

namespace CanopySim.Tests.Fitting;

public class StageRangeTests
{
    [Fact]
    public void Members_that_never_reach_a_stage_leave_its_late_end_open()
    {
        var range = StageRange.Of([.. Enumerable.Range(1, 8).Select(day => (DateOnly?)new DateOnly(2025, 9, day)), null, null]);
        Assert.Equal(new DateOnly(2025, 9, 2), range.P10);
        Assert.Equal(new DateOnly(2025, 9, 6), range.P50);
        Assert.Null(range.P90);
        Assert.Equal(0.8, range.Chance, 12);
    }

    [Fact]
    public void A_stage_of_nobody_has_no_day()
    {
        var range = StageRange.Of([null, null, null]);
        Assert.Equal((null, null, null, 0.0), (range.P10, range.P50, range.P90, range.Chance));
    }
}
