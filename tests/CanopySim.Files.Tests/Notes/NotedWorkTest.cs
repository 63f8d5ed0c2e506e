using CanopySim.Files.Notes;
using CanopySim.Training;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Notes;

public sealed class NotedWorkTest
{
    private static readonly DateOnly Last = new(2025, 7, 1);

    private static readonly Scenario Block = new()
    {
        Name = "block",
        Site = new Site { Latitude = 45, Longitude = 8, TimeZone = "Etc/UTC" },
        Weather = new WeatherOptions { File = "weather.csv" },
    };

    // 2.4 m x 1.5 m are 3.6 m2 a vine: 18 l on each are 5 mm.
    [Fact]
    public void Work_and_water_go_into_the_scenario()
    {
        var scenario = NotedWork.Into(Block, NotesText.Read(
            """
            date,what,value,unit
            2025-05-01,shoot_thinning,12,shoots/m
            2025-06-01,topping,16,nodes
            2025-06-05,leaf_removal,60,% morning
            2025-06-06,cluster_thinning,1,per shoot
            2025-06-07,spray,sulfur,
            2025-06-08,irrigation,18,l/vine
            2025-07-02,irrigation,10,mm
            """), Last);
        var work = scenario.CanopyWork;
        Assert.Equal((new DateOnly(2025, 5, 1), 12), (work.ShootThinning[0].On!.Value, work.ShootThinning[0].ShootsPerMeter!.Value));
        Assert.Equal(16, work.Topping[0].Nodes);
        Assert.Equal((CanopySide.Morning, 0.6), (work.LeafRemoval[0].Side, work.LeafRemoval[0].Share));
        Assert.Equal(1, work.ClusterThinning[0].ClustersPerShoot);
        Assert.Equal(("sulfur", SprayKind.Sulfur), (work.Sprays[0].Label, work.Sprays[0].Kind));
        Assert.Equal(5, scenario.Soil.Irrigation.Single().Amount, 1e-9);
    }

    [Theory]
    [InlineData("topping,16,nodes\n2025-06-01,topping,1.8,m",
        "notes.csv:3: column 3 (value): topping on 2025-06-01, which the scenario or an earlier line has too; expected work that was done once")]
    [InlineData("topping,15.5,nodes", "notes.csv:2: column 3 (value): 15.5; expected a whole number of 3 or more")]
    [InlineData("leaf_removal,0,%", "notes.csv:2: column 3 (value): 0 %; expected the share that went, more than 0 %")]
    [InlineData("irrigation,1,l/vine", "notes.csv:2: column 3 (value): 1 l on each vine's 3.6 m2, 0.28 mm; expected 0.5 to 200 mm")]
    public void Work_that_cannot_have_been_is_an_error(string line, string message) => Assert.Equal(
        message,
        Assert.Throws<InputError>(() => NotedWork.Into(Block, NotesText.Read($"date,what,value,unit\n2025-06-01,{line}\n"), Last)).Message);
}
