using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;

namespace CanopySim.Viewer.State;

/// <summary>What the reader chose to see.</summary>
public sealed record ViewState
{
    /// <summary>Sizes of text, against the smallest that all screens can show.</summary>
    public static IReadOnlyList<double> TextScales { get; } = [0.85, 1, 1.15, 1.3, 1.5, 1.75, 2];

    /// <summary>Number of the day in the recording.</summary>
    public int Day { get; init; }

    /// <summary>Hour of the day: 13 is 13:00 to 14:00 local standard time.</summary>
    public int Hour { get; init; } = 13;

    public LeafQuantity Quantity { get; init; } = LeafQuantity.Age;

    public RangeMode Range { get; init; }

    /// <summary>Number of the chosen leaf.</summary>
    public int? LeafId { get; init; }

    public SidePanel Panel { get; init; }

    /// <summary>Stem of the chart that is shown.</summary>
    public string Chart { get; init; } = SeasonCharts.CarbonByLeafAge;

    public ScreenTheme Theme { get; init; }

    public Units Units { get; init; }

    public double TextScale { get; init; } = 1;

    public Playing Playing { get; init; }

    /// <summary>Whether the season that was tried is in the picture instead of the one that was opened.</summary>
    public bool ShowsTrial { get; init; }
}

public enum RangeMode
{
    /// <summary>The same for every season, so that pictures can be put side by side.</summary>
    Fixed,

    /// <summary>From the least to the most of the leaves in the picture.</summary>
    Fitted,
}

public enum SidePanel
{
    None,
    Colors,
    Leaf,
    Charts,
    Trial,
    Help,
}

public enum ScreenTheme
{
    Light,
    Dark,
}

public enum Playing
{
    Nothing,
    Season,
    Day,
}
