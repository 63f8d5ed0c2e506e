using System.Text;
using CanopySim.Files.Charts;
using CanopySim.Files.Fonts;
using ScottPlot;
using SkiaSharp;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

public class ChartTextTest
{
    /// <summary>Characters of units and of dates that a subset of a font lacks.</summary>
    [Theory]
    [InlineData("°")]
    [InlineData("µ")]
    [InlineData("²")]
    [InlineData("⁻")]
    [InlineData("¹")]
    [InlineData("→")]
    [InlineData("₂")]
    [InlineData("×")]
    [InlineData("–")]
    [InlineData("−")]
    [InlineData("é")]
    public void EveryCharacterOfUnitsIsDrawn(string character)
    {
        var rune = character.EnumerateRunes().Single();
        Assert.True(EmbeddedFonts.Has(EmbeddedFonts.Regular, rune) || EmbeddedFonts.Has(EmbeddedFonts.Fallback, rune));
        var drawn = Pixels(character);
        Assert.Contains(drawn, p => p != 0);
        Assert.NotEqual(Pixels("\uE123"), drawn);
    }

    [Fact]
    public void WhatInterLacksComesFromTheFallback()
    {
        Assert.False(EmbeddedFonts.Has(EmbeddedFonts.Regular, new Rune('⚘')));
        Assert.Equal(
            [("a", EmbeddedFonts.Regular), ("⚘", EmbeddedFonts.Fallback), ("b", EmbeddedFonts.Regular)],
            EmbeddedFonts.Runs("a⚘b", strong: false));
        Assert.Equal([("ab", EmbeddedFonts.SemiBold)], EmbeddedFonts.Runs("ab", strong: true));
        Assert.Contains(Pixels("⚘"), p => p != 0);
    }

    [Fact]
    public void DifferentWordsLookDifferent() => Assert.NotEqual(Pixels("bloom"), Pixels("budbreak"));

    [Fact]
    public void WidthIsTheSumOfTheRuns() => Assert.Equal(
        ChartText.Width("a", 12) + ChartText.Width("⚘", 12) + ChartText.Width("b", 12), ChartText.Width("a⚘b", 12), 1e-3);

    [Fact]
    public void LinesAreBrokenBetweenWordsAndLoseNone()
    {
        const string Text = "mean of seven days while the fruit ripened";
        var lines = ChartText.Wrap(Text, 12, 90);
        Assert.True(lines.Count > 2);
        Assert.All(lines, l => Assert.True(ChartText.Width(l, 12) <= 90));
        Assert.Equal(Text, string.Join(' ', lines));
    }

    /// <summary>ScottPlot writes its own tick labels: without our fonts they would vanish without an error.</summary>
    [Fact]
    public void ScottPlotDrawsItsLabels()
    {
        Assert.NotEqual(Plot("May"), Plot("June"));
        Assert.NotEqual(Plot("May"), Plot(""));

        static byte[] Plot(string label)
        {
            var plot = new Plot();
            ChartStyle.Apply(plot);
            plot.Axes.SetLimits(0, 2, 0, 1);
            plot.Axes.Bottom.SetTicks([1], [label]);
            plot.Layout.Fixed(new PixelPadding(40, 10, 30, 10));
            return plot.GetImageBytes(200, 100, ImageFormat.Png);
        }
    }

    private static uint[] Pixels(string text)
    {
        using var bitmap = new SKBitmap(120, 40);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.Transparent);
        ChartText.Draw(canvas, text, 4, 28, 24, ChartStyle.Text);
        return [.. bitmap.Pixels.Select(p => (uint)p)];
    }
}
