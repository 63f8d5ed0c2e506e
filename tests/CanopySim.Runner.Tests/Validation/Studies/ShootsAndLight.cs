using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What more shoots a meter do to leaf layers, gaps, light on the fruit and yield.</summary>
internal sealed class ShootsAndLight : Study
{
    private const string Smart = "Smart 1988, Am J Enol Vitic 39:325-333 (5 to 74 shoots a meter)";
    private const string Handbook = "Smart & Robinson 1991, from memory";

    // Four readings at once: three standard errors each.
    private static readonly Limit SamplingErrors = new WithinRange(-3, 3);

    private static readonly Limit Most = WithinRange.AtLeast(0.5);
    private static readonly Limit NoGaps = WithinRange.AtMost(0.05);
    private static readonly Limit HandbookGaps = new WithinRange(0.2, 0.4);
    private const double FewestLayers = 1;
    private const double MostLayers = 1.5;

    // The source says that light is low where shoots are many; that it is at most half is assumed.
    private static readonly Limit Half = WithinRange.AtMost(0.5);

    // 16 % more, a half of that on each side; shoots alone would give 50 %.
    private static readonly Limit YieldGain = new WithinRange(1.08, 1.24);

    private static readonly SeasonCase Twelve = SeasonCatalogue.WithShoots(12);
    private static readonly SeasonCase Eighteen = SeasonCatalogue.WithShoots(18);

    // As much old wood, and so as much of reserves, for each shoot as at 14 shoots a meter: about 5 kg a vine there.
    private static readonly SeasonCase DenseAndLong = SeasonCatalogue.WithShoots(
        40, scenario => scenario with { Carbon = scenario.Carbon with { PerennialMass = 14 } });

    public override string Title => "Shoots and light";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather with 10, 15, 25 and 40 shoots a meter, and with "
        + "12 and 18 for the yield, nothing thinned or pulled. Leaf layers and gaps by 200 rods through the fruit "
        + "zone at veraison, ± their standard error; light on the clusters per area of their whole surface from "
        + "veraison to 1 October, as a share of what falls on the ground's plane above the canopy. Since many shoots "
        + "on one vine stay short here, the dense canopy is grown a second time on a vine with old wood and reserves "
        + "for 40 shoots a meter (14 kg); that one was added after the others were seen and is only told.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. SeasonCatalogue.Densities, Twelve, Eighteen, DenseAndLong];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var densities = seasons.Of(SeasonCatalogue.Densities);
        var (open, dense) = (densities[0], densities[^1]);
        double?[] Each(Func<SeasonResult, double?> figure) => [.. densities.Select(figure)];
        double?[] layers = Each(season => season.Sheet("leaf_layers")?.Value);
        double?[] gaps = Each(season => season.Sheet("gaps")?.Value);
        double?[] light = Each(season => season.Summary.FruitLight?.ShareOfIncident);
        var vigorous = seasons.Of(DenseAndLong);
        var asInHandbook = gaps.Where((_, i) => layers[i] is >= FewestLayers and <= MostLayers).ToArray();
        return new StudyResult(
            Finding.Judged(
                "leaf layers, 10 / 15 / 25 / 40 shoots a meter [1]", Standing.Predicted,
                new Rising("rises with shoots"), Smart, layers),
            Finding.Judged(
                "gaps, 40 / 25 / 15 / 10 shoots a meter [share]", Standing.Predicted,
                new Rising("falls with shoots"), Smart, Reversed(gaps)),
            Finding.Judged(
                "leaves / clusters at the outside, 10 shoots a meter [share]", Standing.Predicted, Most, Smart,
                open.Sheet("exterior_leaves")?.Value, open.Sheet("exterior_clusters")?.Value) with
            {
                Published = "most well exposed under 10",
            },
            Finding.Judged(
                "leaves / clusters inside, 40 shoots a meter [share]", Standing.Predicted, Most, Smart,
                dense.Sheet("interior_leaves")?.Value, dense.Sheet("interior_clusters")?.Value) with
            {
                Published = "the majority over 30",
            },
            Finding.Judged("gaps, 40 shoots a meter [share]", Standing.Predicted, NoGaps, Smart, gaps[^1]) with
            {
                Published = "none over 30",
            },
            Finding.Judged(
                "gaps less exp(−leaf layers), 10 / 15 / 25 / 40 shoots a meter [standard errors]", Standing.Predicted,
                    SamplingErrors,
                "derived: leaves at random places", Each(FromRandom)) with
            {
                Published = "0",
                Note = "clusters close gaps too but are no leaf layers",
            },
            Finding.Judged(
                "gaps where there are 1.0 to 1.5 leaf layers [share]", Standing.Predicted, HandbookGaps, Handbook,
                asInHandbook.Length > 0 ? asInHandbook : [null]),
            Finding.Judged(
                "light on the clusters, 40 / 25 / 15 / 10 shoots a meter [share]", Standing.Predicted,
                    new Rising("falls with shoots"), Smart,
                Reversed(light)),
            Finding.Judged(
                "light on the clusters, 40 over 10 shoots a meter [1]", Standing.Predicted, Half, $"{Smart}; the "
                    + "half is assumed",
                light[^1] / light[0]) with
            {
                Published = "low",
                Note = $"shoots are {Say(Length(dense))} cm long against {Say(Length(open))}: as much leaf a meter "
                    + "in a lower wall, fruit at its foot",
            },
            Finding.Told(
                "the same, 40 on a vine with old wood for them [1]", "low", Smart,
                    vigorous.Summary.FruitLight?.ShareOfIncident / light[0]) with
            {
                Note = $"shoots {Say(Length(vigorous))} cm, leaf layers "
                    + $"{Say(vigorous.Sheet("leaf_layers")?.Value)}, clusters inside "
                    + $"{Say(vigorous.Sheet("interior_clusters")?.Value)}",
            },
            Finding.Judged(
                "yield, 18 over 12 shoots a meter [1]", Standing.Predicted, YieldGain, "de la Fuente et al., GiESCO",
                seasons.Of(Eighteen).Summary.Harvest?.YieldTPerHa / seasons.Of(Twelve).Summary.Harvest?.YieldTPerHa) with
            {
                Published = "1.16",
                Note = "the shoots alone would give 1.5",
            })
        {
            Tables =
            [
                new ToldTable(
                    "By shoots a meter of canopy",
                    ["shoots a meter", "shoot length [cm]", "leaf area [m²/m]", "leaf layers", "gaps",
                        "exp(−leaf layers)", "light on clusters [share]", "yield [t/ha]"],
                    [.. densities.Select((season, i) => (IReadOnlyList<string>)
                    [
                        NumberSay.Typed(SeasonCatalogue.ShootsPerMeter[i]), Say(Length(season)),
                            Say(season.Summary.Canopy?.LeafAreaM2PerM),
                        $"{Say(layers[i])} ± {Say(season.Sheet("leaf_layers")?.SamplingError)}",
                        $"{Say(gaps[i])} ± {Say(season.Sheet("gaps")?.SamplingError)}",
                        Say(layers[i] is { } met ? Math.Exp(-met) : null),
                        Say(light[i]), Say(season.Summary.Harvest?.YieldTPerHa),
                    ])]),
            ],
        };
    }

    // The errors of both readings together, as if apart: gaps are fewer where layers are more, which makes the true
    // one smaller.
    private static double? FromRandom(SeasonResult season)
    {
        if (season.Sheet("leaf_layers") is not { Value: { } layers, SamplingError: { } errorOfLayers }
            || season.Sheet("gaps") is not { Value: { } gaps, SamplingError: { } errorOfGaps }) return null;
        var random = Math.Exp(-layers);
        return (gaps - random) / Math.Sqrt((errorOfGaps * errorOfGaps) + Math.Pow(random * errorOfLayers, 2));
    }

    private static double? Length(SeasonResult season) => season.Summary.Canopy?.ShootLengthCm;

    private static double?[] Reversed(double?[] values) => [.. values.Reverse()];

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "not reached";
}
