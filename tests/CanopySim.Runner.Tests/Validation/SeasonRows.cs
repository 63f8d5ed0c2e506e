using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Reads figures out of seasons. A figure that one season lacks, their mean lacks.</summary>
internal static class SeasonRows
{
    private const int ThreeWeeks = 21;

    public static DayRow? On(this SeasonResult season, DateOnly? day) => season.Days.FirstOrDefault(row => row.Date == day);

    public static IReadOnlyList<DayRow> Between(this SeasonResult season, DateOnly from, DateOnly to) =>
        [.. season.Days.Where(row => row.Date >= from && row.Date <= to)];

    public static double? Mean(this IReadOnlyList<SeasonResult> seasons, Func<SeasonResult, double?> figure)
    {
        var values = seasons.Select(figure).ToList();
        return values.Count > 0 && values.All(value => value is not null) ? values.Average() : null;
    }

    /// <summary>From the smallest to the largest of several seasons, in words.</summary>
    public static string Spread(this IReadOnlyList<SeasonResult> seasons, Func<SeasonResult, double?> figure)
    {
        var values = seasons.Select(figure).ToList();
        return values.Any(value => value is null) ? "" : $"{NumberSay.Number(values.Min()!.Value)} to {NumberSay.Number(values.Max()!.Value)}";
    }

    /// <summary>Mean of a value over a week that ends on a row; null before the first whole week.</summary>
    public static double? WeekMean(this IReadOnlyList<DayRow> rows, int last, Func<DayRow, double> value) =>
        last < 6 ? null : rows.Skip(last - 6).Take(7).Average(value);

    /// <summary>Mean rise of sugar in the three weeks after veraison [Brix/d]; null where that was not reached.</summary>
    public static double? DailyRiseOfSugar(this SeasonResult season) => season.Summary.Dates.Veraison is { } veraison
        ? (season.On(veraison.AddDays(ThreeWeeks))?.SugarBrix - season.On(veraison)?.SugarBrix) / ThreeWeeks
        : null;

    /// <summary>A row of the canopy sheet, all walls together; null before veraison.</summary>
    public static CanopySheetRow? Sheet(this SeasonResult season, string item) =>
        season.Assessment.CanopySheet.FirstOrDefault(row => row.Item == item && row.Wall is null);

    public static double? DayNumber(this DateOnly? day) => day?.DayNumber;
}
