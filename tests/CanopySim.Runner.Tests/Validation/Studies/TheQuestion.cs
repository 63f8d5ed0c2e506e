namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>The question of the project: which leaves feed the fruit, and what the age curve and the grower's work have to do with it.</summary>
internal sealed class TheQuestion : Study
{
    private const string Ours = "an earlier study of ours, not published";

    private const string OwnCurve = "efficiency of leaf age, Poni et al. 1994, Am J Enol Vitic 45:71-78";

    private const int Oldest = 1000;

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
        "The block of `warm-valley` in its first generated weather, from veraison to 22 Brix (or to the end where that is not reached). The same "
        + "vine with the curve of leaf age and with a flat one (1 from 20 d on): share of the leaves' net carbon over share of leaf area, by age. Then "
        + "the ages of the feeding leaves of five vines: the hedge; topped at 12 nodes ten days after bloom with laterals and without; free water "
        + "and vigor as in the study of shoots that do not stop; and the dry vine of the same.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. Vines.Select(vine => vine.Season), SeasonCatalogue.FlatCurve];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var real = new RipeningLeaves(seasons.Of(SeasonCatalogue.Hedges[0]));
        var flat = new RipeningLeaves(seasons.Of(SeasonCatalogue.FlatCurve));
        var vines = Vines.Select(vine => (vine.Name, Leaves: new RipeningLeaves(seasons.Of(vine.Season)))).ToList();
        int[] mature = [.. Ages.Where(age => age >= 40)];
        return new StudyResult(
            Finding.Judged(
                "carbon share over area share, curve over flat, 140 to 40 d by 20 d [1]", Standing.Predicted, new Rising("falls with age"), OwnCurve,
                [.. mature.Reverse().Select(age => At(real, age) / At(flat, age))]),
            Finding.Judged(
                "spread of it between 40 and 140 d, largest over smallest, flat curve / curve [1]", Standing.Predicted, new Rising("flatter with a flat curve"),
                OwnCurve, Spread(mature, flat), Spread(mature, real)),
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

    private static double? Spread(int[] ages, RipeningLeaves leaves) =>
        ages.Max(age => At(leaves, age)) / ages.Min(age => At(leaves, age));

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
        var best = Ages.MaxBy(age => At(real, age));
        var (young, old) = (At(real, 40), At(real, 140));
        if (young is null || old is null) return "";
        return $"On one canopy the same area of leaf gave most at about {best} days, since the youngest leaves stand in the shade of others; from 40 to 140 "
            + $"days it {(old < young ? "fell" : "rose")} from {Say(young)} to {Say(old)} of its share of area. With a flat curve it went from "
            + $"{Say(At(flat, 40))} to {Say(At(flat, 140))}: what is left of the fall then is light and season.";
    }

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "none";
}
