using System.Numerics;
using CanopySim.Assessment;
using CanopySim.Fruit;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Tests.Plants;
using CanopySim.Tests.Seasons;
using CanopySim.Training;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Assessment;

/// <summary>A grown canopy on a day of July.</summary>
public class FruitHoursTests
{
    private static readonly Lazy<Day> NorthSouth = new(() => new Day(0));

    // Whatever the light solution says that clusters absorb, and no more, over all sides and hours.
    [Fact]
    public void Light_sums_are_those_of_the_solution()
    {
        var (day, optics) = (NorthSouth.Value, SeasonCases.FirstSeason.Optics);
        var (solution, kinds) = (day.Light.Solution, day.Light.Canopy.Scene.Kinds);
        for (var index = 0; index < day.Light.Hours.Count; index++)
        {
            var watts = Enumerable.Range(0, kinds.Length).Where(surface => kinds[surface] == SurfaceKind.Cluster)
                .Sum(surface => solution.AbsorbedPar[solution.IndexOf(index, surface)]);
            var read = Enumerable.Range(0, day.Clusters.Sides.Count)
                .Sum(side => day.Hours.At(side, day.Light.Hours[index]).Ppfd * day.Clusters.AreaOfSide[side]);
            Assert.Equal(watts / (1 - optics.WoodParReflectance) * UnitConversion.MicromolesPerJouleOfDaylightPar,
                read, 1e-9 * Math.Max(1, read));
        }

        Assert.Equal(day.Light.IncidentParMoles, day.Hours.IncidentPpfd.Sum() * 3600e-6,
            1e-5 * day.Light.IncidentParMoles);
    }

    // Clusters hang to any side of their shoots, so that it takes those of six meters to see what a side does.
    [Fact]
    public void The_morning_side_is_brighter_in_the_morning()
    {
        var day = new Day(0, 6);
        var east = Array.FindIndex([.. day.Clusters.Sides], side => side.PartOfDay == "morning");
        var west = Array.FindIndex([.. day.Clusters.Sides], side => side.PartOfDay == "afternoon");
        Assert.Equal(("east", "west"), (day.Clusters.Sides[east].Facing, day.Clusters.Sides[west].Facing));
        double Sum(int side, bool morning) =>
            Enumerable.Range(0, 24).Where(hour => day.Hours.IsLit[hour] && day.Hours.IsMorning[hour] == morning)
            .Sum(hour => day.Hours.At(side, hour).Ppfd);
        Assert.True(Sum(east, true) > 1.2 * Sum(west, true), $"{Sum(east, true)} east, {Sum(west, true)} west");
        Assert.True(Sum(west, false) > 1.2 * Sum(east, false), $"{Sum(west, false)} west, {Sum(east, false)} east");
    }

    [Fact]
    public void At_night_fruit_is_as_warm_as_the_air_and_by_day_not_colder()
    {
        var day = NorthSouth.Value;
        for (var hour = 0; hour < 24; hour++)
        {
            var air = day.Weather.Hours[hour].AirTemperatureCelsius;
            for (var side = 0; side < day.Clusters.Sides.Count; side++)
            {
                var of = day.Hours.At(side, hour);
                Assert.InRange(of.SunlitShare, 0, 1);
                Assert.True(of.HighestTemperature >= of.SurfaceTemperature - 1e-9);
                if (!day.Hours.IsLit[hour]) Assert.Equal((0.0, air), (of.Ppfd, of.SurfaceTemperature));
                else Assert.InRange(of.HighestTemperature - air, 0, 20);
            }
        }
    }

    // Azimuth 0 runs north: its right looks east. Winds by steps of 45°.
    [Theory]
    [InlineData(0, true, "east", "morning")]
    [InlineData(0, false, "west", "afternoon")]
    [InlineData(90, true, "south", "neither")]
    [InlineData(90, false, "north", "neither")]
    [InlineData(180, true, "west", "afternoon")]
    [InlineData(45, true, "southeast", "morning")]
    [InlineData(315, false, "southwest", "afternoon")]
    [InlineData(350, true, "east", "morning")]
    public void Sides_are_named_by_compass(double azimuth, bool isRight, string facing, string part)
    {
        var side = FruitSide.Of(0, isRight, azimuth);
        Assert.Equal((facing, part), (side.Facing, side.PartOfDay));
    }

    // Two curtains, four clusters: each on its side of the nearer wall.
    [Theory]
    [InlineData(0)]
    [InlineData(Math.PI)]
    [InlineData(0.25)]
    public void Clusters_belong_to_the_nearer_wall(double tilt)
    {
        FoliageWall[] walls = [new(0, -0.6, 1.2, -tilt, 0.4), new(1, 0.6, 1.2, tilt, 0.4)];
        var list = new TriangleList();
        list.Begin(SurfaceKind.Wood);
        list.AddTube(new Vector3(0, 0, 0), new Vector3(0, 0, 1), 0.03f, 0.03f, 6);
        foreach (var wall in walls)
        {
            foreach (var aside in new[] { -0.06f, 0.06f })
            {
                list.Begin(SurfaceKind.Cluster);
                list.AddSpindle(
                    new Vector3((float)wall.FruitZone.Across(0.5) + aside, 0.4f,
                    (float)wall.FruitZone.Height(0.5) + 0.07f), 0.14f, 0.04f);
            }
        }

        var clusters = FruitClusters.Of(list.Build(new Cell(3, 1.5)), [new RowOfWalls(0, 0, walls)], 0);
        Assert.Equal([(0, false), (0, true), (1, false), (1, true)],
            clusters.Sides.Select(side => (side.Wall, side.IsRight)));
        Assert.Equal([0, 1, 2, 3], clusters.Clusters.Select(cluster => cluster.Side));
        Assert.All(clusters.Clusters, cluster => Assert.Equal(0.08, cluster.Diameter, 0.012));
    }

    private sealed class Day
    {
        public Day(double azimuth, double meters = 1.5)
        {
            var scenario = SeasonCases.FirstSeason with
            {
                Rows = SeasonCases.FirstSeason.Rows with { Azimuth = azimuth, VineSpacing = meters },
            };
            var grown = new GrownCanopy(scenario).Grow(55).Set();
            Weather = SeasonCases.Northern(scenario).Days.First(day => day.Date == new DateOnly(2025, 7, 12));
            var light = new CanopyLight(scenario, Quality.Draft, SeasonCases.UtcOffset, 2);
            light.Place(grown.Canopy, true);
            Light = light.Solve(Weather);
            Clusters = FruitClusters.Of(Light.Canopy.Scene, TrellisLayout.RowsOf(scenario), azimuth);
            var radius =
                FruitHours.BerryRadius(grown.Canopy.Vines[0].Crop, scenario.Fruit, new BerryGrowth(scenario.Fruit));
            Hours = FruitHours.Read(Clusters, Light, Weather, scenario, radius);
        }

        public WeatherDay Weather { get; }

        public LightOfDay Light { get; }

        public FruitClusters Clusters { get; }

        public FruitHours Hours { get; }
    }
}
