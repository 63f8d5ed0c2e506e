using CanopySim.Files.Report;

namespace CanopySim.Files.Forecast;

/// <summary>Sections of the page on the vine as it stands: growing tip, sprays, temperature index.</summary>
internal static class StandingSections
{
    public static void Tips(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "Growing tip");
        foreach (var paragraph in TipWords.Paragraphs(content.Tips, content.Vine.Season.Tips.LastOrDefault(), content.Units).Reverse())
            html.Element("p", paragraph);
        charts.Figure(html, StandingCharts.Tips, isAside: true);
        if (content.Tips.Count > 0)
        {
            html.Table(
                "Growing tip, noted beside simulated",
                [ForecastSentences.Day(content.Tips[^1].Seen.Date), "Noted", "The model, that evening"],
                TipWords.Rows(content.Tips[^1], content.Units), "says");
        }

        html.Element("p", TipWords.Basis, "quiet");
    }

    public static void Sprays(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        var vine = content.Vine;
        html.Element("h2", "Leaf that sprays have not reached").Element("p", SprayWords.Opening(vine, content.Units));
        var cautions = SprayWords.Cautions(vine, content.Units);
        if (cautions.Count > 0) html.Element("h3", "Heed").List(cautions);
        charts.Figure(html, StandingCharts.Sprays, isAside: true);
        var rows = SprayWords.Rows(vine, content.Units).ToList();
        if (rows.Count > 0) html.Table("Leaf not covered, by spray and zone", SprayWords.Heads, rows, "says");
        html.Element("p", SprayWords.Limits, "quiet");
    }

    public static void Mildew(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        var days = MildewWords.Days(content.Vine);
        html.Element("h2", "Powdery mildew")
            .Element("p", MildewWords.State(days))
            .Element("p", MildewWords.Interval(content.Vine, days));
        charts.Figure(html, StandingCharts.Mildew, isAside: true);
        if (days.Count > 0) html.Table(MildewWords.Title, MildewWords.Heads(content.Units), MildewWords.Rows(days), "numbers");
        html.Element("p", MildewWords.Rules(content.Units), "quiet").Element("p", MildewWords.Limits(content.Vine.Weather), "quiet");
    }
}
