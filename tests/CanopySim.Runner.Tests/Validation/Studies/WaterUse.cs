using CanopySim.Results;
using CanopySim.Water;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What a vineyard drinks, and what gives way first when there is nothing left.</summary>
internal sealed class WaterUse : Study
{
    private const string Typical = "typical of warm climates, from memory";

    private static readonly Limit SeasonUse = new WithinRange(300, 700);
    private static readonly Limit MidsummerPeak = new WithinRange(2, 6);

    // Shoots have stopped when their mean is this near to its last value [nodes].
    private const double NodesToTheEnd = 0.1;
    private const double HalfOfIrrigated = 0.5;

    public override string Title => "Water";

    public override string Done =>
        "The block of `warm-valley` (irrigated below 0.4 of 200 mm) in its first generated weather, budbreak to leaf fall, transpiration and evaporation "
        + "beside the vines over ground area; weeks are means of seven days. For what gives way first both vines have vigor "
        + "(`growth.decline_after_bloom` 1500 °C d), so that only drought can stop them: one with free water, one without irrigation on a store of 100 mm.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.WholeYear, SeasonCatalogue.NeverStops, SeasonCatalogue.VigorousAndDry];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var season = seasons.Of(SeasonCatalogue.WholeYear);
        var prepared = seasons.Prepared(SeasonCatalogue.WholeYear);
        var dry = seasons.Of(SeasonCatalogue.VigorousAndDry);
        var watered = seasons.Of(SeasonCatalogue.NeverStops);
        var use = DailyUse(season, prepared.Scenario);
        var stop = dry.Days.First(row => row.NodesPerShoot > dry.Days[^1].NodesPerShoot - NodesToTheEnd).Date;
        var half = FirstWeekUnderHalf(dry, watered);
        var afterwards = dry.Days[^1].Date.DayNumber + 1;
        return new StudyResult(
            Finding.Judged(
                "water used over the season [mm]", Standing.Predicted, SeasonUse, Typical,
                use.Where(day => day.Date >= season.Summary.Dates.Budbreak).Sum(day => day.Millimeters)),
            Finding.Judged("highest week from June to August [mm/d]", Standing.Predicted, MidsummerPeak, Typical, HighestWeek(use)),
            Finding.Told(
                "transpiration over reference evapotranspiration, July and August [1]", "0.65", "FAO-56, wine grapes, Kcb mid", BasalCoefficient(season, prepared)),
            Finding.Judged(
                "dry vine: shoots stop / assimilation falls to half of the irrigated vine's", Standing.Predicted, new Rising("shoots first"),
                "Lebon et al. 2006, Ann Bot 98:175-185; Pellegrino et al. 2005, Aust J Grape Wine Res 11:306-315",
                stop.DayNumber, half?.DayNumber ?? afterwards) with
            {
                Format = day => day < afterwards ? NumberSay.Day(day) : "not by 15 October",
                Note = $"weeks of net assimilation a leaf area from May on; {NumberSay.Number(dry.Days[^1].NodesPerShoot)} nodes at the end, "
                    + $"{NumberSay.Number(watered.Days[^1].NodesPerShoot)} with free water",
            });
    }

    // Evaporation dries with the store as it stood in the morning: see SoilWater.
    private static List<(DateOnly Date, double Millimeters)> DailyUse(SeasonResult season, Scenario scenario)
    {
        var use = new List<(DateOnly, double)>();
        for (var i = 1; i < season.Days.Count; i++)
        {
            var evaporation = scenario.Soil.GroundEvaporation * season.Days[i - 1].SoilWaterFraction;
            use.Add((season.Days[i].Date, evaporation + (season.Days[i].TranspirationLPerVine / scenario.Rows.GroundAreaPerVine)));
        }

        return use;
    }

    private static double HighestWeek(List<(DateOnly Date, double Millimeters)> use)
    {
        var summer = use.Where(day => day.Date.Month is 6 or 7 or 8).Select(day => day.Millimeters).ToList();
        return Enumerable.Range(0, summer.Count - 6).Max(i => summer.Skip(i).Take(7).Average());
    }

    private static double BasalCoefficient(SeasonResult season, PreparedSeason prepared)
    {
        static bool IsMidsummer(DateOnly day) => day.Month is 7 or 8;
        var year = season.Days[0].Date.Year;
        var reference = prepared.Weather.Days.Where(day => day.Date.Year == year && IsMidsummer(day.Date))
            .Sum(day => ReferenceEvapotranspiration.OfDay(day, prepared.Scenario.Site));
        return season.Days.Where(row => IsMidsummer(row.Date)).Sum(row => row.TranspirationLPerVine)
            / prepared.Scenario.Rows.GroundAreaPerVine / reference;
    }

    private static DateOnly? FirstWeekUnderHalf(SeasonResult dry, SeasonResult irrigated)
    {
        static double PerArea(DayRow row) => row.LeafAreaM2PerVine > 0 ? row.NetAssimilationGCo2PerVine / row.LeafAreaM2PerVine : 0;
        for (var i = 0; i < Math.Min(dry.Days.Count, irrigated.Days.Count); i++)
        {
            if (dry.Days[i].Date.Month < 5) continue;
            var (thirsty, watered) = (dry.Days.WeekMean(i, PerArea), irrigated.Days.WeekMean(i, PerArea));
            if (thirsty < HalfOfIrrigated * watered) return dry.Days[i].Date;
        }

        return null;
    }
}
