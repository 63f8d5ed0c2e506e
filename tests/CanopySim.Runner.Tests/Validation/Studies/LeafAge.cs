using CanopySim.Growth;
using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Efficiency of a leaf by its age: the curve as typed in, and what a grown canopy makes of it.</summary>
internal sealed class LeafAge : Study
{
    private const string Poni = "Poni et al. 1994, Am J Enol Vitic 45:71-78, Sangiovese in the field";
    private const string Kriedemann = "Kriedemann, Kliewer & Harris 1970, Vitis 9:97-104, pots outdoors";

    // 45 %, half a unit of its last digit on each side.
    private static readonly Limit AtFourMonths = new WithinRange(0.445, 0.455);

    private const int ClassWidth = 20;

    public override string Title => "Leaf age";

    public override string Done =>
        "The curve of efficiency by age against the points measured. Then the block of `warm-valley` in its first generated weather, July to "
        + "September: net assimilation over absorbed PAR by class of age, against the best class; it holds light and season besides age.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.WholeYear];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var season = seasons.Of(SeasonCatalogue.WholeYear);
        var curve = season.AgeCurve;
        var best = curve.Points.Max(point => point.Efficiency);
        return new StudyResult(
            Finding.Judged(
                "efficiency at 30 / 35 d over the best [1]", Standing.Arithmetic, WithinRange.AtLeast(1), Poni, curve.At(30) / best, curve.At(35) / best) with
            {
                Published = "best at 30 to 35 d",
            },
            Finding.Judged("efficiency at 40 d over the best [1]", Standing.Arithmetic, WithinRange.AtLeast(1), Kriedemann, curve.At(40) / best) with
            {
                Published = "best at about 40 d",
            },
            Finding.Judged("age from which it is below 0.95 of the best [d]", Standing.Arithmetic, new WithinRange(50, 60), Poni, DeclineFrom(curve, best)) with
            {
                Published = "decline begins at about 50",
            },
            Finding.Judged(
                "efficiency at 120 d over the best [1]", Standing.Arithmetic, AtFourMonths, Poni, curve.At(120) / best) with
            {
                Published = "0.45",
            })
        {
            Tables = [ByAge(season)],
        };
    }

    private static double DeclineFrom(LeafAgeCurve curve, double best)
    {
        var age = curve.Points.Last(point => point.Efficiency == best).Age;
        while (curve.At(age) >= 0.95 * best && age < curve.Points[^1].Age) age++;
        return age;
    }

    private static ToldTable ByAge(SeasonResult season)
    {
        var classes = season.LeafAges.Where(row => row.Date.Month is 7 or 8 or 9)
            .GroupBy(row => row.AgeFromD / ClassWidth)
            .OrderBy(group => group.Key)
            .Select(group => (
                From: group.Key * ClassWidth,
                PerPar: group.Sum(row => row.NetAssimilationGCo2PerVine) / group.Sum(row => row.AbsorbedParMolPerVine),
                Efficiency: group.Sum(row => row.LeafAreaM2PerVine * row.MeanEfficiency) / group.Sum(row => row.LeafAreaM2PerVine)))
            .ToList();
        var best = classes.Max(row => row.PerPar);
        return new ToldTable(
            "Net assimilation over absorbed PAR, July to September, reported",
            ["age [d]", "over the best class", "mean efficiency of the class"],
            [.. classes.Select(row => (IReadOnlyList<string>)
                [$"{row.From} to {row.From + ClassWidth}", NumberSay.Number(row.PerPar / best), NumberSay.Number(row.Efficiency)])]);
    }
}
