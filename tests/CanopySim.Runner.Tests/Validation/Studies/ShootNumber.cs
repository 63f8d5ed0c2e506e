using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Few long shoots or many short ones, and vines near to each other or far: no rule of the model knows either.</summary>
internal sealed class ShootNumber : Study
{
    private const string Table = "Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181, table 4, Oakville 1992";
    private const string Project = "American Vineyard Foundation, project summary of the same vineyard";

    // One trial on spacings and weather that are not printed: assumed ones allow no more [%].
    private const double Percent = 30;

    private const double VineSpacing = 2.4;
    private const double RowSpacing = 3.66;

    private static readonly int[] Shoots = [36, 191, 314];
    private static readonly double[] Lengths = [152, 60, 41];
    private static readonly double[] LeafAreas = [16.2, 23.8, 20.1];
    private static readonly double[] Sugars = [22.4, 20.8, 20.7];

    private static readonly ulong[] Weathers = [1, 2, 3];

    private static readonly IReadOnlyList<IReadOnlyList<SeasonCase>> Prunings = [.. Shoots.Select(shoots =>
        (IReadOnlyList<SeasonCase>)[.. Weathers.Select(weather => SeasonCatalogue.Valley(
            $"{shoots} shoots, weather {weather}", scenario => Pruned(scenario, shoots), (9, 15), weather, shoots * 7))])];

    private static readonly IReadOnlyList<SeasonCase> Spacings = [.. new[] { 1.0, 2, 3 }.Select(spacing => SeasonCatalogue.Valley(
        $"vines at {spacing} m",
        scenario => SeasonCatalogue.Unharvested(scenario) with { Rows = scenario.Rows with { VineSpacing = spacing } },
        (8, 1), work: 14 * spacing * 4))];

    public override string Title => "Shoots a vine, and room a vine";

    public override string Done =>
        "First: spur, hedge and minimal pruning leave 36, 191 and 314 shoots. Vines 2.4 m, rows 3.66 m and the weather (`warm-valley`, "
        + "means over `weather.seed` 1 to 3) are assumed; so is the old wood from which the many shoots of the two severe cases arise (a zone 0.7 m high and "
        + "0.6 m wide) and the 0.8 m that their foliage takes. The node rate's answer to carbon was chosen while these vines were looked at. Canopy at veraison, sugar and crop on 15 September. "
        + "Second: the block of `warm-valley` with vines at 1, 2 and 3 m in rows of 3.0 m, 14 shoots a metre, on 1 August.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. Prunings.SelectMany(pruning => pruning), .. Spacings];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var spaced = seasons.Of(Spacings);
        var length = Means(seasons, season => season.Summary.Canopy?.ShootLengthCm);
        var area = Means(seasons, season => season.Summary.Canopy?.LeafAreaM2PerVine);
        var sugar = Means(seasons, season => season.Days[^1].SugarBrix);
        double?[] spacedLength = [.. spaced.Select(season => (double?)season.Days[^1].ShootLengthCm)];
        return new StudyResult(
            Finding.Judged("shoot length, 36 / 191 / 314 shoots [cm]", Standing.Watched, new WithinPercent(Percent, Lengths), Table, length),
            Finding.Judged("order of shoot lengths [cm]", Standing.Watched, new SameOrder(Lengths), Table, length),
            Finding.Judged("leaf area a vine [m²]", Standing.Watched, new WithinPercent(Percent, LeafAreas), Table, area),
            Finding.Judged("order of leaf areas [m²]", Standing.Watched, new SameOrder(LeafAreas), Table, area),
            Finding.Judged("order of sugar on 15 September [Brix]", Standing.Watched, new SameOrder(Sugars), Table, sugar),
            Finding.Told("crop a vine [kg]", "9.8 / 20.2 / 15.9", Table, Means(seasons, season => season.Summary.Harvest?.YieldKgPerVine)) with
            {
                Note = "clusters a shoot and berries a cluster are those of the spur-pruned vine",
            },
            Finding.Judged(
                "lateral leaf area a shoot, 314 / 191 / 36 shoots [cm²]", Standing.Watched, new Rising("few laterals where shoots are many"),
                "Kliewer & Dokoozlian 2005 for the shoots; common practice, no source, for their laterals",
                [.. Means(seasons, season => season.Summary.Canopy?.LateralLeafAreaPerShootCm2).Reverse()]),
            Finding.Told("shoot length, vines at 1 / 2 / 3 m [cm]", "a third shorter at 3 m than at 1 m", Project, spacedLength) with
            {
                Note = (spacedLength is [{ } near, _, { } far] ? $"{NumberSay.Percent((far / near) - 1)} from 1 m to 3 m; " : "")
                    + "permanent wood and roots are assumed to grow with the vine's ground and cordon, and roots do not compete",
            });
    }

    // Means over the weathers; none where one of them did not get there.
    private static double?[] Means(ValidationSeasons seasons, Func<SeasonResult, double?> figure) =>
        [.. Prunings.Select(pruning => seasons.Of(pruning).Select(figure).Aggregate((a, b) => a + b) / Weathers.Length)];

    private static Scenario Pruned(Scenario scenario, int shoots)
    {
        var vine = SeasonCatalogue.Unharvested(scenario) with
        {
            Rows = scenario.Rows with { VineSpacing = VineSpacing, Spacing = RowSpacing },
            CanopyWork = scenario.CanopyWork with { ShootsPerMeter = shoots / VineSpacing },
        };
        if (shoots == Shoots[0]) return vine;
        return vine with
        {
            CanopyWork = vine.CanopyWork with { BearingZoneHeight = 0.7, BearingZoneWidth = 0.6 },
            Trellis = vine.Trellis with { FoliageWidth = 0.8 },
        };
    }
}
