using CanopySim.Assessment;
using CanopySim.Carbon;
using CanopySim.Growth;
using CanopySim.Plants;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class TipSurveyTests
{
    private static readonly GrowthParameters Growth = new();
    private static readonly DateOnly Day = new(2025, 6, 1);

    [Fact]
    public void Shares_count_shoots_of_each_state()
    {
        var survey = TipSurvey.Of(Day, Vine(28, 28, 200, null), Growth, 0.6)!;
        Assert.Equal((0.5, 0.25, 0.25), (survey.GrowingFreely, survey.Slowing, survey.Stopped));
        Assert.Equal((Day, 0.6), (survey.Date, survey.SoilWaterFraction));
    }

    // Nodes every 28 units; 110 units finish an internode, so those of the four youngest nodes (14, 42, 70 and 98 units
    // old) still elongate and node 11 is the first finished one. Node n is n mm long when done.
    [Fact]
    public void Finished_internodes_are_told_from_the_tip_down()
    {
        var survey = TipSurvey.Of(Day, Vine(28), Growth, 1)!;
        Assert.Equal([0.011, 0.010, 0.009, 0.008, 0.007, 0.006], survey.LastInternodes.Select(length => Math.Round(length, 9)));
        Assert.Equal((11 + 10 + 9) / (8 + 7 + 6.0), survey.InternodeTrend!.Value, 1e-9);
    }

    [Fact]
    public void Shoots_that_stopped_tell_nothing_of_internodes()
    {
        var survey = TipSurvey.Of(Day, Vine((double?)null), Growth, 1)!;
        Assert.Empty(survey.LastInternodes);
        Assert.Null(survey.InternodeTrend);
    }

    [Fact]
    public void Without_shoots_there_is_nothing_to_survey() =>
        Assert.Null(TipSurvey.Of(Day, new Canopy([]), Growth, 1));

    // A shoot of fifteen nodes for each spacing of its nodes [°C d]; null for one whose tip stopped.
    private static Canopy Vine(params double?[] unitsANode)
    {
        var vine = new Vine(new VineId(0), 0.75, new VineCarbon(1000, 100));
        foreach (var units in unitsANode)
        {
            var shoot = new Shoot(new ShootId(vine.Shoots.Count), new VineId(0), 1, 0.75, 1) { TipStopped = units is null };
            for (var rank = 1; rank <= 15; rank++)
            {
                var age = (15.5 - rank) * (units ?? 28);
                shoot.Add(new Phytomer(rank, 0.06, new Leaf(new LeafId(rank), shoot, rank, 0.01))
                {
                    ThermalAge = age,
                    InternodeLength = age >= Growth.InternodeElongation
                        ? rank / 1000.0
                        : 0.06 * ExpansionCourse.Share(age, Growth.InternodeElongation),
                });
            }

            vine.Add(shoot);
        }

        return new Canopy([vine]);
    }
}
