using System.Globalization;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Files.Recording;

namespace CanopySim.Drawing.Pictures;

/// <summary>What stands under pictures, and says the same to who cannot see them.</summary>
public static class PictureText
{
    /// <summary>Block, day and time.</summary>
    public static string Title(SeasonRecording recording, Moment moment) =>
        $"{recording.Scenario.Name}, {DayText(recording.Row(moment.Day).Date)}, {TimeText(moment.Hour)} standard time";

    /// <summary>A sentence on what is seen.</summary>
    public static string Sentence(SeasonRecording recording, Moment moment, float[] values, ViewPoint from, Units units)
    {
        var vines = recording.Scenario.Rows.VineCount;
        var seen = $"{LeavesText(values.Length)} on {(vines == 1 ? "one vine" : $"{vines} vines")}, "
            + $"which the row repeats, seen {FromText(from)}";
        var known = values.Where(float.IsFinite).Order().ToArray();
        if (values.Length == 0) return $"{seen}.";
        if (moment.Quantity == LeafQuantity.Shoot || known.Length == 0)
            return $"{seen}; "
                + (known.Length == 0 ? "nothing is known of them yet." : "each shoot has its color.");
        var (low, middle, high) = (Text(known[0]), Text(known[known.Length / 2]), Text(known[^1]));
        var name = QuantityText.Name(moment.Quantity).ToLowerInvariant();
        var dark = DarkHours.IsDark(recording, moment.Day, (int)moment.Hour)
            ? QuantityText.InTheDark(moment.Quantity) : "";
        if (dark.Length > 0) dark = $", {dark}";
        var unit = QuantityText.Unit(moment.Quantity, units);
        if (low == high) return $"{seen}; {name}{dark}: {low} {unit} for all.";
        return $"{seen}; {name}{dark}{(dark.Length > 0 ? "," : "")} {low} to {high} {unit}, "
            + $"half of the leaves at {middle} or more.";

        string Text(float value) => QuantityText.Number(moment.Quantity, value, units);
    }

    /// <summary>A sentence on a film.</summary>
    public static string FilmSentence(SeasonRecording recording, IReadOnlyList<Moment> moments, ViewPoint from)
    {
        var (first, last) = (moments[0], moments[^1]);
        var name = QuantityText.Name(first.Quantity).ToLowerInvariant();
        var (begin, end) = (recording.Row(first.Day).Date, recording.Row(last.Day).Date);
        var when = first.Day == last.Day
            ? $"on {DayText(begin)} from {TimeText(first.Hour)} to {TimeText(last.Hour)} standard time, hour by hour"
            : $"from {DayText(begin)} to {DayText(end)}, day by day";
        return $"{recording.Scenario.Name} {when}, seen {FromText(from)}, leaves colored by {name}.";
    }

    public static string DayText(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A time of day, local standard time.</summary>
    public static string TimeText(double hour)
    {
        var minutes = (int)Math.Round(hour * 60);
        return $"{minutes / 60:00}:{minutes % 60:00}";
    }

    public static string FromText(ViewPoint from) => from switch
    {
        ViewPoint.Along => "along the row",
        ViewPoint.Across => "across the row",
        ViewPoint.Sun => "as the sun sees it",
        ViewPoint.Above => "from above",
        _ => throw new ArgumentOutOfRangeException(nameof(from), from, "no such view"),
    };

    private static string LeavesText(int count) => count switch
    {
        0 => "No leaves",
        1 => "1 leaf",
        _ => count.ToString("N0", CultureInfo.InvariantCulture) + " leaves",
    };
}
