using CanopySim.Carbon;
using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What a vine gains, breathes and keeps over a year.</summary>
internal sealed class CarbonAccount : Study
{
    private const string Zufferey = "Zufferey et al. 2012, Vitis 51:103-110, Chasselas";

    // 3 to 6 µmol m⁻² s⁻¹ of whole canopies by day (chambers of Poni, Intrieri, Palliotti, Tarara; from memory) over 43000 s.
    private static readonly Limit JulyGain = new WithinRange(5, 11);

    // 0.35 to 0.50 for woody plants in general; 0.42 to 0.51 in an earlier study of ours.
    private static readonly Limit RespiredShare = new WithinRange(0.35, 0.55);

    // A vine that ends a year otherwise than it began it would not live [%].
    private const double YearPercent = 10;

    private const double Closure = 1e-9;

    private const double RipeBrix = 22;
    private const double NearlyHighest = 0.999;

    public override string Title => "The year's carbon";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather to leaf fall, nothing harvested. The winter is not simulated: trunk, cordon and "
        + "roots as at planting breathe in the weather from leaf fall to the next budbreak.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.WholeYear];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var season = seasons.Of(SeasonCatalogue.WholeYear);
        var prepared = seasons.Prepared(SeasonCatalogue.WholeYear);
        var dates = season.Summary.Dates;
        var july = season.Between(new DateOnly(prepared.Year, 7, 1), new DateOnly(prepared.Year, 7, 31));
        var gain = july.Sum(row => row.NetAssimilationGCo2PerVine) / july.Sum(row => row.LeafAreaM2PerVine);
        var grown = season.Days.Where(row => row.Date >= dates.Budbreak).ToList();
        var (first, last) = (grown[0].ReservesGPerVine, grown[^1].ReservesGPerVine);
        var lowest = grown.MinBy(row => row.ReservesGPerVine)!;
        var highest = grown.Max(row => row.ReservesGPerVine);
        var winter = Winter(prepared, dates.End);
        return new StudyResult(
            Finding.Judged(
                "net CO₂ in July, a leaf area and day [g m⁻²]", FittedQuantities.StandingOf(FittedQuantities.CarbonGain), JulyGain,
                "canopy chambers of several groups, from memory; 3 to 6 µmol m⁻² s⁻¹ by day", gain),
            Respiration(season),
            Finding.Judged(
                "day of the lowest reserves", Standing.Predicted,
                WithinRange.Days(dates.Budbreak ?? DateOnly.MaxValue, dates.Bloom ?? DateOnly.MinValue), Zufferey, lowest.Date.DayNumber)
                .OfDates() with
            {
                Published = "between budbreak and flowering",
                Note = $"budbreak {Say(dates.Budbreak)}, bloom {Say(dates.Bloom)}",
            },
            Finding.Judged(
                "last day of the highest reserves", Standing.Predicted,
                WithinRange.Days(season.Days.FirstOrDefault(row => row.SugarBrix >= RipeBrix)?.Date ?? DateOnly.MaxValue, dates.End), Zufferey,
                season.Days.Last(row => row.ReservesGPerVine >= NearlyHighest * highest).Date.DayNumber).OfDates() with
            {
                Published = "between harvest and leaf fall",
                Note = $"within {NumberSay.Typed(100 * (1 - NearlyHighest))} % of it from {NumberSay.Day(season.Days.First(row => row.ReservesGPerVine >= NearlyHighest * highest).Date)} on",
            },
            Finding.Judged("reserves at leaf fall over those at budbreak [1]", Standing.Predicted, WithinRange.AtLeast(1), Zufferey, last / first) with
            {
                Published = "refilled",
                Note = $"{NumberSay.Number(first)} g at budbreak, {NumberSay.Number(lowest.ReservesGPerVine)} g at the lowest, "
                    + $"{NumberSay.Number(last)} g at leaf fall",
            },
            Finding.Judged(
                "reserves at the next budbreak over those at the first [1]", Standing.Arithmetic, new WithinPercent(YearPercent, 1),
                "follows for a vine that lasts", (last - winter) / first) with
            {
                Published = "a closed year",
                Note = $"{NumberSay.Number(winter)} g for the winter's maintenance; the ceiling of reserves was set for this",
            },
            Finding.Judged(
                "carbon missing from the day's account, largest share of turnover [1]", Standing.Arithmetic, WithinRange.AtMost(Closure),
                "conservation; shed and cut mass is in the account", season.Summary.Checks.CarbonClosureMaxRelative) with
            {
                Published = "none",
                Format = NumberSay.Under(Closure),
            });
    }

    private static Finding Respiration(SeasonResult season)
    {
        const string Quantity = "respiration over gross assimilation, season [1]";
        const string Source = "woody plants in general 0.35 to 0.50, from memory; Escalona et al. 2012";
        var totals = season.Summary.Season;
        var leaves = totals.LeafRespirationKgCo2PerVine;
        return Finding.Judged(
            Quantity, Standing.Predicted, RespiredShare, Source,
            (totals.RespirationKgCo2PerVine + leaves) / (totals.NetAssimilationKgCo2PerVine + leaves));
    }

    // Maintenance of the permanent wood from leaf fall to the next budbreak [g CH₂O].
    private static double Winter(PreparedSeason season, DateOnly leafFall)
    {
        var vine = VinePlanting.Plant(season.Scenario).Vines[0];
        var budbreak = ValidationWeather.Budbreak(season.Scenario, season.Weather, yearsLater: 1);
        return season.Weather.Days.Where(day => day.Date > leafFall && day.Date < budbreak)
            .Sum(day => Maintenance.OfDay(vine, day, season.Scenario.Carbon));
    }

    private static string Say(DateOnly? day) => day is { } reached ? NumberSay.Day(reached) : "not reached";
}
