using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Leaves pulled on the side that looks at the morning sun.</summary>
internal sealed class LeafPulling : Study
{
    private const string Source =
        "Purdue University Extension, Canopy management in grapes: leaves off the east side for the morning sun, "
            + "the west side kept; sizes assumed";

    // The sun is in the east and in the west: hours about noon belong to neither.
    private static readonly int[] MorningHours = [6, 7, 8, 9, 10];
    private static readonly int[] AfternoonHours = [14, 15, 16, 17, 18];

    // Of the light that falls on the plane over the canopy; the source gives the direction only.
    private static readonly Limit Gains = WithinRange.AtLeast(0.05);
    private static readonly Limit Keeps = new WithinRange(-0.03, 0.03);

    private const int DaysFromBloom = 25;
    private const int Week = 7;

    private static readonly SeasonCase Pulled = new()
    {
        Name = "morning side pulled",
        Block = "warm-valley",
        WeatherSeed = 1,
        Change = (scenario, weather) => SeasonCatalogue.Unharvested(scenario) with
        {
            CanopyWork = scenario.CanopyWork with
            {
                LeafRemoval =
                [
                    new LeafRemoval { On = ValidationWeather.Bloom(scenario, weather).AddDays(DaysFromBloom),
                        Side = CanopySide.Morning },
                ],
            },
        },
        Until = (9, 15),
    };

    public override string Title => "Leaf pulling";

    public override string Done =>
        "The hedge of `warm-valley` (rows north to south) in its first generated weather: every leaf of the fruit "
        + "zone on its morning side pulled 25 days after bloom, against none. Light on the clusters of that side as a "
        + "share of the light over the canopy in the same hours, from a week after pulling to the end of August; "
        + "morning is 6:00 to 11:00, afternoon 14:00 to 19:00.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.WholeYear, Pulled];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var prepared = seasons.Prepared(Pulled);
        var from = ValidationWeather.Bloom(prepared.Scenario, prepared.Weather).AddDays(DaysFromBloom + Week);
        var to = new DateOnly(prepared.Year, 8, 31);
        var (none, pulled) = (seasons.Of(SeasonCatalogue.WholeYear), seasons.Of(Pulled));
        Reading Of(SeasonResult season, string side, int[] hours) => Reading.Of(season, side, hours, from, to);
        var (morningBefore, morning) = (Of(none, "morning", MorningHours), Of(pulled, "morning", MorningHours));
        var (afternoonBefore, afternoon) = (Of(none, "morning", AfternoonHours), Of(pulled, "morning", AfternoonHours));
        var (otherBefore, other) = (Of(none, "afternoon", AfternoonHours), Of(pulled, "afternoon", AfternoonHours));
        return new StudyResult(
            Finding.Judged(
                "more light on the morning side's clusters in the morning [share of incident]",
                    Standing.CommonPractice, Gains, Source,
                morning.Light - morningBefore.Light) with
            {
                Published = "more",
                Note = $"{NumberSay.Number(morningBefore.Light)} before, {NumberSay.Number(morning.Light)} after",
            },
            Finding.Judged(
                "more light on the same clusters in the afternoon [share of incident]", Standing.CommonPractice, Keeps,
                    Source,
                afternoon.Light - afternoonBefore.Light) with
            {
                Published = "no more",
                Note = $"{NumberSay.Number(afternoonBefore.Light)} before, {NumberSay.Number(afternoon.Light)} "
                    + "after: sky light through the "
                    + "opened side",
            },
            Finding.Judged(
                "more of their surface in the sun in the afternoon [share]", Standing.CommonPractice, Keeps, Source,
                afternoon.Sunlit - afternoonBefore.Sunlit) with
            {
                Published = "no more",
                Note = $"in the morning {NumberSay.Number(morningBefore.Sunlit)} before, "
                    + $"{NumberSay.Number(morning.Sunlit)} after",
            },
            Finding.Told(
                "light on the afternoon side's clusters in the afternoon, before / after [share of incident]",
                "no more", Source,
                otherBefore.Light, other.Light));
    }

    /// <summary>Means over weeks and hours.</summary>
    private sealed record Reading(double Light, double Sunlit)
    {
        public static Reading Of(SeasonResult season, string side, int[] hours, DateOnly from, DateOnly to)
        {
            var rows = season.Assessment.FruitLightHours
                .Where(row => row.From >= from && row.To <= to && row.Side.PartOfDay == side
                    && hours.Contains(row.Hour)).ToList();
            return rows.Count == 0
                ? new Reading(double.NaN, double.NaN)
                : new Reading(rows.Sum(row => row.ParUmolM2S) / rows.Sum(row => row.IncidentParUmolM2S),
                    rows.Average(row => row.SunlitShare));
        }
    }
}
