using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>The vertical trellis of Kliewer &amp; Dokoozlian 2005, table 3: means of three spacings, two rootstocks, 1993 to 1995.</summary>
internal sealed class PublishedCanopy : Study
{
    private const string Table = "Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181, table 3, vertical trellis";

    // How near the mean of five weathers must come [%]: the spread of the ten weathers of an earlier study of ours on each side.
    private const double Percent = 15;

    private const double PublishedLength = 130;
    private const double PublishedNodes = 24.0;
    private const double PublishedInternode = 5.3;
    private const double PublishedPrimary = 2280;
    private const double PublishedLateral = 1050;
    private const double PublishedLeafArea = 8.4;
    private const double PublishedYield = 9.9;
    private const double PublishedPrunings = 1.58;

    // 2280 / 130; the other trellises of the table give 17.5 to 17.7.
    private const double AreaPerLengthOfPrint = 17.5;

    public override string Title => "A published canopy";

    public override string Done =>
        "The block of `warm-valley` (rows 3.0 m, vines 1.95 m, 14 shoots a metre: 27 a vine, 27.3 published) in five generated weathers "
        + "(`weather.seed` 1 to 5), not topped. "
        + "The 1.95 m follow from the printed shoots a vine and a metre; leaf area a vine and a metre would give 1.78 m. We have neither the trial's weather "
        + "nor a word on whether its vines were topped: both are shown. Canopy at veraison, yield and prunings at 22 Brix "
        + "or on 1 October, whichever comes first. Judged are means over the weathers.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. SeasonCatalogue.Hedges, .. SeasonCatalogue.ToppedHedges];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var hedges = seasons.Of(SeasonCatalogue.Hedges);
        var topped = seasons.Of(SeasonCatalogue.ToppedHedges);
        var rows = new (string Quantity, string Unit, double Published, Func<SeasonResult, double?> Ours, string Note)[]
        {
            (FittedQuantities.ShootLength, "cm", PublishedLength, season => season.Summary.Canopy?.ShootLengthCm, ""),
            (FittedQuantities.Nodes, "1", PublishedNodes, season => season.Summary.Canopy?.NodesPerShoot, ""),
            (FittedQuantities.Internode, "cm", PublishedInternode, Internode, "length over nodes; the printed length and nodes give 5.42"),
            (FittedQuantities.PrimaryArea, "cm²", PublishedPrimary, season => season.Summary.Canopy?.PrimaryLeafAreaPerShootCm2, ""),
            (FittedQuantities.LateralArea, "cm²", PublishedLateral, season => season.Summary.Canopy?.LateralLeafAreaPerShootCm2, ""),
            (FittedQuantities.LeafArea, "m²", PublishedLeafArea, season => season.Summary.Canopy?.LeafAreaM2PerVine,
                "the printed shoots and areas give 9.1"),
            (FittedQuantities.Yield, "t/ha", PublishedYield, season => season.Summary.Harvest?.YieldTPerHa, ""),
            (FittedQuantities.Prunings, "kg", PublishedPrunings, season => season.Summary.Harvest?.PruningsKgPerVine, ""),
            (FittedQuantities.AreaPerLength, "cm", AreaPerLengthOfPrint, AreaPerLengthOf, "from the printed area and length"),
        };
        return new StudyResult([.. rows.Select(row => Finding.Judged(
            $"{row.Quantity} [{row.Unit}]", FittedQuantities.StandingOf(row.Quantity), new WithinPercent(Percent, row.Published), Table,
            hedges.Mean(row.Ours)) with { Note = Notes(row.Note, hedges.Spread(row.Ours)) })])
        {
            Tables =
            [
                new ToldTable(
                    "The same vines topped once, at the top wire, when shoots are 1.2 m long on average",
                    ["quantity", "published", "not topped", "topped"],
                    [.. rows.Select(row => (IReadOnlyList<string>)
                        [$"{row.Quantity} [{row.Unit}]", NumberSay.Typed(row.Published), Say(hedges.Mean(row.Ours)), Say(topped.Mean(row.Ours))])]),
            ],
        };
    }

    private static double? Internode(SeasonResult season) => season.Summary.Canopy is { NodesPerShoot: > 0 } canopy
        ? canopy.ShootLengthCm / canopy.NodesPerShoot
        : null;

    private static double? AreaPerLengthOf(SeasonResult season) => season.Summary.Canopy is { ShootLengthCm: > 0 } canopy
        ? canopy.PrimaryLeafAreaPerShootCm2 / canopy.ShootLengthCm
        : null;

    private static string Notes(string note, string spread) =>
        string.Join("; ", new[] { note, spread.Length > 0 ? $"over the weathers {spread}" : "" }.Where(text => text.Length > 0));

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "not reached";
}
