namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Does half the crop speed ripening more than half the leaves slow it?</summary>
internal sealed class CropOrLeaves : Study
{
    private const string Parker = "Parker et al. 2015, Aust J Grape Wine Res 21:266-276";

    public override string Title => "Crop or leaves";

    public override string Done =>
        "The vines of six and twelve leaves a shoot (as under Sugar: no laterals, the cut ten days after bloom), "
        + "each with the whole crop and with half the berries; mean rise of sugar in the three weeks after veraison. "
        + "Parameters were turned while these vines' veraison and highest sugar were looked at, so their rates are "
        + "not blind.";

    public override IReadOnlyList<SeasonCase> Seasons =>
        [SeasonCatalogue.FewLeaves(6), SeasonCatalogue.FewLeaves(12), SeasonCatalogue.SixLeavesWholeCrop,
            SeasonCatalogue.TwelveLeavesWholeCrop];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        double? Rise(SeasonCase season) => seasons.Of(season).DailyRiseOfSugar();
        var (sixHalf, twelveHalf) = (Rise(SeasonCatalogue.FewLeaves(6)), Rise(SeasonCatalogue.FewLeaves(12)));
        var (sixWhole, twelveWhole) = (Rise(SeasonCatalogue.SixLeavesWholeCrop),
            Rise(SeasonCatalogue.TwelveLeavesWholeCrop));
        return new StudyResult(
            Finding.Judged(
                "rise of sugar lost with half the leaves / gained with half the crop, from 12 leaves and the whole "
                    + "crop [Brix/d]",
                Standing.Watched, new Rising("the crop does more"), Parker, twelveWhole - sixWhole,
                    twelveHalf - twelveWhole) with
            {
                Note = "with 12 leaves berries load almost as fast as they can, so that less crop has little left "
                    + "to speed",
            },
            Finding.Judged(
                "rise of sugar, whole crop on 12 leaves / half the crop on 6 [Brix/d]", Standing.Watched,
                    new Rising("the crop does more"),
                Parker, twelveWhole, sixHalf) with
            {
                Note = "nearly a tie",
            },
            Finding.Told(
                "rise of sugar, 6 leaves: whole / half crop; 12 leaves: whole / half crop [Brix/d]",
                "faster with half", Parker,
                sixWhole, sixHalf, twelveWhole, twelveHalf));
    }
}
