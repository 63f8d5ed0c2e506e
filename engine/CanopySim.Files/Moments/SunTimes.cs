using System.Globalization;
using CanopySim.Files.Text;

namespace CanopySim.Files.Moments;

/// <summary>A moment and a place for which the sun is asked.</summary>
public readonly record struct SunTime(
    string Text, DateTimeOffset Utc, double LatitudeDegrees, double LongitudeDegrees, double ElevationMeters);

/// <summary>
/// Reads the table of moments of <c>canopysim sun --times</c>: utc[,latitude_deg,longitude_deg,elevation_m].
/// </summary>
public static class SunTimes
{
    private const int LargestFile = 200_000_000;

    private static readonly string[] Columns = ["utc", "latitude_deg", "longitude_deg", "elevation_m"];

    /// <param name="path">The file.</param>
    /// <param name="latitude">For rows without one [°]; null where every row must have it.</param>
    /// <param name="longitude">Likewise.</param>
    /// <param name="elevation">Likewise; 0 m where nothing is given.</param>
    /// <exception cref="InputError">The table is wrong.</exception>
    public static IReadOnlyList<SunTime> Read(string path, double? latitude, double? longitude, double? elevation)
    {
        var lines = new CsvLines(StrictText.ReadBytes(path, new InputPlace(path), LargestFile, "times"), path);
        var header = lines.Header();
        var places = Columns.Select(column => header.ToList().IndexOf(column)).ToArray();
        foreach (var name in header)
        {
            if (!Columns.Contains(name))
                throw new InputError(
                    lines.Place, $"unknown column {InputError.Quote(name)}", string.Join(", ", Columns), name,
                    NearestName.Among(name, Columns));
        }

        if (places[0] < 0) throw new InputError(lines.Place, "no column utc", string.Join(",", Columns), "utc");
        if (places[1] < 0 && latitude is null) throw new InputError(
            lines.Place, "no column latitude_deg", "that column, or --latitude", "latitude_deg");
        if (places[2] < 0 && longitude is null) throw new InputError(
            lines.Place, "no column longitude_deg", "that column, or --longitude", "longitude_deg");
        var times = new List<SunTime>();
        while (lines.NextRow() is { } row)
        {
            if (row.Count != header.Count) throw new InputError(
                lines.Place, $"{row.Count} cells", $"{header.Count}, as the header has");
            times.Add(new SunTime(
                row[places[0]],
                Utc(row[places[0]], lines.Place),
                Number(row, places[1], latitude ?? 0, -90, 90, "latitude_deg", lines.Place),
                Number(row, places[2], longitude ?? 0, -180, 180, "longitude_deg", lines.Place),
                Number(row, places[3], elevation ?? 0, -450, 9000, "elevation_m", lines.Place)));
        }

        return times;
    }

    /// <summary>A moment of universal time, with or without a Z or an offset.</summary>
    public static DateTimeOffset Utc(string text, InputPlace place) =>
        DateTimeOffset.TryParse(
            text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out var utc)
            ? utc
            : throw new InputError(
                place, $"{InputError.Quote(text)} is no time", "a time such as 2025-06-21T12:00:00Z", "utc");

    private static double Number(
        IReadOnlyList<string> row, int column, double otherwise, double min, double max, string name, InputPlace place)
    {
        if (column < 0) return otherwise;
        if (double.TryParse(row[column], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value >= min && value <= max) return value;
        throw new InputError(place, InputError.Quote(row[column]), $"a number from {min} to {max}", name);
    }
}
