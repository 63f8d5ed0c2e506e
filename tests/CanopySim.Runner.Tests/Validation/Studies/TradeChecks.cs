using CanopySim.Assessment;
using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>What people who grow vines expect without a paper to quote.</summary>
internal sealed class TradeChecks : Study
{
    private const string NoSource = "common practice, no source";

    // A shoot of 2 inches grows to 19 within three weeks of 6/21 °C and has 8 or 9 nodes then: a third on each side.
    private static readonly Limit LengthAfterThreeWeeks = new WithinRange(34, 62);
    private static readonly Limit NodesAfterThreeWeeks = new WithinRange(7, 10);
    private const double ShortShootCm = 5;
    private const int ThreeWeeks = 21;

    private static readonly Limit DaysToBloom = new WithinRange(28, 49);
    private static readonly Limit BestAge = new WithinRange(30, 40);
    private static readonly Limit LeafLife = new WithinRange(120, 160);
    private static readonly Limit MostIsSpent = WithinRange.AtLeast(0.5);
    private static readonly Limit ClustersPerShoot = new WithinRange(1, 3);
    private static readonly Limit GrowingTips = WithinRange.AtLeast(0.5);

    private static readonly (int Month, int Day) InMay = (5, 15);

    public override string Title => "What the trade expects";

    public override string Done =>
        "A spring of 6 °C at night and 21 °C by day, every day alike, fairly clear and dry (made for this check), for the block of `warm-valley` "
        + "with budbreak on 1 April; that block in its generated weathers; and the curve of leaf age.";

    public override IReadOnlyList<SeasonCase> Seasons => [ConstantSpring.Season, SeasonCatalogue.WholeYear, .. SeasonCatalogue.Hedges];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var later = ThreeWeeksLater(seasons.Of(ConstantSpring.Season));
        var hedges = seasons.Of(SeasonCatalogue.Hedges);
        var year = seasons.Of(SeasonCatalogue.WholeYear);
        var season = seasons.Prepared(SeasonCatalogue.WholeYear);
        var may = new DateOnly(season.Year, InMay.Month, InMay.Day);
        var canopy = seasons.CanopyOn(SeasonCatalogue.WholeYear, may);
        var shoots = canopy.PrimaryShoots().ToList();
        var clusters = shoots.Sum(shoot => shoot.Phytomers.Count(phytomer => phytomer.Cluster is not null));
        var leaves = new AprilLeaves(year, season.Year);
        return new StudyResult(
            Finding.Judged(
                "length of a shoot three weeks after it was 5 cm long, 6/21 °C [cm]", Standing.CommonPractice, LengthAfterThreeWeeks, NoSource,
                later?.ShootLengthCm),
            Finding.Judged("its nodes then [1]", Standing.CommonPractice, NodesAfterThreeWeeks, NoSource, later?.NodesPerShoot),
            Finding.Judged(
                "days from budbreak to bloom, each weather [d]", Standing.CommonPractice, DaysToBloom, NoSource,
                [.. hedges.Select(hedge => hedge.Summary.Dates is { Budbreak: { } budbreak, Bloom: { } bloom }
                    ? bloom.DayNumber - budbreak.DayNumber
                    : (double?)null)]) with
            {
                Note = "a growing handbook says 6 to 8 weeks; 46.8 d in southern Brazil (Miele 2019, Rev Bras Frutic 41(6))",
            },
            Finding.Told(
                "the same where every day has 6/21 °C and none gets warmer [d]", "28 to 49", NoSource,
                seasons.Of(ConstantSpring.Season).Summary.Dates is { Budbreak: { } broke, Bloom: { } bloomed } ? bloomed.DayNumber - broke.DayNumber : null) with
            {
                Note = "read as a spring that begins so and warms: the one above is judged",
            },
            Finding.Judged(
                "age at which a leaf is at its best, from / to [d]", Standing.Arithmetic, BestAge, NoSource, [.. BestAges(year.AgeCurve)]) with
            {
                Note = "the curve is typed in",
            },
            Finding.Judged("median life of leaves that unfolded in April [d]", Standing.Arithmetic, LeafLife, NoSource, leaves.MedianLife) with
            {
                Published = "about 150 (120 to 160)",
                Note = "read every third day; the life of a leaf in the light is typed in, shade shortens it",
            },
            Finding.Judged(
                "share of the leaf area of April that is spent by 30 September [1]", Standing.CommonPractice, MostIsSpent, NoSource,
                leaves.ShareSpentBySeptember) with
            {
                Published = "most",
            },
            Finding.Judged(
                "clusters a shoot on 15 May [1]", Standing.Arithmetic, ClustersPerShoot, "a growing handbook: 1 to 3, most vinifera 2",
                clusters / (double)shoots.Count) with
            {
                Note = "the mean number is typed in",
            },
            Finding.Judged(
                "share of tips that grow freely on 15 May [1]", Standing.CommonPractice, GrowingTips, NoSource,
                ShootTip.GrowingFreelyShare(canopy, season.Scenario.Growth)));
    }

    private static DayRow? ThreeWeeksLater(SeasonResult spring) =>
        spring.Days.FirstOrDefault(row => row.ShootLengthCm >= ShortShootCm) is { } first ? spring.On(first.Date.AddDays(ThreeWeeks)) : null;

    // The ends of the ages at which the curve is highest.
    private static double?[] BestAges(Growth.LeafAgeCurve curve)
    {
        var best = curve.Points.Max(point => point.Efficiency);
        var ages = curve.Points.Where(point => point.Efficiency == best).Select(point => point.Age).ToList();
        return [ages.Min(), ages.Max()];
    }
}
