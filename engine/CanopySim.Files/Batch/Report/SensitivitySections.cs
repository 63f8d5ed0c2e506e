using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Sampling;

namespace CanopySim.Files.Batch.Report;

/// <summary>The sections on what decides: a chart of the ripening date and of the sugar, tables of all.</summary>
internal static class SensitivitySections
{
    private const int MostPictured = 2;

    private static readonly IReadOnlyList<Outcome> Asked = [Outcome.Ripeness, .. Outcome.Amounts];

    public static void Write(HtmlText html, BatchReport report, IReadOnlyList<Ensemble> ensembles)
    {
        if (!Sensitivity.IsToldBy(report.Plan.Design)) return;
        foreach (var ensemble in ensembles)
        {
            html.Markup("<section>").Element("h2", ensembles.Count > 1 ? $"What decides, {ensemble.Scenario}" : "What decides");
            html.Element("p", How(report), "quiet");
            List<Sensitivity> all = [.. Asked.Select(outcome => Sensitivity.Of(ensemble, outcome, report.Plan, report.Items))];
            foreach (var one in all.Where(one => one.IsKnown).Take(MostPictured)) PageParts.Figure(html, BatchCharts.Influences(ensemble, one).Picture());
            foreach (var one in all) Section(html, one);
            html.Markup("</section>");
        }
    }

    private static string How(BatchReport report)
    {
        var means = report.Items.SeasonsOfPoint > 1
            ? $" At each point of the design the mean of {report.Items.SeasonsOfPoint} seasons (weather, listed values, replicates) is taken; what these differ by is not in it."
            : "";
        return (report.Plan.Design!.Kind == DesignKind.Morris
            ? "Elementary effects (Morris 1991; mu* Campolongo et al. 2007), in the unit of the quantity through a key's whole distribution: "
              + "mu is the mean effect, mu* the mean of its size, sigma its standard deviation, which is large where an effect depends on other keys or bends. "
            : "Shares of the quantity's variance (Sobol; estimators of Saltelli et al. 2010 and Jansen 1999): first order is what a key explains alone, total order with all that it does "
              + "together with other keys. An estimate of a small share may lie below 0. ")
            + "In brackets 95 % intervals, from rows drawn again with replacement; they are of the sample, not of the model's truth." + means;
    }

    private static void Section(HtmlText html, Sensitivity one)
    {
        html.Element("h3", one.Outcome.Name);
        var (used, dropped) = one.Rows;
        var what = one.Morris is null ? "base points" : "paths";
        var rows = $"{used} {what} counted, {dropped} dropped because a season of them failed or does not have this quantity.";
        if (!one.IsKnown)
        {
            html.Element("p", $"Nothing can be told: {(used < 2 ? "too few rows are whole" : "it is the same in all seasons")}. {rows}");
            return;
        }

        html.Element("p", rows, "quiet");
        if (one.Morris is { } effects)
        {
            html.Table(
                one.Outcome.Name, ["Key", "mu*", "mu", "sigma"],
                one.Ranked.Select(key => (IReadOnlyList<string>)
                [
                    one.Keys[key], Text(effects.Factors[key].MuStar, one), Text(effects.Factors[key].Mu, one), Text(effects.Factors[key].Sigma, one),
                ]),
                "numbers");
            return;
        }

        html.Table(
            one.Outcome.Name, ["Key", "Total order", "First order"],
            one.Ranked.Select(key => (IReadOnlyList<string>)
            [
                one.Keys[key], Share(one.Sobol!.Factors[key].Total), Share(one.Sobol.Factors[key].FirstOrder),
            ]),
            "numbers");
    }

    internal static string Share(Estimate estimate) => Text(estimate, 2);

    // A decimal more than the quantity itself is shown with: effects are smaller.
    internal static string Text(Estimate estimate, Sensitivity one) => Text(estimate, one.Outcome.Decimals + 1);

    private static string Text(Estimate estimate, int decimals) =>
        $"{Measure.Number(estimate.Value, decimals)} ({Measure.Number(estimate.Low, decimals)} to {Measure.Number(estimate.High, decimals)})";
}
