using CanopySim.Drawing.Leaves;
using CanopySim.Files.Recording;
using CanopySim.Viewer.Screen;

namespace CanopySim.Viewer.State;

/// <summary>A season with what the screen keeps of it.</summary>
public sealed class SeasonInSight : IDisposable
{
    private IReadOnlyList<DateOnly> _dates = [];
    private IReadOnlyList<double> _leafAreas = [];
    private RipeningShares? _shares;

    public SeasonInSight(SeasonRecording recording)
    {
        Recording = recording;
        Facts = new SeasonFacts(recording);
        Leaves = new LeafFinder(recording);
        Charts = new ChartShelf(Facts, Leaves);
    }

    public SeasonRecording Recording { get; }

    public SeasonFacts Facts { get; }

    public LeafFinder Leaves { get; }

    public ChartShelf Charts { get; }

    /// <summary>Shares in the ripening; null until it is over.</summary>
    public RipeningShares? Shares => _shares ??= RipeningShares.Of(Recording);

    /// <summary>The days that are there.</summary>
    public IReadOnlyList<DateOnly> Dates
    {
        get
        {
            KeepUp();
            return _dates;
        }
    }

    /// <summary>Their leaf areas [m² per vine].</summary>
    public IReadOnlyList<double> LeafAreas
    {
        get
        {
            KeepUp();
            return _leafAreas;
        }
    }

    public void Dispose() => Charts.Dispose();

    private void KeepUp()
    {
        var count = Recording.DayCount;
        if (_dates.Count == count) return;
        var rows = Enumerable.Range(0, count).Select(Recording.Row).ToList();
        (_dates, _leafAreas) = ([.. rows.Select(row => row.Date)], [.. rows.Select(row => row.LeafAreaM2PerVine)]);
    }
}
