using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Plants;
using CanopySim.Tests.Weather;
using CanopySim.Training;
using CanopySim.Weather;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Carbon;

/// <summary>
/// A vine through a season of any days: any temperatures, any gain or loss of its leaves, any water. Its carbon closes every day, and
/// nothing grows beyond its potential.
/// </summary>
public class VineDayPropertyTests
{
    private const int DayCount = 190;
    private const int BloomDay = 45;
    private const int VeraisonDay = 95;

    // The leaves' gain [g CH₂O], from a loss on a hot dark day to all that a season's best day gives, and three water factors.
    private static readonly Gen<(double Gain, double[] Water)[]> AnyDays =
        Gen.Select(Gen.Double[20, 600], Gen.Select(Gen.Double[-0.15, 1], Gen.Double[0, 1].Array[3]).Array[DayCount]).Select((best, days) =>
            Array.ConvertAll(days, day => (best * day.Item1, day.Item2)));

    private static readonly Gen<CarbonParameters> AnyCarbon =
        Gen.Select(Gen.Double[0.02, new CarbonParameters().ReserveCeiling], Gen.Double[0, 0.15], Gen.Double[0, 0.5], Gen.Double[0, 0.2], Gen.Double[0.05, 10].Array[6]).Select((initial, unusable, spring, ripening, weights) => new CarbonParameters
        {
            InitialReserves = initial,
            UnusableReserves = unusable,
            SpringMobilization = spring,
            RipeningMobilization = ripening,
            MainAxisWeight = weights[0],
            LateralWeight = weights[1],
            FruitWeight = weights[2],
            RipeningFruitWeight = weights[3],
            ThickeningWeight = weights[4],
            ReserveWeight = weights[5],
        });

    [Fact]
    public void Carbon_closes_and_nothing_passes_its_potential() =>
        Gen.Select(ScenarioGen.Any, AnyCarbon, WeatherGen.Days(DayCount), AnyDays).Sample((block, carbon, weather, days) =>
        {
            var scenario = block with { Carbon = carbon, Rows = block.Rows with { VinesInCell = 1 } };
            var season = new Season(scenario);
            for (var index = 0; index < DayCount; index++)
            {
                var day = season.Advance(index, weather[index], days[index].Gain, days[index].Water);
                Assert.True(day.Ledger.RelativeClosure <= 1e-9, $"day {index}: {day.Ledger.RelativeClosure} {day.Ledger}");
                Assert.True(day.Growth is { LeafDryMass: >= 0, StemDryMass: >= 0 } && day.GrowthRespirationCarbon >= -1e-9, $"day {index}: {day}");
                Assert.InRange(day.FruitShare, 0, 1 + 1e-12);
                Assert.True(day.RipeningCapacity >= 0 && day.Maintenance >= 0);
                season.AssertBounds(index);
            }
        }, iter: 150);

    private sealed class Season
    {
        private readonly Scenario _scenario;
        private readonly Canopy _canopy;
        private readonly ShootDevelopment _development;
        private readonly VineDayCycle _cycle;
        private readonly BerryGrowth _berries;
        private readonly GrowthParameters _growth;
        private double _sinceBloom;
        private double _brix;

        public Season(Scenario scenario)
        {
            (_scenario, _growth) = (scenario, scenario.Growth);
            _canopy = VinePlanting.Plant(scenario);
            _development = new ShootDevelopment(_growth, _canopy);
            _cycle = new VineDayCycle(scenario);
            _berries = new BerryGrowth(scenario.Fruit);
            foreach (var shoot in VinePlanting.BreakBuds(_canopy, Vine, scenario)) _development.Break(shoot);
        }

        private Vine Vine => _canopy.Vines[0];

        public VineDay Advance(int index, WeatherDay weather, double gain, double[] water)
        {
            var stock = CarbonStock.Of(Vine, _scenario.Carbon);
            var units = 0.0;
            foreach (var hour in weather.Hours) units += CanopySim.Phenology.ThermalResponse.Rate(hour.AirTemperatureCelsius, _growth) / 24;
            if (index >= BloomDay) _sinceBloom += units;
            var day = new GrowthConditions(weather.Date, units, index >= BloomDay ? _sinceBloom : null, water[0], water[1], water[2]);
            _development.Advance(Vine, day);
            ClusterPlacement.Place(Vine, _scenario.Fruit.ClustersPerShoot, _scenario.Seed);
            if (index == BloomDay) _berries.SetBerries(Vine, Vine.Carbon.SupplyIndex);
            var season = index < BloomDay ? CarbonSeason.Spring : index < VeraisonDay ? CarbonSeason.FruitGrowth : CarbonSeason.Ripening;
            var demand = _cycle.FruitDemand(Vine, Progress(index), Progress(index + 1), index < VeraisonDay ? null : index - VeraisonDay, weather);
            var warmth = units / (_growth.OptimumTemperature - _growth.BaseTemperature);
            return _cycle.Settle(Vine, weather, day, demand, season, warmth, gain, default, stock);
        }

        public void AssertBounds(int index)
        {
            var carbon = Vine.Carbon;
            Assert.InRange(carbon.Reserves, -1e-9, (_scenario.Carbon.ReserveCeiling * carbon.ReferenceDryMass) + 1e-9);
            foreach (var shoot in Vine.AllShoots())
            {
                Assert.True(shoot.StemDryMass >= 0);
                foreach (var phytomer in shoot.Phytomers)
                {
                    Assert.InRange(phytomer.InternodeLength, 0, phytomer.PotentialInternode * (1 + 1e-9));
                    if (phytomer.Leaf is { } leaf) Assert.InRange(leaf.Area, 0, leaf.PotentialArea * (1 + 1e-9));
                }
            }

            var crop = Vine.Crop;
            Assert.InRange(crop.StructureDryMass, 0, (crop.Berries * _scenario.Fruit.BerryStructure) + 1e-9);
            var brix = _berries.Brix(crop);
            Assert.True(double.IsFinite(brix) && brix >= 0, $"day {index}: {brix} Brix");
            // While sugar is loaded it only adds, and the water that follows it thins it by less. Before, structure may grow faster than sugar.
            if (index > VeraisonDay) Assert.True(brix >= _brix - 1e-9, $"day {index}: {brix} Brix after {_brix}");
            _brix = brix;
        }

        private static double Progress(int index) => Math.Clamp((index - BloomDay) / (double)(VeraisonDay - BloomDay), 0, 1);
    }
}
