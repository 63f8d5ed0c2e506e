namespace CanopySim.Weather;

/// <summary>Complete weather by day, and what of it was estimated.</summary>
public sealed record WeatherSeries
{
    public required IReadOnlyList<WeatherDay> Days { get; init; }

    /// <summary>Names of the quantities that were estimated, as <c>summary.json</c> lists them ("global_radiation", "hourly_temperature", …).</summary>
    public required IReadOnlyList<string> EstimatedInputs { get; init; }

    /// <summary>Readings that were filled because the scenario allows it.</summary>
    public int FilledGaps { get; init; }
}
