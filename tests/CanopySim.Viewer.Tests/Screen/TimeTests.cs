using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>The lines of season and day: dragged, clicked, walked by keys, played.</summary>
public sealed class TimeTests
{
    private static int LastDay => GrownSeason.Result.Days.Count - 1;

    [Fact]
    public void DraggingTheSeasonGoesToTheDayUnderThePointer()
    {
        using var desk = new Desk();
        var track = desk.Find<SeasonTrack>("season");
        var y = track.Bounds.MidY;
        desk.Do(new PointerDown(track.PixelOf(60), y));
        Assert.Equal(60, desk.State.Day);
        var outcome = desk.Do(new PointerMove(track.PixelOf(90), y), new PointerMove(track.PixelOf(75), y + 300));
        Assert.Equal(75, desk.State.Day);
        Assert.True(outcome.Picture.HasFlag(PictureChange.Day | PictureChange.Colors));
        Assert.Empty(outcome.Requests);
        desk.Do(new PointerUp(track.PixelOf(75), y), new PointerMove(track.PixelOf(20), y));
        Assert.Equal(75, desk.State.Day);
        desk.Do(new PointerDown(track.PixelOf(75), y), new PointerMove(5000, y), new PointerUp(5000, y));
        Assert.Equal(LastDay, desk.State.Day);
    }

    [Theory]
    [InlineData("budbreak")]
    [InlineData("bloom")]
    [InlineData("veraison")]
    [InlineData("ripe")]
    public void AStageIsOnItsDateAndAClickGoesThere(string name)
    {
        using var desk = new Desk();
        var dates = GrownSeason.Result.Summary.Dates;
        var date = name switch
        {
            "budbreak" => dates.Budbreak,
            "bloom" => dates.Bloom,
            "veraison" => dates.Veraison,
            _ => dates.TargetSugar
        };
        var (stage, box, _) = desk.Find<SeasonTrack>("season").PlaceStages().Single(placed =>
            placed.Stage.Name == name);
        Assert.Equal(date, stage.Date);
        desk.Click(box.MidX, box.MidY);
        Assert.Equal(date, desk.Model.Facts.DateOf(desk.State.Day));
    }

    [Fact]
    public void KeysWalkThroughDaysAndHours()
    {
        using var desk = new Desk();
        desk.Key(ScreenKey.Home);
        Assert.Equal(0, desk.State.Day);
        desk.Do(new KeyDown(ScreenKey.Right), new KeyDown(ScreenKey.Right), new KeyDown(ScreenKey.PageDown),
            new KeyDown(ScreenKey.Left));
        Assert.Equal(11, desk.State.Day);
        desk.Key(ScreenKey.PageUp);
        Assert.Equal(1, desk.State.Day);
        desk.Key(ScreenKey.End);
        Assert.Equal(LastDay, desk.State.Day);
        desk.Key(ScreenKey.Right);
        Assert.Equal(LastDay, desk.State.Day);
        var hour = desk.State.Hour;
        var outcome = desk.Do(new KeyDown(ScreenKey.Right, KeyModifiers.Shift),
            new KeyDown(ScreenKey.Right, KeyModifiers.Shift));
        Assert.Equal(hour + 2, desk.State.Hour);
        Assert.Equal(PictureChange.Hour, outcome.Picture);
        desk.Key(ScreenKey.Left, KeyModifiers.Shift);
        Assert.Equal(hour + 1, desk.State.Hour);
    }

    [Fact]
    public void TheDaysLineIsDraggedFromMidnightToMidnight()
    {
        using var desk = new Desk();
        var track = desk.Find<HourTrack>("hour");
        desk.Do(new PointerDown(track.PixelOf(9.5), track.Bounds.Top + 5), new PointerMove(track.PixelOf(17.2), 0),
            new PointerUp(track.PixelOf(17.2), 0));
        Assert.Equal(17, desk.State.Hour);
        desk.Do(new PointerDown(track.PixelOf(9.5), track.Bounds.Top + 5), new PointerMove(-50, 0),
            new PointerUp(-50, 0));
        Assert.Equal(0, desk.State.Hour);
        Assert.Equal(track.Light.Select(light => light.Ppfd), GrownSeasonHours(desk));
    }

    [Fact]
    public void TheSeasonPlaysByTheTimeThatWentByAndStopsAtItsEnd()
    {
        using var desk = new Desk(state: new ViewState { Day = 50 });
        desk.Type(" ");
        Assert.Equal(0, desk.Model.SecondsToNextFrame);
        for (var frame = 0; frame < 20; frame++) desk.Do(new Tick(0.05));
        Assert.InRange(desk.State.Day, 59, 60);
        desk.Do(new Tick(0.31), new Tick(0.31));
        Assert.InRange(desk.State.Day, 65, 67);
        desk.Do(new Tick(100));
        Assert.Equal(LastDay, desk.State.Day);
        Assert.Equal(Playing.Nothing, desk.State.Playing);
        using var picture = desk.Picture();
        Assert.Null(desk.Model.SecondsToNextFrame);

        // From the end it begins again, where the buds break.
        desk.Click("play.season");
        Assert.Equal(GrownSeason.Result.Summary.Dates.Budbreak, desk.Model.Facts.DateOf(desk.State.Day));
        Assert.Equal("Pause", desk.Find<PushButton>("play.season").Caption);
        desk.Click("play.season");
        Assert.Equal(Playing.Nothing, desk.State.Playing);
    }

    [Fact]
    public void TheDayPlaysFromSunriseToSunset()
    {
        using var desk = new Desk();
        desk.Do(new KeyDown(ScreenKey.Left, KeyModifiers.Shift));
        var light = desk.Model.LightOfDay;
        desk.Model.SetHour(23);
        desk.Type("d");
        Assert.Equal(light[0].Hour, desk.State.Hour);
        desk.Do(new Tick(1));
        Assert.Equal(light[0].Hour + 3, desk.State.Hour);
        desk.Do(new Tick(60));
        Assert.Equal(light[^1].Hour, desk.State.Hour);
        Assert.Equal(Playing.Nothing, desk.State.Playing);
    }

    [Fact]
    public void ASeasonInTheMakingShowsItsDaysAsTheyComeAndSaysSo()
    {
        var (recording, addDay) = GrownSeason.OpenUnfinished(90);
        using var desk = new Desk(recording: recording);
        Assert.Equal(89, desk.State.Day);
        Assert.True(desk.Find<SeasonTrack>("season").Span > 90);
        Assert.InRange(desk.Model.SecondsToNextFrame!.Value, 0, 0.25);
        using (desk.Picture()) Assert.InRange(desk.Model.SecondsToNextFrame.Value, 0.01, 0.25);
        addDay();
        addDay();
        var outcome = desk.Do(new Tick(0.25), new SeasonProgress(0.45));
        Assert.True(outcome.Picture.HasFlag(PictureChange.Day));
        Assert.Equal(91, desk.State.Day);
        Assert.Contains("45 % done", string.Join(' ', desk.Find<Label>("today.facts").Lines));
        Assert.Contains("is being computed", string.Join(' ', desk.Find<Label>("answer").Lines));

        // Whoever looks at another day stays there.
        desk.Key(ScreenKey.Left);
        addDay();
        desk.Do(new Tick(0.25));
        Assert.Equal(90, desk.State.Day);
        Assert.Equal(93, desk.Find<SeasonTrack>("season").Dates.Count);
        desk.Click(desk.Find<SeasonTrack>("season").PixelOf(200), desk.Bounds("season").MidY);
        Assert.Equal(92, desk.State.Day);
    }

    [Fact]
    public void AStillScreenCostsNothing()
    {
        using var desk = new Desk();
        using (desk.Picture()) Assert.Null(desk.Model.SecondsToNextFrame);
        var outcome = desk.Do();
        Assert.False(outcome.Paint);
        Assert.Equal(PictureChange.None, outcome.Picture);
        var button = desk.Bounds("panel.charts");
        Assert.True(desk.Do(new PointerMove(button.MidX, button.MidY)).Paint);
        using (desk.Picture()) Assert.InRange(desk.Model.SecondsToNextFrame!.Value, 0.5, 0.7);
        Assert.DoesNotContain(desk.Model.Texts, text => text.Owner == "tooltip");
        Assert.True(desk.Do(new Tick(0.7)).Paint);
        using (desk.Picture()) Assert.Contains(desk.Model.Texts, text => text.Owner == "tooltip"
            && text.Text.Contains("(A)"));
        Assert.Null(desk.Model.SecondsToNextFrame);
    }

    private static IEnumerable<float> GrownSeasonHours(Desk desk) =>
        desk.Model.Recording.Hours(desk.State.Day).IncidentPpfd;
}
