namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Shoots go on where water and vigor allow it, and stop where they do not.</summary>
internal sealed class NoStop : Study
{
    private const string Companion = "Oxford Companion to Wine 2006: shoots often stop near veraison in dry climates, go on where water is ample";

    // 40 to 60 nodes on vigorous irrigated vines, 20 to 25 on moderate ones, from memory: clearly beyond the moderate.
    private const double NodesOfVigor = 35;

    public override string Title => "Shoots that stop and shoots that do not";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather to 15 October: once with free water (irrigated below 0.8 of the transpirable "
        + "store) and vigor (`growth.decline_after_bloom` 1500 °C d), once with neither (no irrigation, a store of 120 mm). No topping.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.NeverStops, SeasonCatalogue.Dry];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var vigorous = seasons.Of(SeasonCatalogue.NeverStops);
        var dry = seasons.Of(SeasonCatalogue.Dry);
        return new StudyResult(
            Finding.Judged(
                "nodes a shoot at the end, free water and vigor [1]", Standing.Predicted, WithinRange.AtLeast(NodesOfVigor),
                "vigorous irrigated shoots 40 to 60, from memory; " + Companion, vigorous.Days[^1].NodesPerShoot),
            Finding.Judged(
                "share of tips that have stopped the day before veraison, neither [1]", Standing.Predicted, WithinRange.AtLeast(1), Companion,
                StoppedShare(seasons, dry.Summary.Dates.Veraison)) with
            {
                Published = "all",
                Note = $"{NumberSay.Number(dry.Days[^1].NodesPerShoot)} nodes at the end",
            });
    }

    private static double? StoppedShare(ValidationSeasons seasons, DateOnly? veraison)
    {
        if (veraison is not { } day) return null;
        var shoots = seasons.CanopyOn(SeasonCatalogue.Dry, day.AddDays(-1)).PrimaryShoots().ToList();
        return shoots.Count(shoot => shoot.TipStopped) / (double)shoots.Count;
    }
}
