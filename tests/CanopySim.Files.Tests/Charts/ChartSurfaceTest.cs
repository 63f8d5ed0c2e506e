using CanopySim.Files.Charts;
using SkiaSharp;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

/// <summary>A chart on a dark surface: paper, text and lines turn and turn back, data keep their colors.</summary>
public sealed class ChartSurfaceTest
{
    private static readonly DayCourseHour[] Course =
        [.. Enumerable.Range(6, 13).Select(hour => new DayCourseHour(hour, 100 * hour, 20, 10 * hour, hour - 7))];

    [Fact]
    public void TheSameChartTurnsDarkAndBack()
    {
        var chart = DayCourseChart.Of(new DateOnly(2025, 7, 1), Course);
        var day = Colors(chart, ChartSurface.Day);
        var dark = Colors(chart, ChartSurface.Dark);
        Assert.Equal(day, Colors(chart, ChartSurface.Day));
        Assert.Equal(ChartStyle.Paper, day[0]);
        Assert.Equal(ChartStyle.Night, dark[0]);
        Assert.Contains(ChartStyle.Line, day);
        Assert.Contains(ChartSurface.Dark.Of(ChartStyle.Line), dark);
        Assert.DoesNotContain(ChartStyle.Paper, dark);
        Assert.Equal(ChartStyle.AgeClasses[3].Rgb, ChartSurface.Dark.Of(ChartStyle.AgeClasses[3].Rgb));
    }

    [Fact]
    public void FieldsTellWhereValuesLie()
    {
        var chart = DayCourseChart.Of(new DateOnly(2025, 7, 1), Course);
        using var surface = SKSurface.Create(new SKImageInfo(420, 330));
        var fields = chart.Draw(surface.Canvas, new ChartSize(420, 330));
        Assert.Equal(2, fields.Count);
        Assert.True(fields[0].Bottom < fields[1].Top);
        Assert.Equal(fields[0].Left, fields[0].PixelOf(fields[0].FromX));
        Assert.Equal(12.5, fields[1].ValueAt(fields[1].PixelOf(12.5)), 1e-4);

        // The line's end lies where its hour is: 18 to 19, at the right of noon.
        Assert.True(fields[0].PixelOf(18.5) > fields[0].PixelOf(12.5));
    }

    [Fact]
    public void ADayWithoutLeavesSaysSo()
    {
        var chart = DayCourseChart.Of(new DateOnly(2025, 3, 1), []);
        Assert.Contains("No leaves", chart.Caption);
        Assert.NotEmpty(Colors(chart, ChartSurface.Dark));
    }

    private static List<uint> Colors(ChartSheet chart, ChartSurface on)
    {
        using var bitmap = new SKBitmap(420, 330);
        using var canvas = new SKCanvas(bitmap);
        chart.Draw(canvas, new ChartSize(420, 330), on);
        return [.. bitmap.Pixels.Select(pixel => (uint)pixel & 0xFFFFFF)];
    }
}
