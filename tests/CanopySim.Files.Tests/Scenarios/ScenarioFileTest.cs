using CanopySim.Files.Scenarios;
using CanopySim.Growth;
using CanopySim.Parameters;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

public sealed class ScenarioFileTest : IDisposable
{
    private readonly TestScenario _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public void WhatIsLeftOutIsTheModelsDefault()
    {
        var scenario = _files.Read(TestScenario.Least).Scenario;
        Assert.Equal((47.6, -122.3, "UTC-08:00"), (scenario.Site.Latitude, scenario.Site.Longitude, scenario.Site.TimeZone));
        Assert.Equal(new RowLayout(), scenario.Rows);
        Assert.Equal(new GrowthParameters(), scenario.Growth);
        Assert.Equal(new LeafAgeCurve().Points, scenario.LeafAge.Points);
    }

    [Fact]
    public void ReadsEveryKindOfValue()
    {
        var scenario = _files.Read(TestScenario.Least + """
              fill_gaps: true
              hour_stamp: end
              columns:
                rain: gauge [mm]
            seed: 18446744073709551615
            season: {year: 2014, harvest: date, harvest_date: 2014-09-20}
            trellis: {form: hanging-curtain, cordon_height: 67 in}
            canopy_work:
              topping:
                - when_shoots_reach: 1.3 m
                  nodes: 16
                - {on: 2014-08-01, height: 2 ft}
            leaf_age:
              points: [[0 d, 0.02], [5 weeks, 100 %], [150 d, 0.2]]
            growth:
              preformed_nodes: 6
            soil:
            """).Scenario;
        Assert.Equal(ulong.MaxValue, scenario.Seed);
        Assert.Equal((true, CanopySim.Weather.HourStamp.End, "gauge [mm]"), (scenario.Weather.FillGaps, scenario.Weather.HourStamp, scenario.Weather.Columns["rain"]));
        Assert.Equal((HarvestRule.Date, new DateOnly(2014, 9, 20)), (scenario.Season.Harvest, scenario.Season.HarvestDate));
        Assert.Equal((TrellisForm.HangingCurtain, 67 * 0.0254), (scenario.Trellis.Form, scenario.Trellis.CordonHeight));
        Assert.Equal([new Topping { WhenShootsReach = 1.3, Nodes = 16 }, new Topping { On = new DateOnly(2014, 8, 1), Height = 2 * 0.3048 }], scenario.CanopyWork.Topping);
        Assert.Equal([new LeafAgePoint(0, 0.02), new LeafAgePoint(35, 1), new LeafAgePoint(150, 0.2)], scenario.LeafAge.Points);
        Assert.Equal(6, scenario.Growth.PreformedNodes);
    }

    [Fact]
    public void AFileMayGiveOnlyWhatDiffers()
    {
        Directory.CreateDirectory(_files.At("north"));
        _files.Write("north/base.yaml", TestScenario.Least + "rows:\n  spacing: 2 m\n  vine_spacing: 1 m\ncanopy_work:\n  topping: [{on: 2014-07-01, nodes: 14}]\n");
        _files.Write("north/weather.csv", "date,tmin,tmax\n");
        var document = _files.Read("based_on: north/base.yaml\nname: wide rows\nrows:\n  spacing: 3 m\nsoil:\n");
        Assert.Equal(("wide rows", 3.0, 1.0, 1), (document.Scenario.Name, document.Scenario.Rows.Spacing, document.Scenario.Rows.VineSpacing, document.Scenario.CanopyWork.Topping.Count));
        // The weather file lies beside the file that names it.
        Assert.Equal([_files.At("block.yaml"), _files.At("north/base.yaml"), _files.At("north/weather.csv")], document.SourceFiles);
        Assert.Equal(_files.At("north/base.yaml") + ":10", document.Values.Single(value => value.Key == "rows.vine_spacing").Where);
    }

    [Fact]
    public void OverridesComeLast()
    {
        var document = _files.Read(
            TestScenario.Least + "rows:\n  spacing: 2 m\ncanopy_work:\n  topping: [{on: 2014-07-01, nodes: 14}]\n",
            "rows.spacing=10 ft", "canopy_work.topping.0.nodes=12", "name=a: b # c", "leaf_age.points=[[0 d, 0], [30 d, 1]]", "rows.spacing=9 ft");
        Assert.Equal((9 * 0.3048, 12, "a: b # c", 2), (document.Scenario.Rows.Spacing, document.Scenario.CanopyWork.Topping[0].Nodes, document.Scenario.Name, document.Scenario.LeafAge.Points.Count));
        Assert.Equal("--set", document.Values.Single(value => value.Key == "rows.spacing").Where);
    }

    [Fact]
    public void SaysHowSureEveryValueIs()
    {
        var values = _files.Read(TestScenario.Least + "rows:\n  spacing: 8 ft\n").Values.ToDictionary(value => value.Key);
        Assert.Equal(new UnderstoodValue("rows.spacing", "2.4384 m", Mark.Given, "", _files.At("block.yaml") + ":9", "Distance between rows."), values["rows.spacing"]);
        Assert.Equal((Mark.Recalled, "soil 0.10 to 0.15: Campbell & Norman 1998", "default"), (values["optics.ground_par_reflectance"].Mark, values["optics.ground_par_reflectance"].Source, values["optics.ground_par_reflectance"].Where));
        // Nobody gave it, so it is not given.
        Assert.Equal(Mark.Assumed, values["rows.vine_spacing"].Mark);
        Assert.Equal(("left out", "default"), (values["trellis.cordon_height"].Value, values["trellis.cordon_height"].Where));
        Assert.Equal(Mark.Published, values["leaf_age.points"].Mark);
    }

    [Fact]
    public void AByteOrderMarkIsFine()
    {
        File.WriteAllBytes(_files.At("block.yaml"), [0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(TestScenario.Least.Replace("\n", "\r\n"))]);
        Assert.Equal("small block", ScenarioFile.Read(_files.At("block.yaml")).Scenario.Name);
    }

    [Fact]
    public void EveryParameterOfTheModelHasAUnitThatCanBeRead()
    {
        var values = _files.Read(TestScenario.Least).Values;
        Assert.True(values.Count > 100);
        // Every default, written with its unit, is read as itself.
        foreach (var value in values.Where(value => value.Where == "default" && value.Value is not ("left out" or "none")))
        {
            var again = _files.Read(TestScenario.Least, $"{value.Key}={value.Value}").Values.Single(found => found.Key == value.Key);
            Assert.Equal((value.Value, Mark.Given), (again.Value, again.Mark));
        }
    }

    /// <summary>A scenario may change the form of the one it is based on: what that gave to its own form is put aside, and told.</summary>
    [Fact]
    public void KeysOfAnotherFormUnderneathAreLeftOut()
    {
        _files.Write("below.yaml", TestScenario.Least + "trellis: {top_wire_height: 2.2 m, cordon_height: 1.1 m, catch_wires: [[1.5 m, 0.3 m]]}\n");
        var document = _files.Read("based_on: below.yaml\ntrellis: {form: bush, head_height: 0.6 m}\n");
        Assert.Equal(["trellis.cordon_height", "trellis.top_wire_height", "trellis.catch_wires"], document.KeysWithoutUse);
        Assert.Equal(new Trellis { Form = TrellisForm.Bush, HeadHeight = 0.6, CatchWires = document.Scenario.Trellis.CatchWires }, document.Scenario.Trellis);
        Assert.Empty(document.Scenario.Trellis.CatchWires);
        Assert.Empty(_files.Read("based_on: below.yaml\n").KeysWithoutUse);
        Assert.Equal(["trellis.top_wire_height", "trellis.catch_wires"], _files.Read("based_on: below.yaml\n", "trellis.form=high-wire").KeysWithoutUse);
    }

    [Fact]
    public void ReadsATrellisOfItsOwnWires()
    {
        var trellis = _files.Read(TestScenario.Least + """
            trellis:
              form: open-u
              cordon_height: 3 ft
              cordon_distance: 32 in
              wall_tilt: 15 deg
              catch_wires:
                - [1.2 m, 10 in]
                - [1.6 m, 0.3 m]
            """).Scenario.Trellis;
        Assert.Equal((TrellisForm.OpenU, 3 * 0.3048, 32 * 0.0254, 15), (trellis.Form, trellis.CordonHeight, trellis.CordonDistance, trellis.WallTilt));
        Assert.Equal([new CatchWirePair(1.2, 0.254), new CatchWirePair(1.6, 0.3)], trellis.CatchWires);
    }
}
