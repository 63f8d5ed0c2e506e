using System.Globalization;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>One leaf: picked in the picture or by keys, with the numbers of the results files.</summary>
public sealed class LeafTests
{
    [Fact]
    public void AClickAsksWhichLeafItIsAndTheAnswerOpensThePanel()
    {
        using var desk = new Desk();
        var outcome = desk.Click(400, 300);
        Assert.Equal([new PickLeaf(400, 300)], outcome.Requests);
        Assert.Null(desk.State.LeafId);
        outcome = desk.Do(new LeafPicked(17));
        Assert.True(outcome.Picture.HasFlag(PictureChange.Leaf | PictureChange.Size));
        Assert.Equal(SidePanel.Leaf, desk.State.Panel);
        desk.Do(new LeafPicked(null));
        Assert.Null(desk.State.LeafId);
    }

    [Fact]
    public void ThePanelSaysWhatTheLeavesTableSays()
    {
        var rows = GrownSeason.Result.Leaves.Where(row => row.Date == GrownSeason.LeavesOn).ToList();
        Assert.True(rows.Count > 500);
        using var desk = OnTheDay();
        foreach (var row in rows.Where((_, i) => i % 60 == 0))
        {
            desk.Do(new LeafPicked(row.LeafId));
            var values = Rows(desk);
            Assert.StartsWith((row.Shoot + 1).ToString(CultureInfo.InvariantCulture), values["Shoot"]);
            Assert.Equal(row.Order == 2, values["Shoot"].Contains("lateral"));
            Assert.Equal(row.Rank.ToString(CultureInfo.InvariantCulture), values["Rank from its base"]);
            Assert.Equal(row.UnfoldedOn.ToString("d MMMM yyyy", CultureInfo.InvariantCulture), values["Unfolded on"]);
            Assert.Equal($"{row.AgeD} days", values["Age"]);
            Assert.Equal(row.AreaCm2, Number(values["Area"]), 0.051);
            Assert.Equal(100 * row.Efficiency, Number(values["Efficiency of its age"]), 0.51);
            Assert.Equal(row.AbsorbedParMolD / row.AreaCm2 * 1e4, Number(values["Light of the day"]), 0.051);
            Assert.Equal(row.NetAssimilationGCo2D, Number(values["Carbon of the day"]), 0.00051);
        }
    }

    [Fact]
    public void TheHourIsThatOfTheRecording()
    {
        using var desk = OnTheDay();
        desk.Type("n");
        var index = desk.Model.Leaves.IndexOf(desk.State.Day, desk.State.LeafId!.Value);
        var hours = desk.Model.Recording.Hours(desk.State.Day);
        foreach (var hour in (int[])[8, 13, 17])
        {
            desk.Model.SetHour(hour);
            var at = hours.IndexOf(Array.IndexOf(hours.Hours, (byte)hour), index);
            var values = Rows(desk);
            Assert.Equal(hours.AbsorbedPpfd[at], Number(values[$"Light, {hour}:00 to {hour + 1}:00"]), 0.51);
            Assert.Equal(hours.Temperature[at], Number(values["Temperature"]), 0.051);
            Assert.Equal(hours.NetAssimilation[at], Number(values["Assimilation"]), 0.051);
        }

        desk.Model.SetHour(2);
        var air = desk.Model.Recording.WeatherOf(desk.State.Day).Hours[2].AirTemperatureCelsius;
        Assert.Equal(air, Number(Rows(desk)["Temperature"].Replace(", as the air", "")), 0.051);
        Assert.EndsWith(", as the air", Rows(desk)["Temperature"]);
        Assert.InRange(Number(Rows(desk)["Assimilation, dark"]), -2, -0.05);
        desk.Model.SetHour(13);
        desk.Type("u");
        Assert.Equal((hours.Temperature[hours.IndexOf(Array.IndexOf(hours.Hours, (byte)13), index)] * 1.8) + 32,
            Number(Rows(desk)["Temperature"]), 0.051);
        Assert.EndsWith("°F", Rows(desk)["Temperature"]);
        Assert.EndsWith("in²", Rows(desk)["Area"]);
    }

    [Fact]
    public void KeysWalkFromLeafToLeaf()
    {
        using var desk = OnTheDay();
        desk.Type("n");
        var blades = desk.Model.Recording.Canopy(desk.State.Day).Blades;
        Assert.Equal(blades.Max(blade => blade.Area), Now(desk).Blade.Area);
        var first = Now(desk).Blade;
        desk.Type("n");
        var next = Now(desk).Blade;
        Assert.True(next.Shoot > first.Shoot || (next.Shoot == first.Shoot && next.Rank >= first.Rank));
        desk.Type("b");
        Assert.Equal(first.LeafId, desk.State.LeafId);
        HashSet<int> met = [];
        for (var i = 0; i < blades.Count; i++)
        {
            met.Add(desk.State.LeafId!.Value);
            desk.Model.StepLeaf(1);
        }

        Assert.Equal(blades.Count, met.Count);
        desk.Key(ScreenKey.Escape);
        Assert.Equal(SidePanel.None, desk.State.Panel);
        Assert.NotNull(desk.State.LeafId);
        desk.Key(ScreenKey.Escape);
        Assert.Null(desk.State.LeafId);
    }

    [Fact]
    public void ItsCurveHasTodayMarkedAndGoesToTheDayThatIsClicked()
    {
        using var desk = OnTheDay();
        desk.Type("n");
        var chart = desk.Find<ChartView>("leaf.chart");
        Assert.Equal(GrownSeason.LeavesOn.DayNumber, chart.Now);
        var to = GrownSeason.LeavesOn.AddDays(-30);
        desk.Click(chart.PixelOf(to.DayNumber), chart.Bounds.Top + (chart.Fields[0].Top * chart.Scale) + 5);
        Assert.Equal(to, desk.Model.Facts.DateOf(desk.State.Day));
        Assert.Equal(to.DayNumber, desk.Find<ChartView>("leaf.chart").Now);
        var course = desk.Model.Leaves.Course(desk.State.LeafId!.Value);
        Assert.Equal(GrownSeason.Result.Leaves.First(row => row.LeafId == desk.State.LeafId).UnfoldedOn,
            course[0].Date);
        desk.Key(ScreenKey.Home);
        Assert.Contains("does not hang today", string.Join(' ', desk.Find<Label>("leaf.sentence").Lines));
    }

    private static Desk OnTheDay() =>
        new(state: new ViewState { Day = GrownSeason.LeavesOn.DayNumber - GrownSeason.Result.Days[0].Date.DayNumber });

    private static LeafNow Now(Desk desk) => LeafNow.Of(
        desk.Model.Recording, desk.State.Day, desk.State.Hour,
            desk.Model.Leaves.IndexOf(desk.State.Day, desk.State.LeafId!.Value));

    private static Dictionary<string, string> Rows(Desk desk) => desk.Model.Widgets.OfType<Label>()
        .Where(label => label.Name.StartsWith("leaf.row.") && label.Name.EndsWith(".name"))
        .ToDictionary(
            label => string.Join(' ', label.Lines),
            label => string.Join(' ', desk.Find<Label>(label.Name.Replace(".name", ".value")).Lines));

    private static double Number(string text) =>
        double.Parse(text.Replace('−', '-').Split(' ')[0], CultureInfo.InvariantCulture);
}
