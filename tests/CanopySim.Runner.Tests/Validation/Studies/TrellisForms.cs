using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>
/// Two divided trellises of the table that the upright hedge was fitted to, and every other form for one season.
/// </summary>
internal sealed class TrellisForms : Study
{
    private const string Print = "Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181, table 3";

    private const string Porosities = "de la Fuente et al., GiESCO: sprawl 25 to 50 % more porous";

    // An earlier study of ours carried the same shoot to these trellises mostly within this [%].
    private const double Percent = 20;

    // 25 to 50 % more porous is published; two readings of 200 rods leave a standard error of some 15 % on their ratio.
    private static readonly Limit Porosity = new WithinRange(1.1, 1.7);

    private const int Weathers = 3;

    private static readonly Trial TwinCurtain = new(
        "twin-curtain", "twin curtain", "divided curtain", [120, 23.8, 2120, 900, 13.2, 3.52, 15.9, 1.99])
    {
        // They were seen to be too heavy before stems led down were made thinner, by another column of the same table.
        Watched = FittedQuantities.Prunings,
    };

    private static readonly Trial SlantedV = new(
        "slanted-v", "slanted V", "V-shaped trellis", [136, 25.2, 2380, 950, 15.8, 4.51, 18.6, 2.51]);

    // Without the form's geometry a shoot is the hedge's: a vine has it so many times, a meter of canopy too.
    private static readonly Figure[] Figures =
    [
        new("shoot length", "cm", By.Shoot, season => season.Summary.Canopy?.ShootLengthCm),
        new("nodes a shoot", "1", By.Shoot, season => season.Summary.Canopy?.NodesPerShoot),
        new("primary leaf area a shoot", "cm²", By.Shoot, season => season.Summary.Canopy?.PrimaryLeafAreaPerShootCm2),
        new("lateral leaf area a shoot", "cm²", By.Shoot, season => season.Summary.Canopy?.LateralLeafAreaPerShootCm2),
        new("leaf area a vine", "m²", By.Vine, season => season.Summary.Canopy?.LeafAreaM2PerVine),
        new("leaf area a meter of canopy", "m²", By.Meter, season => season.Summary.Canopy?.LeafAreaM2PerM),
        new("yield", "t/ha", By.Vine, season => season.Summary.Harvest?.YieldTPerHa),
        new("prunings a vine", "kg", By.Vine, season => season.Summary.Harvest?.PruningsKgPerVine),
    ];

    private static readonly IReadOnlyList<SeasonCase> Twins = [.. OfBlock(TwinCurtain.Block, 46, Weathers)];
    private static readonly IReadOnlyList<SeasonCase> Slants = [.. OfBlock(SlantedV.Block, 51, Weathers)];
    private static readonly SeasonCase HighWire = OfBlock("high-wire", 27, 1).Single();

    private static readonly SeasonCase NeverLed = SeasonCatalogue.Valley(
        "hedge, shoots never led", scenario => scenario with
        {
            CanopyWork = scenario.CanopyWork with { ShootsLed = ShootLeading.Never },
        }, (8, 10), work: 27 * 5);

    private static readonly IReadOnlyList<(string Name, SeasonCase Season)> Forms =
    [
        ("upright hedge", SeasonCatalogue.Hedges[0]), ("high wire", HighWire),
        ("hanging curtain", OfBlock("hanging-curtain", 27, 1).Single()), ("twin curtain", Twins[0]),
        ("open U", OfBlock("open-u", 48, 1).Single()), ("slanted V", Slants[0]),
        ("up and down", OfBlock("up-and-down", 36, 1).Single()), ("overhead", OfBlock("overhead", 27, 1).Single()),
        ("bush", OfBlock("bush", 14, 1).Single()),
    ];

    private enum By
    {
        Shoot,
        Vine,
        Meter,
    }

    public override string Title => "Trellis forms";

    public override string Done =>
        "`twin-curtain` and `slanted-v`: the block of `warm-valley` with the published shoots a meter of canopy "
        + "(11.8 and 13.2; with vines at 1.95 m 46 and 51 a vine, 45.3 and 49.7 published) in three generated "
        + "weathers. All else is the upright hedge's, its fitted parameters and its rows of 3.0 m too; distances of "
        + "cordons and the tilt of walls are assumed. *Without geometry* is what a shoot of the upright hedge gives "
        + "in the same weathers, so many times: what a form's own light and its share of old wood add is the "
        + "difference. The printed ratio of yield to prunings is not judged, since it does not follow from the "
        + "printed yield and prunings. Canopy at veraison, yield and prunings at 22 Brix or on 1 October. Then all "
        + "forms in the first weather.";

    public override IReadOnlyList<SeasonCase> Seasons =>
        [.. SeasonCatalogue.Hedges.Take(Weathers), .. Twins, .. Slants, .. Forms.Select(form => form.Season), NeverLed];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var hedges = seasons.Of(SeasonCatalogue.Hedges.Take(Weathers));
        var twins = new Comparison(TwinCurtain, seasons.Of(Twins), hedges);
        var slants = new Comparison(SlantedV, seasons.Of(Slants), hedges);
        var (hedge, highWire) = (hedges[0], seasons.Of(HighWire));
        return new StudyResult(
        [
            .. twins.Findings(), .. slants.Findings(),
            Finding.Judged(
                "gaps in the fruit zone, high wire over upright hedge [1]", Standing.Predicted, Porosity,
                Porosities, highWire.Sheet("gaps")?.Value / hedge.Sheet("gaps")?.Value) with
            {
                Published = "1.25 to 1.5",
                Note = "judged with room for the sampling error of both; under a high wire shoots hang back over "
                    + "the fruit, and the hedge's lowest leaves, starved in spring, leave its fruit zone too open",
            },
            Finding.Told(
                "the same, the hedge's own shoots never led over led [1]", "1.25 to 1.5", Porosities,
                seasons.Of(NeverLed).Sheet("gaps")?.Value / hedge.Sheet("gaps")?.Value) with
            {
                Note = "nearer to the published sprawl; added after the high wire's figure was seen",
            },
            Finding.Judged(
                "light absorbed in July, upright hedge / high wire [share]", Standing.Predicted,
                new Rising("more without positioning"),
                "Louarn et al. 2008, from memory: free-standing vines intercept more than shoot-positioned ones",
                July(hedge), July(highWire)),
        ])
        {
            Tables =
            [
                twins.Table(), slants.Table(),
                new ToldTable(
                    "Every form in the first weather, to 22 Brix or 1 October",
                    ["form", "shoots a vine", "leaf area a vine [m²]", "leaf layers", "gaps",
                        "light absorbed in July [share]",
                        "yield [t/ha]", "sugar [Brix]", "ripe"],
                    [.. Forms.Select(form => FormRow(form.Name, seasons.Of(form.Season)))]),
            ],
            Sentences = [twins.Sentence(), slants.Sentence()],
        };
    }

    private static IReadOnlyList<string> FormRow(string name, SeasonResult season) =>
    [
        name, Say(season.Summary.Canopy?.ShootsPerVine), Say(season.Summary.Canopy?.LeafAreaM2PerVine),
        Say(season.Sheet("leaf_layers")?.Value), Say(season.Sheet("gaps")?.Value), Say(July(season)),
        Say(season.Summary.Harvest?.YieldTPerHa),
        Say(season.Days.LastOrDefault(row => row.SugarBrix is not null)?.SugarBrix),
        season.Summary.Dates.TargetSugar is { } ripe ? NumberSay.Day(ripe) : "not by 1 October",
    ];

    private static double July(SeasonResult season) =>
        season.Days.Where(row => row.Date.Month == 7).Average(row => row.FractionParAbsorbed);

    private static IEnumerable<SeasonCase> OfBlock(string block, double shoots, int weathers) =>
        Enumerable.Range(1, weathers).Select(weather => new SeasonCase
        {
            Name = $"{block}, weather {weather}",
            Block = block,
            WeatherSeed = (ulong)weather,
            Until = (10, 1),
            Work = shoots * 8,
        });

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "not reached";

    private sealed record Figure(string Quantity, string Unit, By By, Func<SeasonResult, double?> Of);

    private sealed record Trial(string Block, string Name, string Printed, double[] Published)
    {
        /// <summary>The quantity that was looked at before the model had what it now rests on.</summary>
        public string Watched { get; init; } = "";
    }

    /// <summary>A form beside the published one and beside the hedge's shoot times the form's count.</summary>
    private sealed class Comparison(Trial trial, IReadOnlyList<SeasonResult> seasons,
        IReadOnlyList<SeasonResult> hedges)
    {
        public IEnumerable<Finding> Findings() => Figures.Select((figure, i) => Finding.Judged(
            $"{trial.Name}: {figure.Quantity} [{figure.Unit}]",
            figure.Quantity == trial.Watched ? Standing.Watched : Standing.Predicted,
            new WithinPercent(Percent, trial.Published[i]), $"{Print}, {trial.Printed}", seasons.Mean(figure.Of)) with
        {
            Note = $"without geometry {Say(Without(figure))}",
        });

        public ToldTable Table() => new(
            $"What geometry adds: {trial.Name}",
            ["quantity", "published", "ours", "without geometry", "ours over published", "without over published"],
            [.. Figures.Select((figure, i) => (IReadOnlyList<string>)
            [
                $"{figure.Quantity} [{figure.Unit}]", NumberSay.Typed(trial.Published[i]),
                    Say(seasons.Mean(figure.Of)), Say(Without(figure)),
                Say(seasons.Mean(figure.Of) / trial.Published[i]), Say(Without(figure) / trial.Published[i]),
            ])]);

        public string Sentence()
        {
            var nearer = Figures.Where((figure, i) =>
                Math.Abs(Off(seasons.Mean(figure.Of), i) ?? 1) < Math.Abs(Off(Without(figure), i) ?? 1)).Count();
            return $"Of the {Figures.Length} figures of the {trial.Name} {nearer} come nearer with its geometry "
                + "than without; the mean "
                + $"distance from print is {Say(MeanOff(figure => seasons.Mean(figure.Of)))} % with it and "
                + $"{Say(MeanOff(Without))} % without.";
        }

        private double? Without(Figure figure)
        {
            var ratio = figure.By switch
            {
                By.Vine => seasons.Mean(ShootsPerVine) / hedges.Mean(ShootsPerVine),
                By.Meter => seasons.Mean(ShootsPerM) / hedges.Mean(ShootsPerM),
                _ => 1,
            };
            return hedges.Mean(figure.Of) * ratio;
        }

        private double? Off(double? value, int i) => (value / trial.Published[i]) - 1;

        private double? MeanOff(Func<Figure, double?> value) =>
            100 * Figures.Select((figure, i) => Math.Abs(Off(value(figure), i) ?? 1)).Average();

        private static double? ShootsPerVine(SeasonResult season) => season.Summary.Canopy?.ShootsPerVine;

        private static double? ShootsPerM(SeasonResult season) => season.Summary.Canopy?.ShootsPerM;
    }
}
