namespace CanopySim.Runner.Tests.Validation;

/// <summary>How a figure stands to the model: what it can prove.</summary>
internal enum Standing
{
    /// <summary>A parameter was fitted to this very figure: that it is met proves nothing new.</summary>
    Fitted,

    /// <summary>Follows by arithmetic from what is fitted or typed in.</summary>
    Arithmetic,

    /// <summary>No parameter was fitted to it, but it was looked at while the model was made, and choices followed it.</summary>
    Watched,

    /// <summary>Nothing was fitted to it.</summary>
    Predicted,

    /// <summary>As predicted, but what it is held against is common practice without a source.</summary>
    CommonPractice,

    /// <summary>Told, not judged.</summary>
    Reported,
}

internal enum Verdict
{
    Passed,
    Failed,
    Reported,
}

/// <summary>
/// A figure from outside beside ours. It knows its limit, so that its verdict is computed and never typed; what the model did not
/// reach fails.
/// </summary>
internal sealed record Finding
{
    /// <summary>What it is, with its unit in brackets.</summary>
    public required string Quantity { get; init; }

    /// <summary>Where the figure stands; "from memory" or "common practice, no source" where that is so.</summary>
    public required string Source { get; init; }

    public required Standing Standing { get; init; }

    /// <summary>Ours, one or several that are judged together; null for what was not reached.</summary>
    public required IReadOnlyList<double?> Ours { get; init; }

    /// <summary>What ours must keep; null where it is only told.</summary>
    public required Limit? Limit { get; init; }

    /// <summary>The figure as published; where it is left out, the limit says it.</summary>
    public string? Published { get; init; }

    /// <summary>How a value of ours is written.</summary>
    public Func<double, string> Format { get; init; } = NumberSay.Number;

    public string Note { get; init; } = "";

    public Verdict Verdict => Limit is null ? Verdict.Reported
        : Values() is { } values && Limit.Holds(values) ? Verdict.Passed
        : Verdict.Failed;

    public string PublishedText => Published ?? Limit?.Published ?? "";

    public string OursText => string.Join(" / ", Ours.Select(value => value is { } reached ? Format(reached) : "not reached"));

    public string LimitText => Limit?.Text ?? "";

    public string DifferenceText => Limit is not null && Values() is { } values ? Limit.Difference(values) : "";

    public static Finding Judged(string quantity, Standing standing, Limit limit, string source, params double?[] ours)
    {
        if (standing == Standing.Reported) throw new ArgumentException("what is judged is not only reported", nameof(standing));
        return new Finding { Quantity = quantity, Standing = standing, Limit = limit, Source = source, Ours = ours };
    }

    public static Finding Told(string quantity, string published, string source, params double?[] ours) =>
        new() { Quantity = quantity, Standing = Standing.Reported, Limit = null, Published = published, Source = source, Ours = ours };

    /// <summary>The same for days.</summary>
    public Finding OfDates() => this with { Format = NumberSay.Day };

    private double[]? Values() =>
        Ours.Count > 0 && Ours.All(value => value is { } reached && double.IsFinite(reached)) ? [.. Ours.Select(value => value!.Value)] : null;
}
