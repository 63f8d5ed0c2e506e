using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>What the leaves are colored by, and what the legend says of it.</summary>
public sealed class ColorsTests
{
    public static TheoryData<LeafQuantity> Quantities => [.. Enum.GetValues<LeafQuantity>()];

    [Fact]
    public void LeavesAreColoredByAgeFirst()
    {
        using var desk = new Desk();
        Assert.Equal(LeafQuantity.Age, desk.State.Quantity);
        Assert.Equal("Age, days", LegendTexts(desk)[0]);
        Assert.Equal(["0", "40", "80", "120", "160+"], LegendTexts(desk)[1..]);
        Assert.Equal(LeafQuantity.Age, Enum.GetValues<LeafQuantity>()[0]);
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void AKeyAndAClickChooseTheSame(LeafQuantity quantity)
    {
        using var typed = new Desk();
        using var clicked = new Desk();
        var outcome = typed.Type(((int)quantity + 1).ToString());
        Assert.Equal(PictureChange.Colors, outcome.Picture);
        clicked.Type("c");
        clicked.Click($"color.{quantity.ToString().ToLowerInvariant()}");
        Assert.Equal(quantity, typed.State.Quantity);
        Assert.Equal(quantity, clicked.State.Quantity);
        Assert.True(clicked.Find<PushButton>($"color.{quantity.ToString().ToLowerInvariant()}").IsOn);
        var shares = quantity == LeafQuantity.RipeningShare ? RipeningShares.Of(typed.Model.Recording) : null;
        Assert.Equal(LeafValues.Of(typed.Model.Recording, typed.State.Day, typed.State.Hour, quantity, shares),
            typed.Model.Values);
        Assert.Equal(LeafColoring.Fixed(quantity), typed.Model.Coloring);
        Assert.StartsWith(QuantityText.Name(quantity), LegendTexts(typed)[0]);
    }

    [Fact]
    public void AFittedRangeSpansTheLeavesInThePicture()
    {
        using var desk = new Desk();
        desk.Type("4r");
        Assert.Equal(RangeMode.Fitted, desk.State.Range);
        Assert.Equal(desk.Model.Values.Where(float.IsFinite).Min(), desk.Model.Coloring.From, 1e-6);
        Assert.Equal(desk.Model.Values.Where(float.IsFinite).Max(), desk.Model.Coloring.To, 1e-6);
        Assert.Contains("fitted", string.Join(' ', LegendTexts(desk)));
        var most = desk.Model.Coloring.To;
        desk.Key(ScreenKey.PageUp);
        Assert.NotEqual(most, desk.Model.Coloring.To);
        desk.Type("c");
        desk.Click("range.fixed");
        Assert.Equal(LeafColoring.Fixed(LeafQuantity.LightOfDay), desk.Model.Coloring);
    }

    [Fact]
    public void LegendsSpeakUsUnits()
    {
        using var desk = new Desk(state: new ViewState
        {
            Day = 150,
            Quantity = LeafQuantity.TemperatureNow,
            Units = Units.Us
        });
        Assert.Equal("Leaf temperature, °F", LegendTexts(desk)[0]);
        Assert.Equal("50.0", LegendTexts(desk)[1]);
        Assert.Equal("113.0", LegendTexts(desk)[^1]);
    }

    [Fact]
    public void AnHourChangesColorsOnlyOfWhatChangesByHour()
    {
        using var desk = new Desk();
        desk.Type("3");
        Assert.True(desk.Key(ScreenKey.Left, KeyModifiers.Shift).Picture.HasFlag(PictureChange.Colors));
        desk.Type("1");
        Assert.False(desk.Key(ScreenKey.Left, KeyModifiers.Shift).Picture.HasFlag(PictureChange.Colors));
    }

    [Fact]
    public void AtNightTheLegendSaysWhatTheColorsShow()
    {
        using var desk = new Desk();
        desk.Type("6");
        Assert.Equal("Assimilation now, µmol of CO₂ per m² and s", LegendTexts(desk)[0]);
        desk.Model.SetHour(2);
        Assert.Contains("in the dark respiration alone", string.Join(' ', LegendTexts(desk)));
        Assert.All(desk.Model.Values, value => Assert.InRange(value, -3, 0));
        desk.Type("5");
        Assert.Contains("in the dark that of the air", string.Join(' ', LegendTexts(desk)));
        var air = (float)desk.Model.Recording.WeatherOf(desk.State.Day).Hours[2].AirTemperatureCelsius;
        Assert.All(desk.Model.Values, value => Assert.Equal(air, value));
        desk.Type("1");
        Assert.DoesNotContain("dark", string.Join(' ', LegendTexts(desk)));
    }

    private static List<string> LegendTexts(Desk desk)
    {
        using var picture = desk.Picture();
        return [.. desk.Model.Texts.Where(text => text.Owner == "legend").Select(text => text.Text)];
    }
}
