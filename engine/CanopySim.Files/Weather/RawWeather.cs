namespace CanopySim.Files.Weather;

/// <summary>
/// Rows of a weather file in the engine's units, before gaps are closed. NaN is an empty cell and never leaves this
/// folder.
/// </summary>
internal sealed class RawWeather(string path, bool isDaily)
{
    public string Path { get; } = path;

    public bool IsDaily { get; } = isDaily;

    /// <summary>Start of each row's day or hour, local standard time.</summary>
    public List<DateTime> Times { get; } = [];

    /// <summary>Line of each row in the file.</summary>
    public List<int> Lines { get; } = [];

    /// <summary>Rows in which something was filled.</summary>
    public List<bool> Filled { get; } = [];

    public List<RawColumn> Columns { get; } = [];

    public TimeSpan Step => IsDaily ? TimeSpan.FromDays(1) : TimeSpan.FromHours(1);

    public int RowsPerDay => IsDaily ? 1 : 24;

    public List<double>? Find(WeatherQuantity quantity) =>
        Columns.Find(column => column.Column.Quantity == quantity)?.Values;

    public InputPlace PlaceOf(int row, WeatherColumn? column = null) => new(Path, Lines[row], column?.Index + 1);

    public string Show(DateTime time) =>
        time.ToString(IsDaily ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>A column's values, one a row.</summary>
internal sealed record RawColumn(WeatherColumn Column, List<double> Values);
