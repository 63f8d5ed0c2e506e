using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class VinePlantingTests
{
    // 15 shoots a meter of canopy on 1.5 m of row: 22.5, or twice as many where the canopy is divided.
    [Theory]
    [InlineData(TrellisForm.UprightHedge, 23)]
    [InlineData(TrellisForm.TwinCurtain, 45)]
    [InlineData(TrellisForm.UpAndDown, 45)]
    [InlineData(TrellisForm.Bush, 23)]
    public void Shoots_are_counted_per_meter_of_canopy(TrellisForm form, int shoots) =>
        Assert.Equal(shoots, VinePlanting.ShootsPerVine(GrownCanopy.Scenario(form)));

    [Theory]
    [InlineData(TrellisForm.TwinCurtain)]
    [InlineData(TrellisForm.OpenU)]
    [InlineData(TrellisForm.SlantedV)]
    [InlineData(TrellisForm.UpAndDown)]
    public void Walls_share_a_vine_s_shoots_evenly(TrellisForm form)
    {
        var shoots = Break(GrownCanopy.Scenario(form)).Vines[0].Shoots;
        var walls = shoots.GroupBy(shoot => shoot.Wall).OrderBy(wall => wall.Key).Select(wall => wall.ToList())
            .ToList();
        Assert.Equal([23, 22], walls.Select(wall => wall.Count));
        foreach (var wall in walls)
        {
            var places = wall.Select(shoot => shoot.PositionAlongRow).ToList();
            Assert.Equal(0.75 / wall.Count, places[0], 1e-12);
            for (var i = 1; i < places.Count; i++) Assert.Equal(1.5 / wall.Count, places[i] - places[i - 1], 1e-12);
        }
    }

    [Fact]
    public void Walls_on_one_cordon_take_its_spurs_in_turn()
    {
        var scenario =
            GrownCanopy.Scenario() with { Trellis = new Trellis { Form = TrellisForm.SlantedV, CordonDistance = 0 } };
        var shoots = Break(scenario).Vines[0].Shoots;
        Assert.Equal(shoots.Select((_, i) => i % 2), shoots.Select(shoot => shoot.Wall));
        for (var i = 1; i < shoots.Count; i++)
            Assert.Equal(1.5 / shoots.Count, shoots[i].PositionAlongRow - shoots[i - 1].PositionAlongRow, 1e-12);
    }

    [Fact]
    public void Every_row_of_the_cell_has_its_own_vines()
    {
        var scenario = GrownCanopy.Scenario(vines: 2);
        scenario = scenario with { Rows = scenario.Rows with { RowsInCell = 3 } };
        var vines = Break(scenario).Vines;
        Assert.Equal([0.75, 2.25, 0.75, 2.25, 0.75, 2.25], vines.Select(vine => vine.PositionAlongRow));
        Assert.Equal([0, 0, 1, 1, 2, 2], vines.Select(vine => scenario.Rows.RowOf(vine.Id)));
        Assert.Equal([0, 3, 6], Enumerable.Range(0, 3).Select(scenario.Rows.AcrossOf));
        // Seeds make their shoots differ.
        Assert.NotEqual(vines[0].Shoots.Select(shoot => shoot.Vigor), vines[2].Shoots.Select(shoot => shoot.Vigor));
        Assert.Equal(6, scenario.Rows.VineCount);
    }

    // 2.5 kg on 5.85 m² of ground and 2.5 kg on 1.95 m of cordon; here 4.5 m² and 1.5 m a cordon.
    [Theory]
    [InlineData(TrellisForm.UprightHedge, 1)]
    [InlineData(TrellisForm.OpenU, 2)]
    public void Wood_grows_with_the_cordons(TrellisForm form, int cordons) =>
        Assert.Equal(2500 * ((4.5 / 5.85) + (cordons * 1.5 / 1.95)),
        Break(GrownCanopy.Scenario(form)).Vines[0].Carbon.PerennialDryMass, 1e-6);

    private static Canopy Break(Scenario scenario) => new GrownCanopy(scenario).Canopy;
}
