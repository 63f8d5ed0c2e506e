using System.Globalization;
using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Sugar by time, by crop and by leaves left.</summary>
internal sealed class FruitSugar : Study
{
    private const string Kliewer = "Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181, single canopies";
    private const string Parker = "Parker et al. 2015, Aust J Grape Wine Res 21:266-276; 2014, from memory";

    // Trade: 0.25 to 0.35 in the first three weeks, 0.1 to 0.2 later, 1 to 2 a week: a half on each side.
    private static readonly Limit DailyRise = new WithinRange(0.15, 0.45);
    private static readonly Limit AtVeraison = new WithinRange(5, 6);

    private static readonly Limit LeafAreaForFullSugar = new WithinRange(0.8, 1.2);

    private static readonly Limit Ripens = WithinRange.AtLeast(20);
    // No less than a refractometer can tell, and a tenth of the first slope is flat.
    private const double LeastBrix = 0.1;
    private const double FlatSlope = 0.1;

    public override string Title => "Sugar";

    public override string Done =>
        "The block of `warm-valley`: in five generated weathers for the rise of sugar; in the first one with berries a cluster times 0.5 to 4.5, "
        + "sugar on 1 October against leaf area at veraison over the crop of 1 October; and with 6 or 12 leaves a shoot (cut ten days after "
        + "bloom, no laterals, half the berries, to 31 October).";

    public override IReadOnlyList<SeasonCase> Seasons =>
        [.. SeasonCatalogue.Hedges, .. SeasonCatalogue.Crops, SeasonCatalogue.FewLeaves(6), SeasonCatalogue.FewLeaves(12),
            SeasonCatalogue.SixLeavesWholeCrop, SeasonCatalogue.TwelveLeavesWholeCrop];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var hedges = seasons.Of(SeasonCatalogue.Hedges);
        var crops = seasons.Of(SeasonCatalogue.Crops);
        var (six, twelve) = (seasons.Of(SeasonCatalogue.FewLeaves(6)), seasons.Of(SeasonCatalogue.FewLeaves(12)));
        var curve = new SugarCurve(crops);
        var (half, whole) = (crops[0], crops[1]);
        return new StudyResult(
            Finding.Judged(
                "sugar on the day of veraison, each weather [Brix]", Standing.Arithmetic, AtVeraison, "common practice, no source",
                [.. hedges.Select(hedge => hedge.On(hedge.Summary.Dates.Veraison)?.SugarBrix)]) with
            {
                Note = "typed in",
            },
            Finding.Judged(
                "rise of sugar in the three weeks after veraison, each weather [Brix/d]", FittedQuantities.StandingOf(FittedQuantities.SugarRise), DailyRise,
                "common practice, no source", [.. hedges.Select(hedge => hedge.DailyRiseOfSugar())]),
            Finding.Judged(
                "leaf area over fruit at 95 % of the highest sugar, 1 October [m²/kg]", Standing.Predicted, LeafAreaForFullSugar, Kliewer,
                curve.FullSugar),
            Finding.Judged(
                "least step of sugar towards more leaf area [Brix]", Standing.Predicted, WithinRange.AtLeast(-LeastBrix), Kliewer,
                curve.LeastStep) with
            {
                Published = "rises",
                Format = value => value.ToString("F2", CultureInfo.InvariantCulture),
            },
            Finding.Judged(
                "last slope of sugar over leaf area by the first [1]", Standing.Predicted, WithinRange.AtMost(FlatSlope), Kliewer,
                curve.LastSlope / curve.FirstSlope) with
            {
                Published = "flattens",
                Format = value => value.ToString("F3", CultureInfo.InvariantCulture),
            },
            Finding.Judged(
                "veraison, 12 / 6 leaves a shoot", FittedQuantities.StandingOf(FittedQuantities.VeraisonOfFewLeaves), new Rising("later with 6"), Parker,
                twelve.Summary.Dates.Veraison.DayNumber(), six.Summary.Dates.Veraison.DayNumber()).OfDates(),
            Finding.Judged(
                "rise of sugar in the three weeks after veraison, 6 / 12 leaves [Brix/d]", Standing.Predicted, new Rising("slower with 6"), Parker,
                six.DailyRiseOfSugar(), twelve.DailyRiseOfSugar()),
            Finding.Judged(
                "highest sugar by the end of October, 6 / 12 leaves [Brix]", FittedQuantities.StandingOf(FittedQuantities.FewLeaves), Ripens, Parker, Highest(six), Highest(twelve)),
            Finding.Told(
                "the same with the whole crop, 6 / 12 leaves [Brix]", "20 or more", Parker,
                Highest(seasons.Of(SeasonCatalogue.SixLeavesWholeCrop)), Highest(seasons.Of(SeasonCatalogue.TwelveLeavesWholeCrop))),
            Finding.Judged(
                "day of 22 Brix, half / whole crop", Standing.Predicted, new Rising("earlier with half"), Parker,
                half.Summary.Dates.TargetSugar.DayNumber(), Ripe(whole)).OfDates() with
            {
                Note = whole.Summary.Dates.TargetSugar is null ? "the whole crop was not ripe on 1 October" : "",
            })
        {
            Tables =
            [
                new ToldTable(
                    "Sugar on 1 October by leaf area over fruit",
                    ["berries a cluster, times", "leaf area over fruit [m²/kg]", "sugar [Brix]", "crop [kg a vine]"],
                    [.. crops.Select((crop, i) => (IReadOnlyList<string>)
                    [
                        NumberSay.Typed(SeasonCatalogue.CropFactors[i]), NumberSay.Number(SugarCurve.Point(crop).LeafArea), NumberSay.Number(SugarCurve.Point(crop).Brix),
                        NumberSay.Number(crop.Summary.Harvest?.YieldKgPerVine ?? double.NaN),
                    ])]),
            ],
        };
    }

    private static double? Highest(SeasonResult season) => season.Days.Max(row => row.SugarBrix);

    // Ripe after the last day where it was not ripe by then.
    private static double? Ripe(SeasonResult season) => season.Summary.Dates.TargetSugar.DayNumber() ?? season.Summary.Dates.End.DayNumber + 1;
}
