using CanopySim.Drawing.Pictures;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Files.Results;
using CanopySim.Results;

namespace CanopySim.Runner.Commands;

/// <summary>Writes the results folder of a season: tables, charts, views of the canopy and the report.</summary>
public static class SeasonOutput
{
    /// <summary>Tables and charts; returns the charts.</summary>
    /// <param name="file">Where to write a file by its name.</param>
    /// <param name="input">What was read.</param>
    /// <param name="result">The season.</param>
    /// <param name="units">Units of the charts.</param>
    /// <param name="threads">Threads that draw.</param>
    public static IReadOnlyList<ChartPicture> WriteTablesAndCharts(
        Func<string, string> file, SeasonInput input, SeasonResult result, Units units, int threads = 1)
    {
        SeasonFiles.Write(file, result, InputHashes.Of(input.Document));
        var charts = SeasonCharts.All(result, input.Document.Scenario, units, threads);
        WritePictures(file, charts);
        return charts;
    }

    /// <summary>The canopy that a season kept, to be drawn in perspective; null where nothing grew.</summary>
    public static KeptCanopy? Kept(SeasonInput input, SeasonResult result) => result.Portrait is { } portrait
        ? new KeptCanopy(portrait, input.Document.Scenario, input.UtcOffsetHours)
        : null;

    /// <summary>The report and the views of the canopy.</summary>
    public static void WriteReport(
        Func<string, string> file, SeasonInput input, SeasonResult result, Units units,
        IReadOnlyList<ChartPicture> charts, IReadOnlyList<ChartPicture> views, CanopyPerspective perspective)
    {
        WritePictures(file, views);
        if (perspective.Picture is { } picture) WritePictures(file, [picture]);
        File.WriteAllText(
            file("report.html"),
            ReportPage.Html(result, input.Document.Scenario, units, input.Document.Values, charts,
                DateOnly.FromDateTime(DateTime.Now), views, perspective));
    }

    /// <summary>Each picture as PNG, and as SVG where it is drawn in lines.</summary>
    public static void WritePictures(Func<string, string> file, IEnumerable<ChartPicture> pictures)
    {
        foreach (var picture in pictures)
        {
            File.WriteAllBytes(file($"charts/{picture.Stem}.png"), picture.Png);
            if (picture.Svg.Length > 0) File.WriteAllText(file($"charts/{picture.Stem}.svg"), picture.Svg);
        }
    }
}
