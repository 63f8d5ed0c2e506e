using System.Globalization;
using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests.Browser;

/// <summary>The page of a forecast as a grower opens it, and its numbers beside those of <c>forecast.json</c>.</summary>
public sealed class ForecastInBrowserTests(ForecastRun run) : IClassFixture<ForecastRun>
{
    private const int Phone = 390;

    // Five of what is coming, three of what is.
    private const int Charts = 8;

    [Fact]
    public void It_opens_whole_and_asks_nobody_for_anything()
    {
        using var browser = Browser();
        foreach (var width in (int[])[1200, Phone])
        {
            browser.Open(run.Page, width, 900);
            var shown = browser.Evaluate(
                "[...document.images].filter(p => p.offsetWidth > 0)"
                + ".map(p => ({there: p.complete && p.naturalWidth > 0, words: p.alt}))").EnumerateArray().ToList();
            Assert.Equal(Charts, shown.Count);
            Assert.All(shown, picture => Assert.True(picture.GetProperty("there").GetBoolean(), picture.GetRawText()));
            Assert.All(shown, picture => Assert.True(picture.GetProperty("words").GetString()!.Length > 20, picture.GetRawText()));
            Assert.Equal(
                0, browser.Evaluate(
                    "[...document.querySelectorAll('section')].filter(s => s.innerText.trim().split('\\n').length < 2).length").GetInt32());
            Assert.InRange(
                browser.Evaluate(
                    "Math.min(...[...document.querySelectorAll('p, li, td, th, span, figcaption')].filter(e => e.offsetWidth > 0)"
                    + ".map(e => parseFloat(getComputedStyle(e).fontSize)))").GetDouble(), 14, 20);

            // Tables scroll inside themselves; the page does not.
            Assert.InRange(browser.Evaluate("document.documentElement.scrollWidth").GetInt32(), 1, width);
        }

        Assert.All(browser.Requests, request => Assert.Equal(new Uri(run.Page).AbsoluteUri, request));
        Assert.Equal(2, browser.Requests.Count);
        Assert.Empty(browser.Errors);
    }

    [Theory]
    [InlineData(8.27, 11.69)]
    [InlineData(8.5, 11)]
    public void It_prints_on_a_sensible_number_of_pages(double width, double height)
    {
        using var browser = Browser();
        browser.Open(run.Page, 1200, 900);
        Assert.InRange(PdfPages.Sizes(browser.Pdf(width, height)).Count, 5, 11);
    }

    [Fact]
    public void Its_numbers_are_those_of_the_file()
    {
        using var browser = Browser();
        browser.Open(run.Page, 1200, 900);
        var target = run.Json.GetProperty("target_sugar");
        Assert.Contains(
            Day(target.GetProperty("p50")), browser.Evaluate("document.querySelector('h1').innerText").GetString()!);

        // Stages: the day of half, and the chance.
        var stages = Cells(browser, "Stages");
        foreach (var (row, name) in ((int, string)[])[(0, "bloom"), (1, "veraison"), (2, "target_sugar")])
        {
            var stage = run.Json.GetProperty(name);
            Assert.Equal(Day(stage.GetProperty("p50")), stages[row][1]);
            Assert.EndsWith(Day(stage.GetProperty("p90"))[..^5], stages[row][2]);
            Assert.Equal(Percent(stage.GetProperty("chance").GetDouble()), stages[row][3]);
        }

        var weeks = run.Json.GetProperty("target_sugar_by").EnumerateArray().ToList();
        Assert.NotEmpty(weeks);
        Assert.Equal(
            weeks.Select(week => Percent(week.GetProperty("chance").GetDouble())),
            Cells(browser, "Chance of the target by date").Select(row => row[1]));

        var ages = run.Json.GetProperty("ripening_carbon_by_leaf_age").EnumerateArray().ToList();
        Assert.NotEmpty(ages);
        Assert.Equal(
            ages.Select(age => Percent(age.GetProperty("share").GetDouble())),
            Cells(browser, "Carbon of the ripening weeks by age of leaf").Select(row => row[1]));

        var options = run.Json.GetProperty("options").EnumerateArray().ToList();
        Assert.Equal(options.Count, Cells(browser, "Options").Count);
        Assert.Equal(
            run.Json.GetProperty("notes").EnumerateArray().Count(note => note.GetProperty("used").GetString() == "yes"),
            Cells(browser, "Notes that moved the vines").Count);
    }

    // The same days and heights as the file, which has six digits of each.
    [Fact]
    public void Its_fans_are_those_of_the_file()
    {
        foreach (var (name, fan) in ((string, IReadOnlyList<Fitting.FanDay>)[])
        [
            ("shoot_length_cm", run.Content.ShootLengthCm), ("leaf_area_m2_per_vine", run.Content.LeafAreaM2PerVine),
            ("sugar_brix", run.Content.SugarBrix),
        ])
        {
            var days = run.Json.GetProperty(name).EnumerateArray().ToList();
            Assert.NotEmpty(days);
            Assert.Equal(days.Count, fan.Count);
            foreach (var (day, drawn) in days.Zip(fan))
            {
                Assert.Equal(day.GetProperty("date").GetString(), drawn.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                foreach (var (key, value) in ((string, double)[])
                    [("p10", drawn.P10), ("p25", drawn.P25), ("p50", drawn.P50), ("p75", drawn.P75), ("p90", drawn.P90)])
                    Assert.Equal(day.GetProperty(key).GetDouble(), value, 1e-5 * Math.Max(1, Math.Abs(value)));
            }
        }
    }

    private static List<string[]> Cells(HeadlessBrowser browser, string table) =>
    [
        .. browser.Evaluate(
                $"[...document.querySelectorAll('[aria-label=\"{table}\"] tbody tr')].map(r => [...r.children].map(c => c.innerText))")
            .EnumerateArray().Select(row => row.EnumerateArray().Select(cell => cell.GetString()!).ToArray()),
    ];

    private static string Day(JsonElement day) => DateOnly.Parse(day.GetString()!, CultureInfo.InvariantCulture)
        .ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Percent(double share) =>
        $"{Math.Round(100 * share, MidpointRounding.AwayFromZero) + 0.0:0} %".Replace("-0 %", "0 %").Replace('-', '−');

    private static HeadlessBrowser Browser()
    {
        Assert.SkipWhen(HeadlessBrowser.Program is null, "needs the Debian package chromium");
        return new HeadlessBrowser();
    }
}
