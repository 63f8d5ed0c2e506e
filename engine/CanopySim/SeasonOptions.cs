using CanopySim.Recording;

namespace CanopySim;

/// <summary>How a season is run.</summary>
public sealed record SeasonOptions
{
    public Quality Quality { get; init; } = Quality.Standard;

    /// <summary>Threads; results are the same for any number.</summary>
    public int Threads { get; init; } = 1;

    /// <summary>Last day that is simulated; null for the season's own end.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>Days whose leaves are listed one by one; the last day is listed always.</summary>
    public IReadOnlyList<DateOnly> LeavesOn { get; init; } = [];

    /// <summary>
    /// False leaves out what only tells of the canopy and changes nothing in it: portrait, canopy sheet, light and heat of the fruit, next
    /// year's buds.
    /// </summary>
    public bool IsAssessed { get; init; } = true;

    /// <summary>Seconds gone by, for the times in the summary: the model has no clock of its own. Null for none.</summary>
    public Func<double>? Seconds { get; init; }

    /// <summary>Told each day that is done and the share of the season that is behind [0 to 1]; null for nobody.</summary>
    public Action<DateOnly, double>? Progress { get; init; }

    /// <summary>Handed each closed day with its canopy, leaf by leaf and hour by hour; null for nobody, which is faster.</summary>
    public Action<RecordedDay>? Recorder { get; init; }

    /// <summary>Stops the season between days.</summary>
    public CancellationToken Cancellation { get; init; }
}
