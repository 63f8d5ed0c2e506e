using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Files.Recording;

namespace CanopySim.Drawing.Painting;

/// <summary>What of a recording is looked at.</summary>
/// <param name="Day">Number of the day.</param>
/// <param name="Hour">Local standard time [h]; leaves show the hour that holds it, the sun stands where it then
/// is.</param>
/// <param name="Quantity">What leaves are colored by.</param>
public sealed record Moment(int Day, double Hour, LeafQuantity Quantity);

/// <summary>A recording before the painter: tells it only what has changed from one moment to the next.</summary>
public sealed class RecordingScene : IDisposable
{
    private readonly SeasonRecording _recording;
    private readonly Lazy<RipeningShares?> _shares;
    private int _canopy = -2;
    private float _ripeness = -1;
    private DateOnly? _pathDay;
    private IReadOnlyList<SunPathPoint> _path = [];

    /// <param name="context">Current on this thread.</param>
    /// <param name="recording">The season.</param>
    public RecordingScene(IGlContext context, SeasonRecording recording)
    {
        _recording = recording;
        _shares = new Lazy<RipeningShares?>(() => RipeningShares.Of(recording));
        Painter = new CanopyPainter(context);
        Painter.SetBlock(recording.Scenario);
        Block = BlockShape.Of(recording.Scenario);
        Camera = new Camera(Block);
    }

    public CanopyPainter Painter { get; }

    public BlockShape Block { get; }

    public Camera Camera { get; }

    /// <summary>Values of the blades that are shown.</summary>
    public float[] Values { get; private set; } = [];

    /// <summary>How they are colored.</summary>
    public LeafColoring Coloring { get; private set; } = LeafColoring.Fixed(LeafQuantity.Age);

    /// <summary>Towards the sun; null while it is down.</summary>
    public Vector3? Sun { get; private set; }

    /// <summary>The day's path of the sun.</summary>
    public IReadOnlyList<SunPathPoint> Path => _path;

    /// <summary>Tells the painter of a moment.</summary>
    public void Show(Moment moment)
    {
        var (number, ripeness) = (_recording.CanopyNumber(moment.Day), Ripeness.Of(_recording, moment.Day));
        if (number != _canopy || ripeness != _ripeness)
        {
            Painter.SetCanopy(_recording.Canopy(moment.Day), ripeness);
            (_canopy, _ripeness) = (number, ripeness);
        }

        var shares = moment.Quantity == LeafQuantity.RipeningShare ? _shares.Value : null;
        Values = LeafValues.Of(_recording, moment.Day, (int)moment.Hour, moment.Quantity, shares);
        Coloring = LeafColoring.Fixed(moment.Quantity);
        Painter.SetShares(Coloring.SharesOf(Values), Coloring.Table());
        var date = _recording.Row(moment.Day).Date;
        var (scenario, offset) = (_recording.Scenario, _recording.Head.UtcOffsetHours);
        if (date != _pathDay) (_pathDay, _path) = (date, SunPath.Of(scenario, offset, date));
        var sun = SunPath.At(scenario, offset, date, moment.Hour);
        Sun = sun.Z > 0 ? sun : null;
        Painter.SetSun(Sun, _path);
    }

    public void Dispose() => Painter.Dispose();
}
