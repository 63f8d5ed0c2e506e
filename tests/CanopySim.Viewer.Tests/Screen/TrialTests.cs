using System.Text.Json;
using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Scenarios;
using CanopySim.Growth;
using CanopySim.Training;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>What is tried on a block: the edits, the scenario that follows, and before and after.</summary>
public sealed class TrialTests
{
    private static Scenario Opened => GrownSeason.Open().Scenario;

    [Fact]
    public void WhatIsLeftAloneStaysAsItIs()
    {
        var scenario = Opened;
        Assert.Equal(Json(scenario), Json(TrialDraft.Of(scenario).Apply(scenario)));
        Assert.Empty(TrialDraft.Of(scenario).Changes(scenario, Units.Metric));
        var worked = scenario with
        {
            CanopyWork = scenario.CanopyWork with
            {
                Topping = [new Topping { Stage = WorkStage.Bloom, Height = 2.1 },
                    new Topping { Stage = WorkStage.Veraison, Nodes = 20 }],
                LeafRemoval = [new LeafRemoval { Stage = WorkStage.Bloom, DaysAfter = 20, Share = 0.5,
                    Side = CanopySide.Morning }],
            },
        };
        Assert.Equal(Json(worked), Json(TrialDraft.Of(worked).Apply(worked)));
    }

    [Fact]
    public void SlidersChangeTheScenario()
    {
        using var desk = Open();
        Drag(desk, "trial.shoots", 20);
        Drag(desk, "trial.azimuth", 90);
        Drag(desk, "trial.topping", 1.1);
        Drag(desk, "trial.leaves", 0.6);
        desk.Click("trial.form.next");
        desk.Click("trial.grow");
        var got = desk.Trial.Started!;
        Assert.Equal(20, got.CanopyWork.ShootsPerMeter, 1e-9);
        Assert.Equal(90, got.Rows.Azimuth, 1e-9);
        Assert.Equal(1.1, Assert.Single(got.CanopyWork.Topping).Height!.Value, 1e-9);
        Assert.Equal(0.6, Assert.Single(got.CanopyWork.LeafRemoval).Share, 1e-9);
        Assert.Equal(new Trellis { Form = TrellisForm.HangingCurtain },
            got.Trellis with { CatchWires = new Trellis().CatchWires });
        Assert.Equal(Json(Opened.LeafAge), Json(got.LeafAge));
        ScenarioFile.Check(got, "tried");
        Assert.Contains("A draft season is growing: 0 %", desk.Find<Label>("trial.progress").Lines);
    }

    [Fact]
    public void SlidersFollowTheKeysWhenTheyHaveTheFocus()
    {
        using var desk = Open();
        var day = desk.State.Day;
        desk.Click("trial.shoots");
        var at = desk.Model.Draft.ShootsPerMeter;
        desk.Do(new KeyDown(ScreenKey.Right), new KeyDown(ScreenKey.Right), new KeyDown(ScreenKey.Left));
        Assert.Equal(at + 0.5, desk.Model.Draft.ShootsPerMeter, 1e-9);
        desk.Key(ScreenKey.Home);
        Assert.Equal(2, desk.Model.Draft.ShootsPerMeter, 1e-9);
        Assert.Equal(day, desk.State.Day);
        desk.Click("trial.undo");
        Assert.Equal(15, desk.Model.Draft.ShootsPerMeter, 1e-9);
    }

    [Fact]
    public void AToppingThatIsTakenAwayIsGoneAndOneThatIsThereKeepsItsTime()
    {
        var topped = Opened with { CanopyWork = Opened.CanopyWork with { Topping = [new Topping { Stage = WorkStage.Bloom, DaysAfter = 7, Height = 2.1 }] } };
        var higher = TrialDraft.Of(topped) with { ToppingHeight = 2.3 };
        Assert.Equal(new Topping { Stage = WorkStage.Bloom, DaysAfter = 7, Height = 2.3 },
            Assert.Single(higher.Apply(topped).CanopyWork.Topping));
        Assert.Empty((higher with { ToppingHeight = null }).Apply(topped).CanopyWork.Topping);
        using var desk = Open();
        Drag(desk, "trial.topping", 1.5);
        Assert.Equal(1.5, desk.Model.Draft.ToppingHeight!.Value, 1e-9);
        Drag(desk, "trial.topping", 0.1);
        Assert.Null(desk.Model.Draft.ToppingHeight);
    }

    [Fact]
    public void APointOfTheAgeCurveIsDraggedBetweenItsNeighbors()
    {
        using var desk = Open();
        desk.Reveal("trial.curve");
        var editor = desk.Find<CurveEditor>("trial.curve");
        var point = editor.PixelOf(new LeafAgePoint(60, 0.9));
        var to = editor.PixelOf(new LeafAgePoint(65, 0.5));
        desk.Do(new PointerDown(point.X, point.Y), new PointerMove(to.X, to.Y));
        Assert.Equal(new LeafAgePoint(65, 0.5), desk.Model.Draft.AgePoints[8]);
        Assert.Contains("65 days, 50 %", desk.Find<Label>("trial.curve.at.value").Lines);
        desk.Do(new PointerMove(to.X + 900, to.Y + 900), new PointerUp(to.X + 900, to.Y + 900));
        Assert.Equal(new LeafAgePoint(74, 0), desk.Model.Draft.AgePoints[8]);
        desk.Do(new KeyDown(ScreenKey.Up), new KeyDown(ScreenKey.Left), new KeyDown(ScreenKey.PageUp),
            new KeyDown(ScreenKey.Down));
        Assert.Equal(new LeafAgePoint(73, 0.05), desk.Model.Draft.AgePoints[8]);
        Assert.Equal(new LeafAgePoint(75, 0.73), desk.Model.Draft.AgePoints[9]);
        desk.Click("trial.grow");
        Assert.Equal(desk.Model.Draft.AgePoints, desk.Trial.Started!.LeafAge.Points);
        ScenarioFile.Check(desk.Trial.Started, "tried");
    }

    [Fact]
    public void BeforeAndAfterStandSideBySideWithWhatDiffers()
    {
        using var desk = Open();
        desk.Model.Edit(desk.Model.Draft with { ShootsPerMeter = 20 });
        desk.Click("trial.grow");
        desk.Trial.Status = new TrialStatus(TrialStage.Running, 0.4);
        desk.Do(new Tick(0.25));
        Assert.Equal(0.4, desk.Find<ShareBar>("trial.share").Share);
        Assert.InRange(desk.Model.SecondsToNextFrame!.Value, 0, 0.25);
        desk.Trial.Finish(GrownSeason.Result);
        desk.Do(new Tick(0.25));
        Assert.Contains("ripe 3 days later", string.Join(' ', desk.Find<Label>("trial.answer").Lines));
        Assert.Equal(["+3 d"], desk.Find<Label>("trial.ripe.3").Lines);
        var (before, after) = (GrownSeason.Result.Summary, desk.Trial.Status.Result!.Summary);
        for (var i = 0; i < GrowerFigure.All.Count; i++)
        {
            var figure = GrowerFigure.All[i];
            Assert.Equal([figure.Number(before, Units.Metric)], desk.Find<Label>($"trial.figure.{i}.1").Lines);
            Assert.Equal([figure.Number(after, Units.Metric)], desk.Find<Label>($"trial.figure.{i}.2").Lines);
            Assert.Equal([figure.Difference(after, before, Units.Metric)],
                desk.Find<Label>($"trial.figure.{i}.3").Lines);
        }

        Assert.Equal(["+0.4"], desk.Find<Label>("trial.figure.0.3").Lines);
        desk.Model.Edit(desk.Model.Draft with { ShootsPerMeter = 10 });
        Assert.StartsWith("With the changes that were grown last",
            string.Join(' ', desk.Find<Label>("trial.answer").Lines));
        desk.Model.Edit(desk.Model.Draft with { ShootsPerMeter = 20 });
        Assert.StartsWith("With these changes", string.Join(' ', desk.Find<Label>("trial.answer").Lines));
        var outcome = desk.Click("trial.show.after");
        Assert.True(outcome.Picture.HasFlag(PictureChange.Season));
        Assert.Same(desk.Trial.Status.Recording, desk.Model.Recording);
        Assert.StartsWith("The season as tried", desk.Find<Label>("today.facts").Lines[0]);
        desk.Type("s");
        Assert.Same(desk.Model.Opened, desk.Model.Recording);
    }

    [Fact]
    public void TheTriedSeasonIsShownOnTheSameDate()
    {
        using var desk = Open();
        var (longer, shorter) = (GrownSeason.Result.Days.Count, GrownSeason.OpenUnfinished(120).Recording);
        desk.Trial.Status = new TrialStatus(TrialStage.Done, 1, GrownSeason.Result, shorter);
        desk.Do(new Tick(0.3), new KeyDown(ScreenKey.Home), new TextTyped("s"));
        Assert.Same(shorter, desk.Model.Recording);
        Assert.Equal(0, desk.State.Day);
        desk.Key(ScreenKey.End);
        Assert.Equal(119, desk.State.Day);
        desk.Type("s");
        Assert.Equal(longer, desk.Model.Facts.DayCount);
        Assert.Equal(119, desk.State.Day);
    }

    [Fact]
    public void AFailureIsSaidAndAStopStops()
    {
        using var desk = Open();
        desk.Click("trial.grow");
        desk.Click("trial.stop");
        Assert.Equal(TrialStage.Idle, desk.Trial.Status.Stage);
        desk.Trial.Status = new TrialStatus(TrialStage.Failed, Message: "no leaves grew.");
        desk.Do(new Tick(0.3));
        Assert.Contains("no leaves grew.", string.Join(' ', desk.Find<Label>("trial.failed").Lines));
        using var alone = new ScreenModel(GrownSeason.Open());
        alone.StartTrial();
        Assert.Equal(TrialStage.Failed, alone.Trial.Status.Stage);
    }

    [Fact]
    public void WhatIsSavedIsReadBackAsTheTriedScenario()
    {
        using var desk = Open();
        desk.Model.Edit(desk.Model.Draft.WithPoint(8, 62, 0.7) with
        {
            ShootsPerMeter = 18.5,
            Form = TrellisForm.OpenU,
            Azimuth = 45,
            ToppingHeight = 1.9,
            LeafRemovalShare = 0.4
        });
        desk.Reveal("trial.file");
        desk.Click("trial.file");
        desk.Do(new KeyDown(ScreenKey.Delete), new TextTyped("north "), new TextTyped("hill 3.yaml"),
            new KeyDown(ScreenKey.Backspace), new TextTyped("l"));
        Assert.Equal("north hill 3.yaml", desk.Model.FileName);
        Assert.Equal(1, desk.State.TextScale);
        desk.Click("trial.save");
        var (text, name) = desk.Trial.Saved!.Value;
        Assert.Equal("north hill 3.yaml", name);
        Assert.Contains("Written: north hill 3.yaml", desk.Find<Label>("trial.saved").Lines);
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, name), text);
            File.WriteAllText(Path.Combine(folder.FullName, "weather.csv"), "date\n");
            var read = ScenarioFile.Read(Path.Combine(folder.FullName, name)).Scenario;
            Assert.Equal(Json(desk.Model.Draft.Apply(desk.Model.OpenedScenario)), Json(read));
            Assert.NotEqual(Json(desk.Model.OpenedScenario), Json(read));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void AScenarioThatCannotStandIsNotSaved()
    {
        using var desk = Open();
        desk.Model.SetFileName("");
        desk.Click("trial.save");
        Assert.Null(desk.Trial.Saved);
        Assert.Contains("no name", desk.Model.SavedMessage);
        desk.Model.SetFileName("tried.yaml");
        desk.Model.Edit(desk.Model.Draft with { Form = TrellisForm.HangingCurtain, ToppingHeight = 1.8 });
        Assert.Contains("canopy work, topping 1, height: 1.8 m",
            string.Join(' ', desk.Find<Label>("trial.problem").Lines));
        desk.Click("trial.save");
        desk.Click("trial.grow");
        Assert.Null(desk.Trial.Saved);
        Assert.Null(desk.Trial.Started);
        desk.Model.Edit(desk.Model.Draft with { ToppingHeight = 1.1 });
        desk.Click("trial.save");
        Assert.Contains("file: \"weather.csv\"", desk.Trial.Saved!.Value.Text);
        desk.Trial.WeatherFile = "../warm/weather.csv";
        desk.Click("trial.save");
        Assert.Contains("file: \"../warm/weather.csv\"", desk.Trial.Saved!.Value.Text);
    }

    [Fact]
    public void UnitsAreTheReaders()
    {
        using var desk = Open();
        desk.Model.Edit(desk.Model.Draft with { ToppingHeight = 1.8 });
        Assert.Equal(["15.0 per m"], desk.Find<Label>("trial.shoots.value").Lines);
        desk.Type("u");
        Assert.Equal(["4.6 per ft"], desk.Find<Label>("trial.shoots.value").Lines);
        Assert.Equal(["at 71 in"], desk.Find<Label>("trial.topping.value").Lines);
    }

    private static Desk Open() => new(state: new ViewState { Day = 150, Panel = SidePanel.Trial });

    private static string Json(object value) => JsonSerializer.Serialize(value);

    private static void Drag(Desk desk, string name, double value)
    {
        desk.Reveal(name);
        var track = desk.Find<ValueTrack>(name);
        var (left, right) = (track.Bounds.Left + 8, track.Bounds.Right - 8);
        var x = left + (float)((value - track.Least) / (track.Most - track.Least) * (right - left));
        desk.Do(new PointerDown(track.Bounds.MidX, track.Bounds.MidY), new PointerMove(x, track.Bounds.MidY),
            new PointerUp(x, track.Bounds.MidY));
    }
}
