using CanopySim.Files.Charts;
using CanopySim.Protection;
using CanopySim.Results;

namespace CanopySim.Files.Forecast;

/// <summary>
/// Sprays in plain words: leaf that came after each, by zone, and what sulfur calls for. What a product does is not judged.
/// </summary>
public static class SprayWords
{
    public const string WithoutSprays =
        "No spray was noted or planned up to this day, so none of the leaf is counted as reached by one.";

    /// <summary>What the count is not.</summary>
    public const string Limits =
        "Leaf is counted, nothing else: how well or how long a spray protects, and what rain washes off, is not simulated. "
        + "Follow the product label and local rules, keep re-entry and pre-harvest intervals, wear the protection named on "
        + "the label, leave licensed work to licensed people.";

    public static IReadOnlyList<string> Heads { get; } =
        ["Spray", "Fruit zone", "Shoots outside it", "Laterals outside it", "New leaves a vine"];

    /// <summary>The sentence to open with: the leaf that no spray has reached.</summary>
    public static string Opening(StandingVine vine, Units units)
    {
        var season = vine.Season;
        if (season.Sprays.Count == 0) return WithoutSprays;
        var last = season.Sprays.MaxBy(spray => (spray.Date, spray.Number));
        var zones = Zones(season, Uncovered(season));
        var (open, all) = (zones.Sum(zone => zone.UncoveredArea), zones.Sum(zone => zone.LeafArea));
        return $"{Measure.LeafArea.Text(units, open, 2)} of leaf a vine, {Share(open, all)} of all, unfolded or expanded since its "
            + $"leaves were last sprayed and so is not covered; the last spray ({last.Label}) was on "
            + $"{Day(last.Date)}, {Ago(vine.AsOf, last.Date)}{Rain(vine, last.Date, units)}.";
    }

    /// <summary>A row a spray, and one for all together where the last alone does not tell it.</summary>
    public static IEnumerable<IReadOnlyList<string>> Rows(StandingVine vine, Units units)
    {
        var season = vine.Season;
        foreach (var spray in season.Sprays)
            yield return Row($"{spray.Label}\n{Day(spray.Date)}, {Ago(vine.AsOf, spray.Date)}", Zones(season, spray.Number), units);
        if (season.Sprays.Count > 1 && !SameAsLast(season))
            yield return Row("All together\nsince the last that reached the leaf", Zones(season, null), units);
    }

    /// <summary>The cautions on sprays up to the day, in their order; the weather after it counts where it is known.</summary>
    public static IReadOnlyList<string> Cautions(StandingVine vine, Units units) =>
        [.. SprayCautions.Of(vine.Season.Sprays, vine.Weather.Days).Select(caution => Words(caution, units))];

    /// <summary>A caution as a sentence.</summary>
    public static string Words(SprayCaution caution, Units units)
    {
        var spray = $"{caution.Spray.Label} of {Day(caution.Spray.Date)} is sulfur, and ";
        return caution.Risk == SprayRisk.SulfurInHeat
            ? spray + $"{Day(caution.On)} reaches {Measure.Temperature(units, caution.MaximumCelsius!.Value, 1)}: over "
                + $"{Measure.Temperature(units, SprayCautions.HeatCelsius, 0)} it can burn leaves and fruit (Michigan State "
                + "University Extension in Western Farm Press); the label decides."
            : spray + $"oil is sprayed on {Day(caution.On)}: within {SprayCautions.DaysFromOil} days of each other they can "
                + "burn leaves (labels, from memory); the label decides.";
    }

    /// <summary>Number of the row that tells of all sprays together: the only spray's own where there is one.</summary>
    internal static int? Uncovered(SeasonResult season) => season.Sprays.Count == 1 ? season.Sprays[0].Number : null;

    internal static IReadOnlyList<ZoneCover> Zones(SeasonResult season, int? spray) =>
        [.. season.SprayCover.Where(zone => zone.Spray == spray)];

    // A spray of the whole canopy leaves nothing for those before it to tell.
    private static bool SameAsLast(SeasonResult season) =>
        Zones(season, season.Sprays.MaxBy(spray => (spray.Date, spray.Number)).Number).Select(zone => zone.UncoveredArea)
            .SequenceEqual(Zones(season, null).Select(zone => zone.UncoveredArea));

    private static List<string> Row(string name, IReadOnlyList<ZoneCover> zones, Units units) =>
    [
        name,
        .. zones.OrderBy(zone => zone.Zone).Select(zone => zone.LeafArea > 0
            ? $"{Measure.Number(Measure.LeafArea.In(units, zone.UncoveredArea), 2)} of "
                + $"{Measure.LeafArea.Text(units, zone.LeafArea, 2)}\n{Share(zone.UncoveredArea, zone.LeafArea)} not covered"
            : "no leaf"),
        Measure.Number(zones.Sum(zone => zone.NewLeaves), 0),
    ];

    private static string Rain(StandingVine vine, DateOnly since, Units units)
    {
        var rain = vine.Weather.Days.Where(day => day.Date > since && day.Date <= vine.AsOf).Sum(day => day.Rain);
        return units == Units.Us
            ? $", with {Measure.Number(rain / 25.4, 2)} in of rain since"
            : $", with {Measure.Number(rain, 0)} mm of rain since";
    }

    private static string Share(double part, double all) => all > 0 ? $"{Measure.Number(100 * part / all, 0)} %" : "0 %";

    private static string Ago(DateOnly asOf, DateOnly date) => (asOf.DayNumber - date.DayNumber) switch
    {
        0 => "the same day",
        1 => "a day ago",
        var days => $"{days} days ago",
    };

    private static string Day(DateOnly date) => ChartAxis.DayText(date, isShort: false);
}
