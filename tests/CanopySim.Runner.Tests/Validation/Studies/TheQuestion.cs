namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>The question of the project: which leaves feed the fruit, and what the age curve and the grower's work have to do with it.</summary>
internal sealed class TheQuestion : Study
{
    private const string Ours = "an earlier study of ours, not published";

    private const string OwnCurve = "efficiency of leaf age, Poni et al. 1994, Am J Enol Vitic 45:71-78";

    private const int Oldest = 1000;

    // Leaves past their best, by the middle of a class of 20 days.
    private static readonly int[] Mature = [50, 70, 90, 110, 130];

    // Classes of 20 days about these ages.
    private static readonly int[] Ages = [20, 40, 60, 80, 100, 120, 140];
    private const int HalfClass = 10;

    private static readonly (string Name, SeasonCase Season)[] Vines =
    [
        ("hedge that stopped", SeasonCatalogue.Hedges[0]),
        ("vine topped at 12 nodes", SeasonCatalogue.ToppedWithLaterals),
        ("vine topped at 12 nodes without laterals", SeasonCatalogue.ToppedWithoutLaterals),
        ("vine that never stops", SeasonCatalogue.NeverStops),
        ("dry vine", SeasonCatalogue.Dry),
    ];

    public override string Title => "Which leaves feed the fruit";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather, from veraison to 22 Brix (or to the end where that is not reached). On one canopy, as it "
        + "stands on 15 August and 5 September, with the curve of leaf age and with a flat one (1 from 20 d on): share of the leaves' net carbon over share of leaf "
        + "area, by age; the table after it takes whole seasons, grown with either curve. Then "
        + "the ages of the feeding leaves of five vines: the hedge; topped at 12 nodes ten days after bloom with laterals and without; free water "
        + "and vigor as in the study of shoots that do not stop; and the dry vine of the same.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. Vines.Select(vine => vine.Season), SeasonCatalogue.FlatCurve];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var real = new RipeningLeaves(seasons.Of(SeasonCatalogue.Hedges[0]));
        var flat = new RipeningLeaves(seasons.Of(SeasonCatalogue.FlatCurve));
        var vines = Vines.Select(vine => (vine.Name, Leaves: new RipeningLeaves(seasons.Of(vine.Season)))).ToList();
        var canopies = new RipeningCanopies(seasons, SeasonCatalogue.WholeYear);
        var flatPoints = seasons.Prepared(SeasonCatalogue.FlatCurve).Scenario.LeafAge;
        var (own, even) = (canopies.CarbonOverArea(seasons.Prepared(SeasonCatalogue.WholeYear).Scenario.LeafAge, Mature), canopies.CarbonOverArea(flatPoints, Mature));
        return new StudyResult(
            Finding.Judged(
                "carbon share over area share on one canopy, 130 / 50 d [1]", Standing.Predicted, new Rising("falls with age"), OwnCurve, own[^1], own[0]),
            Finding.Judged(
                "50 d over 130 d, flat curve / curve [1]", Standing.Predicted, new Rising("flatter with a flat curve"), OwnCurve,
                even[0] / even[^1], own[0] / own[^1]),
            Finding.Told("carbon share over area share on one canopy, 50 / 70 / 90 / 110 / 130 d, curve [1]", "falls with age", OwnCurve, [.. own]) with
            {
                Note = "where it rises with age, the flat curve tells why: those leaves hang in better light",
            },
            Finding.Told("the same, flat curve [1]", "flatter", OwnCurve, [.. even]),
            Finding.Told("carbon share over area share at 40 / 140 d, curve [1]", "1.61 / 0.47", Ours, At(real, 40), At(real, 140)),
            Finding.Told("the same, flat curve [1]", "1.25 / 0.79", Ours, At(flat, 40), At(flat, 140)))
        {
            Tables =
            [
                new ToldTable(
                    "Share of net carbon over share of leaf area, classes of 20 days",
                    ["age [d]", "curve", "flat curve", "curve over flat"],
                    [.. Ages.Select(age => (IReadOnlyList<string>)[$"{age}", Say(At(real, age)), Say(At(flat, age)), Say(At(real, age) / At(flat, age))])]),
                new ToldTable(
                    "Leaves that fed the fruit, by the net carbon of the ripening weeks",
                    ["vine", "mean age [d]", "share under 60 d", "60 to 80", "80 to 100", "100 to 120", "over 120"],
                    [.. vines.Select(vine => (IReadOnlyList<string>)
                    [
                        vine.Name, Say(vine.Leaves.MeanAge), Say(vine.Leaves.CarbonShare(0, 60)), Say(vine.Leaves.CarbonShare(60, 80)),
                        Say(vine.Leaves.CarbonShare(80, 100)), Say(vine.Leaves.CarbonShare(100, 120)), Say(vine.Leaves.CarbonShare(120, Oldest)),
                    ])]),
            ],
            Sentences = [Answer(vines), Curve(real, flat)],
        };
    }

    private static double? At(RipeningLeaves leaves, int age) => leaves.CarbonOverArea(age - HalfClass, age + HalfClass);

    /// <summary>Composed from the numbers, so that it cannot contradict the table.</summary>
    private static string Answer(IReadOnlyList<(string Name, RipeningLeaves Leaves)> vines)
    {
        var ripened = vines.Where(vine => vine.Leaves.MeanAge is not null).OrderBy(vine => vine.Leaves.MeanAge).ToList();
        if (ripened.Count < 2) return "Too few of these vines came to veraison to be compared.";
        var (youngest, oldest) = (ripened[0], ripened[^1]);
        var prime = ripened.Where(vine => vine.Leaves.CarbonShare(0, 60) > 0.5).Select(vine => vine.Name).ToList();
        var fed = prime.Count switch
        {
            0 => "On none of these vines did leaves under 60 days give more than half of the carbon that ripened the fruit",
            _ when prime.Count == ripened.Count => "On all of these vines leaves under 60 days gave more than half of the carbon that ripened the fruit",
            _ => $"Leaves under 60 days gave more than half of the carbon that ripened the fruit only here: {string.Join(", ", prime)}",
        };
        return $"The fruit of the {youngest.Name} was fed by the youngest leaves, that of the {oldest.Name} by the oldest. {fed}.";
    }

    private static string Curve(RipeningLeaves real, RipeningLeaves flat)
    {
        var (youngReal, oldReal, youngFlat, oldFlat) = (At(real, 40), At(real, 140), At(flat, 40), At(flat, 140));
        return $"Over whole ripening seasons, each with its own growth, leaves of 40 days gave {Say(youngReal)} of their share of area and leaves of 140 days "
            + $"{Say(oldReal)}; where leaves never age, {Say(youngFlat)} and {Say(oldFlat)}. Leaves of about {Ages.MaxBy(age => At(real, age) ?? 0)} days gave most.";
    }

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "none";
}
