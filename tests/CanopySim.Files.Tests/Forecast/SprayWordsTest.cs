using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using Xunit;

namespace CanopySim.Files.Tests.Forecast;

public sealed class SprayWordsTest
{
    // Of 2 + 3 + 1 m² 0.5 + 0.3 + 0.2 came since each leaf's last spray; an inch is 25.4 mm, a square foot 0.0929 m².
    [Theory]
    [InlineData(Units.Metric, "1.00 m² of leaf a vine, 17 % of all", "with 4 mm of rain since")]
    [InlineData(Units.Us, "10.76 ft² of leaf a vine, 17 % of all", "with 0.16 in of rain since")]
    public void It_opens_with_the_leaf_that_no_spray_has_reached(Units units, string area, string rain)
    {
        var words = SprayWords.Opening(InventedVine.Standing(), units);
        Assert.StartsWith(area, words);
        Assert.Contains("the last spray (sulfur again) was on 18 June, 2 days ago, " + rain, words);
    }

    [Fact]
    public void Each_spray_has_its_row_by_zone_and_all_together_the_last()
    {
        var rows = SprayWords.Rows(InventedVine.Standing(), Units.Metric).ToList();
        Assert.Equal(4, rows.Count);
        Assert.All(rows, row => Assert.Equal(SprayWords.Heads.Count, row.Count));
        Assert.Equal(
            [
                "sulfur first cover\n12 May, 39 days ago", "1.50 of 2.00 m²\n75 % not covered", "2.70 of 3.00 m²\n90 % not covered",
                "1.00 of 1.00 m²\n100 % not covered", "200",
            ],
            rows[0]);
        Assert.Equal("summer oil\n15 June, 5 days ago", rows[1][0]);
        Assert.StartsWith("All together", rows[3][0]);
        Assert.Equal(["0.50 of 2.00 m²\n25 % not covered", "0.30 of 3.00 m²\n10 % not covered", "0.20 of 1.00 m²\n20 % not covered", "21"], rows[3].Skip(1));
    }

    // Sulfur of 12 May has neither heat nor oil about it; that of 18 June has both.
    [Fact]
    public void Sulfur_in_heat_and_near_oil_is_cautioned_by_its_name()
    {
        var cautions = SprayWords.Cautions(InventedVine.Standing(), Units.Us);
        Assert.Equal(2, cautions.Count);
        Assert.StartsWith("sulfur again of 18 June is sulfur, and 19 June reaches 91.4 °F: over 85 °F", cautions[0]);
        Assert.StartsWith("sulfur again of 18 June is sulfur, and oil is sprayed on 15 June: within 14 days", cautions[1]);
        Assert.All(cautions, caution => Assert.EndsWith("the label decides.", caution));
    }

    [Fact]
    public void Without_a_spray_it_says_so()
    {
        var vine = InventedVine.Standing(isSprayed: false);
        Assert.Equal(SprayWords.WithoutSprays, SprayWords.Opening(vine, Units.Metric));
        Assert.Empty(SprayWords.Rows(vine, Units.Metric));
        Assert.Empty(SprayWords.Cautions(vine, Units.Metric));
    }
}
