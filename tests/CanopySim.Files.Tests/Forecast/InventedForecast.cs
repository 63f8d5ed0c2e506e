using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using CanopySim.Files.Tests.Charts;
using CanopySim.Fitting;
using CanopySim.Parameters;

namespace CanopySim.Files.Tests.Forecast;

/// <summary>A forecast made up for the tests of its page: shaped like one, out of plain formulas. Nothing here is a result.</summary>
internal static class InventedForecast
{
    private static readonly DateOnly Ripe = InventedSeason.Ripe;

    public static ForecastContent Full(Units units = Units.Metric) => new()
    {
        Vine = InventedVine.Standing(),
        Tips =
        [
            Reading(new NotedTips(new DateOnly(2023, 5, 20), 1, 0, 0), 1, 0),
            Reading(new NotedTips(new DateOnly(2023, 6, 12), 2, 6, 1, 1, 3), 0.75, 0.25),
        ],
        Members = 80,
        Outlook = "Weather to 20 June is the file's; what follows is made like the nine other years of its record (assumed).",
        Bloom = new StageOutlook("bloom", InventedSeason.Bloom, InventedSeason.Bloom, InventedSeason.Bloom, 1),
        Veraison = new StageOutlook(
            "veraison", InventedSeason.Veraison.AddDays(-4), InventedSeason.Veraison, InventedSeason.Veraison.AddDays(5), 1),
        Target = new StageOutlook("target sugar", Ripe.AddDays(-9), Ripe, Ripe.AddDays(12), 0.96),
        ShootLengthCm = Fan(day => 132 * Step((day.DayNumber - InventedSeason.Budbreak.DayNumber - 8) / 85.0), 0.12),
        LeafAreaM2PerVine = Fan(day => 8.3 * Step((day.DayNumber - InventedSeason.Budbreak.DayNumber) / 95.0), 0.15),
        SugarBrix = [.. Fan(day => 5.5 + (19 * (1 - Math.Exp(-(day.DayNumber - InventedSeason.Veraison.DayNumber) / 23.0))), 0.06)
            .Where(day => day.Date >= InventedSeason.Veraison)],
        ChanceOfTarget = [.. Days().Where(day => day >= InventedSeason.Veraison)
            .Select(day => (day, 0.96 * Step((day.DayNumber - Ripe.DayNumber + 25) / 50.0)))],
        NotedLengthsCm = [(new DateOnly(2023, 5, 12), 41), (new DateOnly(2023, 6, 2), 82), (new DateOnly(2023, 6, 16), 104)],
        FeedingLeaves =
        [
            .. InventedSeason.Full().Summary.RipeningCarbonByLeafAge
                .Select(share => new AgeOutlook(share.FromD, share.ToD, share.Share - 0.02, share.Share, share.Share + 0.03)),
        ],
        AtVeraison = (new Tenths(7, 8.1, 9.3), new Tenths(0.2, 0.31, 0.4)),
        ChanceByWeek = [(new DateOnly(2023, 9, 8), 0.1), (new DateOnly(2023, 9, 15), 0.46), (new DateOnly(2023, 9, 22), 0.71)],
        Options =
        [
            new OptionOutlook(
                "take off 30 % of the clusters", new DateOnly(2023, 7, 1), 8, new Tenths(-7, -4, -1), new Tenths(0.7, 0.72, 0.75),
                new Tenths(1.2, 1.31, 1.4)),
            new OptionOutlook(
                "top the shoots at 12 nodes", new DateOnly(2023, 6, 21), 8, new Tenths(3, 7, 15), new Tenths(0.98, 0.99, 1),
                new Tenths(0.6, 0.7, 0.8)),
            new OptionOutlook("pull 60 % of the leaves", new DateOnly(2023, 6, 22), 0, null, null, null, "it contradicts the plan."),
        ],
        Notes =
        [
            new NoteOutlook("mean length of 10 shoots on 16 June, 104 cm", "118 ± 21 cm", "107 ± 7 cm", 0.67, false),
            new NoteOutlook("nodes of 10 shoots on 16 June, 18.2", "17.9 ± 2.1", "18.1 ± 0.8", 0.62, false),
            new NoteOutlook("mean length of a shoot on 30 May, 310 cm", "61 ± 12 cm", "64 ± 5 cm", 0, true),
        ],
        OddNotes = ["line 14, shoot_length 18 cm beside a usual 45 cm: the number may be of inches, not centimeters"],
        Assumptions = ["How far vines differ from the scenario is assumed, trait by trait."],
        Understood = [new("site.latitude", "45.2 deg", Mark.Given, ""), new("rows.spacing", "2.4 m", Mark.Assumed, "")],
        Warnings = ["Topping on 2023-06-10 met <nothing>."],
        Units = units,
        Printed = new DateOnly(2023, 6, 21),
    };

    private static TipReading Reading(NotedTips seen, double free, double slowing) =>
        TipReading.Of(seen, InventedVine.Tip(seen.Date, free, slowing), InventedSeason.Bloom, null, null);

    // What is behind is known better than what lies ahead.
    private static IReadOnlyList<FanDay> Fan(Func<DateOnly, double> median, double spread) =>
    [
        .. Days().Select(day =>
        {
            var wide = spread * Math.Clamp((day.DayNumber - InventedVine.AsOf.DayNumber + 30) / 60.0, 0.25, 1);
            var middle = median(day);
            return new FanDay(
                day, middle * (1 - wide), middle * (1 - (0.5 * wide)), middle, middle * (1 + (0.5 * wide)), middle * (1 + wide));
        }),
    ];

    private static IEnumerable<DateOnly> Days()
    {
        for (var day = InventedSeason.Budbreak; day <= Ripe.AddDays(25); day = day.AddDays(1)) yield return day;
    }

    private static double Step(double x) => Math.Clamp(x, 0, 1) is var at ? at * at * (3 - (2 * at)) : 0;
}
