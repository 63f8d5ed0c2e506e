using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>How fruitful the buds of a dense canopy will be.</summary>
internal sealed class NextYearBuds : Study
{
    private const string Source = "May & Antcliff; Smart; from memory";

    private static readonly Limit Down = new WithinRange(0.3, 0.6);

    public override string Title => "Next year's buds";

    public override string Done =>
        "The hedge of `warm-valley` in its first generated weather with 40 shoots a meter, which growers call "
        + "dense, against 10, which they call open (as under Shoots and light). Fruitfulness is light factor times "
        + "warmth factor; what the light factor does between these two was known before it was judged here.";

    public override IReadOnlyList<SeasonCase> Seasons => SeasonCatalogue.Densities;

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var densities = seasons.Of(SeasonCatalogue.Densities);
        var (open, dense) = (densities[0].Summary.NextYear, densities[^1].Summary.NextYear);
        double? Lost(Func<NextYearSummary, double> figure) =>
            open is not null && dense is not null ? 1 - (figure(dense) / figure(open)) : null;
        return new StudyResult(
            Finding.Judged("less light factor, dense against open [share]", Standing.Watched, Down, Source,
                Lost(buds => buds.LightFactor)) with
            {
                Note = $"{Say(densities[^1].Sheet("leaf_layers")?.Value)} leaf layers against "
                    + $"{Say(densities[0].Sheet("leaf_layers")?.Value)}",
            },
            Finding.Judged("less fruitfulness, dense against open [share]", Standing.Watched, Down, Source,
                Lost(buds => buds.Fruitfulness)))
        {
            Tables =
            [
                new ToldTable(
                    "Buds for next year by shoots a meter",
                    ["shoots a meter", "leaf layers", "light about noon [µmol/m²/s]", "light factor", "warmth factor",
                        "fruitfulness"],
                    [.. densities.Select((season, i) => (IReadOnlyList<string>)
                    [
                        NumberSay.Typed(SeasonCatalogue.ShootsPerMeter[i]), Say(season.Sheet("leaf_layers")?.Value),
                        Say(season.Summary.NextYear?.ParUmolM2S), Say(season.Summary.NextYear?.LightFactor),
                        Say(season.Summary.NextYear?.TemperatureFactor), Say(season.Summary.NextYear?.Fruitfulness),
                    ])]),
            ],
        };
    }

    private static string Say(double? value) => value is { } reached ? NumberSay.Number(reached) : "not reached";
}
