using CanopySim.Growth;
using Xunit;

namespace CanopySim.Tests.Growth;

public class CoursesTests
{
    [Fact]
    public void Expansion_is_a_smooth_step()
    {
        Assert.Equal(0, ExpansionCourse.Share(0, 330));
        // 3 u² − 2 u³ at a quarter: 0.1875 − 0.03125.
        Assert.Equal(0.15625, ExpansionCourse.Share(82.5, 330), 1e-12);
        Assert.Equal(0.5, ExpansionCourse.Share(165, 330), 1e-12);
        Assert.Equal(1, ExpansionCourse.Share(330, 330));
        Assert.Equal(1, ExpansionCourse.Share(1000, 330));
    }

    [Fact]
    public void Increments_add_up_to_the_whole()
    {
        var sum = Enumerable.Range(0, 50).Sum(day => ExpansionCourse.Increment(13.7 * day, 13.7 * (day + 1), 330));
        Assert.Equal(1, sum, 1e-12);
    }

    // Growth of blades by rank: Schultz 1992, Louarn et al. 2007, from memory.
    [Theory]
    [InlineData(1, 0.25)]
    [InlineData(4, 0.70)]
    [InlineData(6, 1.0)]
    [InlineData(12, 1.0)]
    [InlineData(15, 0.9)]
    [InlineData(20, 0.7)]
    [InlineData(25, 0.5)]
    [InlineData(40, 0.5)]
    public void Blades_follow_the_profile(int rank, double share) => Assert.Equal(share, RankProfile.Blade(rank), 1e-12);

    [Fact]
    public void Profiles_rise_once_and_fall_once()
    {
        Assert.Equal(1, TurningPoints(RankProfile.Blade));
        Assert.Equal(1, TurningPoints(RankProfile.Internode));

        static int TurningPoints(Func<int, double> profile)
        {
            var steps = Enumerable.Range(1, 39).Select(rank => Math.Sign(Math.Round(profile(rank + 1) - profile(rank), 12))).Where(sign => sign != 0).ToList();
            return steps.Zip(steps.Skip(1)).Count(pair => pair.First != pair.Second);
        }
    }

    // The first two internodes are 1 to 2 cm where the longest are about 6 (Louarn et al. 2007, from memory): at most 0.4 of the longest.
    [Fact]
    public void Lowest_internodes_are_short()
    {
        Assert.InRange(RankProfile.Internode(1) / RankProfile.Internode(6), 0.1, 0.4);
        Assert.InRange(RankProfile.Internode(2) / RankProfile.Internode(6), 0.1, 0.4);
    }
}
