using Xunit;

namespace CanopySim.Runner.Tests.Browser;

/// <summary>The reports as a reader opens them: in a browser, on a desk, on a phone, on paper.</summary>
[Collection(nameof(ComparedOnce))]
public sealed class ReportInBrowserTests(CompareRuns runs)
{
    private const int Phone = 390;

    private const string Pictures =
        "[...document.images].filter(p => p.alt == 'gone' || p.offsetWidth > 0)"
        + ".map(p => ({there: p.complete && p.naturalWidth > 0, words: p.alt}))";

    // Headings with nothing under them, and text that is too small to read.
    private const string Empty =
        "[...document.querySelectorAll('section')].filter(s => s.innerText.trim().split('\\n').length < 2).length";

    private const string Smallest =
        "Math.min(...[...document.querySelectorAll('p, li, td, th, span, figcaption')].filter(e => e.offsetWidth > 0)"
        + ".map(e => parseFloat(getComputedStyle(e).fontSize)))";

    [Theory]
    [InlineData("report.html", 13, 2, 14)]
    [InlineData("first-season-curtain/report.html", 15, 1, 0)]
    public void It_opens_whole_and_asks_nobody_for_anything(string name, int pictures, int inPerspective, int sections)
    {
        using var browser = Browser();
        var page = Path.Combine(runs.Compared, name);
        foreach (var width in (int[])[1200, Phone])
        {
            browser.Open(page, width, 900);
            var shown = browser.Evaluate(Pictures).EnumerateArray().ToList();
            Assert.Equal(pictures + PictureMachine.Count(inPerspective), shown.Count);
            Assert.All(shown, picture => Assert.True(picture.GetProperty("there").GetBoolean(), picture.GetRawText()));
            Assert.All(shown, picture =>
                Assert.True(picture.GetProperty("words").GetString()!.Length > 20, picture.GetRawText()));
            if (sections > 0)
                Assert.Equal(sections, browser.Evaluate("document.querySelectorAll('section').length").GetInt32());
            Assert.Equal(0, browser.Evaluate(Empty).GetInt32());
            Assert.InRange(browser.Evaluate(Smallest).GetDouble(), 14, 20);
            // A page wider than the window would have to be pushed to and fro; tables scroll inside themselves.
            Assert.InRange(browser.Evaluate("document.documentElement.scrollWidth").GetInt32(), 1, width);
        }

        Assert.All(browser.Requests, request => Assert.Equal(new Uri(page).AbsoluteUri, request));
        Assert.Equal(2, browser.Requests.Count);
        Assert.Empty(browser.Errors);
    }

    [Theory]
    [InlineData(8.27, 11.69)]
    [InlineData(8.5, 11)]
    public void It_prints_on_a_sensible_number_of_pages_of_either_paper(double width, double height)
    {
        using var browser = Browser();
        browser.Open(runs.Report, 1200, 900);
        var pages = PdfPages.Sizes(browser.Pdf(width, height));
        Assert.InRange(pages.Count, 6, 14);
        Assert.All(pages, page => Assert.Equal(72 * width, page.Width, 1.0));
        Assert.All(pages, page => Assert.Equal(72 * height, page.Height, 1.0));
    }

    // What the tests above would not see could not fail them.
    [Fact]
    public void Faults_of_a_page_are_seen()
    {
        using var browser = Browser();
        using var folder = new TemporaryFolder();
        var page = folder.Write(
            "page.html",
            "<!DOCTYPE html><section><h2>Nothing</h2></section><p style='font-size:9px'>small</p>"
            + "<img alt='gone' src='http://127.0.0.1:9/gone.png'><div style='width:900px'>wide</div>"
            + "<script>console.error('mine')</script>");
        browser.Open(page, Phone, 900);
        Assert.Contains("http://127.0.0.1:9/gone.png", browser.Requests);
        Assert.Contains(browser.Errors, error => error.Contains("mine"));
        Assert.False(Assert.Single(browser.Evaluate(Pictures).EnumerateArray()).GetProperty("there").GetBoolean());
        Assert.True(browser.Evaluate("document.documentElement.scrollWidth").GetInt32() > Phone);
        Assert.Equal(1, browser.Evaluate(Empty).GetInt32());
        Assert.Equal(9, browser.Evaluate(Smallest).GetDouble());
    }

    private static HeadlessBrowser Browser()
    {
        Assert.SkipWhen(HeadlessBrowser.Program is null, "needs the Debian package chromium");
        return new HeadlessBrowser();
    }
}

/// <summary>Tests that read one comparison.</summary>
[CollectionDefinition(nameof(ComparedOnce))]
public sealed class ComparedOnce : ICollectionFixture<CompareRuns>;
