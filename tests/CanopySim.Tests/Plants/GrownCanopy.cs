using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Plants;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Tests.Plants;

/// <summary>A canopy grown without light: each day gives 15 thermal units and the same share of the carbon that growth could use.</summary>
internal sealed class GrownCanopy
{
    private readonly Scenario _scenario;
    private readonly ShootDevelopment _development;
    private readonly OrganExpansion _expansion;
    private DateOnly _date = new(2025, 4, 1);

    public GrownCanopy(Scenario scenario)
    {
        _scenario = scenario;
        Canopy = VinePlanting.Plant(scenario);
        _development = new ShootDevelopment(scenario.Growth, Canopy);
        _expansion = new OrganExpansion(scenario.Growth, scenario.Carbon);
        foreach (var vine in Canopy.Vines)
            foreach (var shoot in VinePlanting.BreakBuds(Canopy, vine, scenario))
                _development.Break(shoot);
    }

    public Canopy Canopy { get; }

    public static Scenario Scenario(TrellisForm form = TrellisForm.UprightHedge, double slope = 0, double aspect = 180, int vines = 1) => new()
    {
        Name = "test block",
        Site = new Site { Latitude = 40, Longitude = 0, Slope = slope, Aspect = aspect },
        Weather = new WeatherOptions { File = "none" },
        Rows = new RowLayout { Spacing = 3, VineSpacing = 1.5, VinesInCell = vines },
        Trellis = new Trellis { Form = form },
    };

    public GrownCanopy Grow(int days, double share = 0.7)
    {
        for (var day = 0; day < days; day++)
        {
            var conditions = new GrowthConditions(_date, 15, null, 1, 1, 1);
            foreach (var vine in Canopy.Vines)
            {
                _development.Advance(vine, conditions);
                ClusterPlacement.Place(vine, _scenario.Fruit.ClustersPerShoot, _scenario.Seed);
                _expansion.Prepare(vine, conditions);
                _expansion.Grow(vine, share, share, _date);
            }

            _date = _date.AddDays(1);
        }

        return this;
    }

    /// <summary>Sets berries and builds their structure half way.</summary>
    public GrownCanopy Set()
    {
        var berries = new BerryGrowth(_scenario.Fruit);
        foreach (var vine in Canopy.Vines)
        {
            berries.SetBerries(vine, 0.75);
            BerryGrowth.Grow(vine.Crop, berries.StructureDemand(vine.Crop, 0, 0.425), 0.8);
        }

        return this;
    }
}
