namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Nodes that a shoot has unfolded when it blooms: nearly the same in every climate.</summary>
internal sealed class BloomNodes : Study
{
    private const string Source = "Pratt & Coombe 1978, Vitis 17:125-133";

    // The figure in print, for the warm valley that the parameters were fitted in.
    private static readonly Limit Published = new WithinRange(16, 19);

    // Vigor is the main cause of variation in the source, and labruscana vines have 12 to 14: room on both sides for a cool site.
    private static readonly Limit CoolSite = new WithinRange(12, 20);

    private static readonly int[] Years = [2012, 2013, 2014, 2015];

    private static readonly IReadOnlyList<SeasonCase> OpenWeather = [.. Years.Select(year => new SeasonCase
    {
        Name = $"open weather {year}",
        Block = "open-weather",
        Year = year,
        Until = (6, 30),
        Work = 18 * 3,
    })];

    public override string Title => "Nodes at bloom";

    public override string Done =>
        "The block of `warm-valley` in five generated weathers, and `open-weather` (a real record of a cool site, rows 2.4 m, vines 1.5 m, "
        + "an early cultivar) in its four years.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. SeasonCatalogue.Hedges, .. OpenWeather];

    public override StudyResult Judge(ValidationSeasons seasons) => new(
        Finding.Judged(
            "nodes at bloom, warm valley, each weather [1]", FittedQuantities.StandingOf(FittedQuantities.NodesAtBloom), Published, Source,
            [.. seasons.Of(SeasonCatalogue.Hedges).Select(season => season.Summary.NodesAtBloom)]),
        Finding.Judged(
            "nodes at bloom, cool site, 2012 / 2013 / 2014 / 2015 [1]", Standing.Arithmetic, CoolSite, Source,
            [.. seasons.Of(OpenWeather).Select(season => season.Summary.NodesAtBloom)]) with
        {
            Published = Published.Published,
            Note = "judged with room for a cool site; follows from its bloom sum, 430 °C d, and the phyllochrons wherever carbon is ample",
        });
}
