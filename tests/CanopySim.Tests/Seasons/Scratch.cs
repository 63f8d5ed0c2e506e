using CanopySim.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Seasons;

public class Scratch
{
    [Fact]
    public void Laterals()
    {
        var text = new System.Text.StringBuilder();
        var weather = SeasonCases.Northern(SeasonCases.Small);
        var last = new DateOnly(2025, 8, 31);
        foreach (var top in new[] { new DateOnly(2025, 6, 1), new DateOnly(2025, 6, 20), new DateOnly(2025, 7, 10), new DateOnly(2025, 7, 25) })
        {
            foreach (var cut in new[] { true, false })
            {
                var scenario = cut ? SeasonCases.Small with { CanopyWork = new CanopyWork { Topping = [new Topping { On = top, Nodes = 14 }] } } : SeasonCases.Small;
                foreach (var days in new[] { 0, 7, 14, 35 })
                {
                    var canopy = Simulation.CanopyOn(scenario, weather, SeasonCases.UtcOffset, SeasonCases.Draft(), top.AddDays(days));
                    text.Append($"\n{top:MM-dd} {(cut ? "cut" : "---")} +{days}: supply {canopy.Vines[0].Carbon.SupplyIndex:0.00} main {canopy.Vines[0].Carbon.MainSupplyIndex:0.00} ");
                    for (var rank = 14; rank >= 9; rank--)
                    {
                        var at = canopy.PrimaryShoots().Where(s => s.Phytomers.Count >= rank).Select(s => s.Phytomers[rank - 1]).ToList();
                        text.Append($" {at.Average(n => n.Lateral?.Phytomers.Count(p => p.Leaf?.HasUnfolded == true) ?? 0):0.0}/{at.Average(n => n.Lateral?.Phytomers.Count ?? 0):0.0}/{at.Average(n => 1e4 * n.Lateral?.Phytomers.Sum(p => p.Leaf?.Area ?? 0) ?? 0):0}");
                    }
                }
            }
        }

        Assert.Fail(text.ToString());
    }
}
