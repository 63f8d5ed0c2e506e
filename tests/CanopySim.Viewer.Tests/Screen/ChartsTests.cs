using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>The runner's charts beside the picture, and the numbers under the pointer.</summary>
public sealed class ChartsTests
{
    public static TheoryData<string> Stems => [.. ChartShelf.Offered.Select(chart => chart.Stem)];

    [Theory]
    [MemberData(nameof(Stems))]
    public void EveryChartIsChosenByAClickAndDrawn(string stem)
    {
        using var desk = new Desk();
        desk.Type("a");
        desk.Click($"chart.{stem}");
        Assert.Equal(stem, desk.State.Chart);
        var chart = desk.Find<ChartView>("chart.view");
        using var picture = desk.Picture();
        HashSet<uint> colors = [];
        for (var x = (int)chart.Bounds.Left; x < chart.Bounds.Right; x += 2)
            for (var y = (int)chart.Bounds.Top; y < Math.Min(chart.Bounds.Bottom,
                desk.Model.PictureArea.Bottom); y += 2) colors.Add((uint)picture.GetPixel(x, y));
        Assert.True(colors.Count > 30, $"{stem} has {colors.Count} colors");
    }

    [Theory]
    [InlineData(SeasonCharts.CarbonByLeafAge)]
    [InlineData(SeasonCharts.LeafAreaByLeafAge)]
    [InlineData(SeasonCharts.RipeningCapacity)]
    [InlineData(SeasonCharts.Sugar)]
    public void HoveringReadsTheRowsOfTheDay(string stem)
    {
        using var desk = new Desk(state: new ViewState { Day = 10, Panel = SidePanel.Charts, Chart = stem });
        foreach (var date in (DateOnly[])[new(2025, 6, 20), new(2025, 8, 12), new(2025, 9, 10)])
        {
            Hover(desk, date.DayNumber);
            Assert.Equal(date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture),
                desk.Find<Label>("chart.at").Lines[0]);
            var day = GrownSeason.Result.Days.Single(row => row.Date == date);
            var ages = GrownSeason.Result.LeafAges.Where(row => row.Date == date).ToList();
            var (wanted, tolerance) = stem switch
            {
                SeasonCharts.CarbonByLeafAge => (ages.Sum(row => row.NetAssimilationGCo2PerVine), 0.051),
                SeasonCharts.LeafAreaByLeafAge => (ages.Sum(row => row.LeafAreaM2PerVine), 0.0051),
                SeasonCharts.RipeningCapacity => (day.RipeningCapacityGPerKgD ?? double.NaN, 0.051),
                _ => (day.SugarBrix ?? double.NaN, 0.051),
            };
            Assert.Equal(wanted, Value(desk, 0), tolerance);
            if (stem is not (SeasonCharts.CarbonByLeafAge or SeasonCharts.LeafAreaByLeafAge)) continue;
            var classes = desk.Model.Widgets.Count(widget => widget.Name.StartsWith("chart.value.")
                && widget.Name.EndsWith(".name")) - 1;
            Assert.Equal(ages.Select(row => ChartStyle.AgeClassOf(row.AgeFromD)).Distinct().Count(), classes);
            Assert.Equal(wanted, Enumerable.Range(1, classes).Sum(i => Value(desk, i)), 0.3);
        }
    }

    [Fact]
    public void WithoutThePointerTheDayInSightIsReadAndItsLineFollows()
    {
        using var desk = new Desk(state: new ViewState { Day = 120, Panel = SidePanel.Charts });
        Assert.Equal(GrownSeason.Result.Days[120].Date.DayNumber, desk.Find<ChartView>("chart.view").Now);
        using var before = desk.Picture();
        desk.Do(new KeyDown(ScreenKey.PageDown), new KeyDown(ScreenKey.PageDown), new KeyDown(ScreenKey.PageDown));
        var chart = desk.Find<ChartView>("chart.view");
        Assert.Equal(GrownSeason.Result.Days[150].Date.DayNumber, chart.Now);
        using var after = desk.Picture();
        var (x, y) = ((int)chart.PixelOf(chart.Now!.Value),
            (int)(chart.Bounds.Top + (chart.Fields[0].Top * chart.Scale) + 3));
        Assert.Contains(Enumerable.Range(x - 1, 3), column => before.GetPixel(column, y) != after.GetPixel(column, y));
        Assert.Equal(1, desk.Model.Charts.Drawn);
        Assert.StartsWith("29 July", desk.Find<Label>("chart.at").Lines[0]);
    }

    [Fact]
    public void ThroughTheDayReadsHoursAndFollowsTheHour()
    {
        using var desk = new Desk(state: new ViewState
        {
            Day = 150,
            Panel = SidePanel.Charts,
            Chart = SeasonCharts.DayCourse
        });
        Assert.Equal(13.5, desk.Find<ChartView>("chart.view").Now);
        Hover(desk, 9.4);
        var hours = desk.Model.Recording.Hours(150);
        var at = Array.IndexOf(hours.Hours, (byte)9);
        var areas = desk.Model.Recording.Leaves(150).Area;
        double Mean(float[] of) => Enumerable.Range(0, areas.Length).Sum(i =>
            of[hours.IndexOf(at, i)] * (double)areas[i]) / areas.Sum(area => (double)area);
        Assert.Equal(hours.IncidentPpfd[at], Value(desk, 0), 0.51);
        Assert.Equal(Mean(hours.AbsorbedPpfd), Value(desk, 1), 0.51);
        Assert.Equal(Mean(hours.NetAssimilation), Value(desk, 2), 0.0051);
        Assert.Equal(hours.AirTemperature[at], Value(desk, 3), 0.051);
        var chart = desk.Find<ChartView>("chart.view");
        desk.Click(chart.PixelOf(16.2), chart.Bounds.Top + (chart.Fields[0].Top * chart.Scale) + 5);
        Assert.Equal(16, desk.State.Hour);
    }

    [Fact]
    public void WhatFedTheFruitIsReadByAge()
    {
        using var desk = new Desk(state: new ViewState
        {
            Day = 150,
            Panel = SidePanel.Charts,
            Chart = SeasonCharts.FruitCarbonByLeafAge
        });
        Hover(desk, 75);
        var share = GrownSeason.Result.Summary.RipeningCarbonByLeafAge.Single(of => of.FromD == 70);
        Assert.Equal("Leaves 70 to 80 days old", desk.Find<Label>("chart.at").Lines[0]);
        Assert.Equal(100 * share.Share, Value(desk, 0), 0.051);
    }

    [Fact]
    public void ASeasonInTheMakingHasTheSameAgesAsTheWholeOne()
    {
        var (recording, addDay) = GrownSeason.OpenUnfinished(100);
        using var desk = new Desk(recording: recording, state: new ViewState { Day = 99, Panel = SidePanel.Charts });
        var date = recording.Row(99).Date;
        var wanted = GrownSeason.Result.LeafAges.Where(row => row.Date <= date).ToList();
        var got = desk.Model.Facts.LeafAges;
        Assert.Equal(wanted.Select(row => (row.Date, row.AgeFromD, row.AgeToD)),
            got.Select(row => (row.Date, row.AgeFromD, row.AgeToD)));
        for (var i = 0; i < got.Count; i++)
        {
            Assert.Equal(wanted[i].LeafAreaM2PerVine, got[i].LeafAreaM2PerVine, 1e-5);
            Assert.Equal(wanted[i].NetAssimilationGCo2PerVine, got[i].NetAssimilationGCo2PerVine, 1e-4);
            Assert.Equal(wanted[i].MeanEfficiency, got[i].MeanEfficiency, 1e-5);
        }

        using (desk.Picture()) Assert.Equal(1, desk.Model.Charts.Drawn);
        addDay();
        desk.Do(new Tick(0.3));
        using (desk.Picture()) Assert.Equal(2, desk.Model.Charts.Drawn);
    }

    [Fact]
    public void ArrowsChooseTheNextChart()
    {
        using var desk = new Desk();
        desk.Type("a");
        foreach (var (stem, _) in ChartShelf.Offered)
        {
            Assert.Equal(stem, desk.State.Chart);
            desk.Key(ScreenKey.Down);
        }

        Assert.Equal(ChartShelf.Offered[0].Stem, desk.State.Chart);
        desk.Key(ScreenKey.Up);
        Assert.Equal(ChartShelf.Offered[^1].Stem, desk.State.Chart);
    }

    private static void Hover(Desk desk, double value)
    {
        var chart = desk.Find<ChartView>("chart.view");
        desk.Do(new PointerMove(chart.PixelOf(value), chart.Bounds.Top + (chart.Fields[0].Top * chart.Scale) + 5));
    }

    private static double Value(Desk desk, int row)
    {
        var text = string.Join(' ', desk.Find<Label>($"chart.value.{row}.value").Lines);
        return text == "–" ? double.NaN
            : double.Parse(text.Replace('−', '-').Split(' ')[0], CultureInfo.InvariantCulture);
    }
}
