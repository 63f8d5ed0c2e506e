using CanopySim.Files.Notes;
using CanopySim.Fitting;
using Xunit;

namespace CanopySim.Files.Tests.Notes;

public sealed class NoteObservationsTest
{
    private static readonly DateOnly Last = new(2025, 9, 30);

    // By hand: mean 0.5 m; 0.25 / sqrt(4) and 0.07 make sqrt(0.015625 + 0.0049) = 0.14327 of it.
    [Fact]
    public void Shoots_of_a_day_are_one_observation()
    {
        var seen = Of("shoot_length,40,cm\n,shoot_length,60,cm\n,shoot_length,45,cm\n,shoot_length,55,cm").Observations.Single();
        Assert.Equal((ObservedQuantity.ShootLength, new DateOnly(2025, 5, 12)), (seen.Quantity, seen.Date));
        Assert.Equal(0.5, seen.Value, 1e-12);
        Assert.Equal(0.5 * 0.14327, seen.StandardError, 1e-5);
    }

    // A logistic about the half: at 50 % the day itself, at 88 % two scales of 1.7 d before (ln(0.88 / 0.12) = 1.9924).
    [Theory]
    [InlineData("bloom,50,%", 0, Bound.None)]
    [InlineData("bloom,88,%", -3.387, Bound.None)]
    [InlineData("bloom,0,%", 0, Bound.AtLeast)]
    [InlineData("bloom,100,%", 0, Bound.AtMost)]
    public void A_share_of_a_stage_tells_its_day(string line, double days, Bound bound)
    {
        var seen = Of(line).Observations.Single();
        Assert.Equal(new DateOnly(2025, 5, 12).DayNumber + days, seen.Value, 1e-3);
        Assert.Equal(bound, seen.Bound);
    }

    [Theory]
    [InlineData("112", "cm", "the number may be of centimeters, not inches")]
    [InlineData("450", "cm", "a digit or the decimal point may be wrong")]
    [InlineData("18", "cm", "the number may be of inches, not centimeters")]
    [InlineData("200", "cm", "")]
    public void A_slip_is_named_and_left_out(string value, string unit, string hint)
    {
        var seen = Of($"shoot_length,44,cm\n,shoot_length,46,cm\n,shoot_length,45,cm\n,shoot_length,{value},{unit}\n,shoot_length,45,cm");
        Assert.Equal(0.45, seen.Observations.Single().Value, 1e-12);
        var odd = Assert.Single(seen.Odd);
        Assert.Equal((5, 0.45, hint), (odd.Note.Place.Line!.Value, odd.Usual, odd.Hint));
        Assert.Equal(4, seen.NotesOf[0].Count);
    }

    [Fact]
    public void Three_shoots_are_too_few_to_call_one_a_slip() =>
        Assert.Empty(Of("shoot_length,44,cm\n,shoot_length,46,cm\n,shoot_length,450,cm").Odd);

    [Fact]
    public void Work_water_and_tips_are_no_observations_and_later_notes_wait()
    {
        Assert.Empty(Of("topping,16,nodes\n,irrigation,10,mm\n,spray,sulfur,\n,tip,stopped,").Observations);
        Assert.Empty(NoteObservations.Of(NotesText.Read("date,what,value\n2025-10-01,nodes,8\n"), Last).Observations);
    }

    private static NotedVines Of(string lines) =>
        NoteObservations.Of(NotesText.Read($"date,what,value,unit\n2025-05-12,{lines}\n"), Last);
}
