using System.Text;
using CanopySim.Geometry;
using CanopySim.Recording;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Recording;

/// <summary>
/// A recorded season, or one that is still being computed: days are there as they come. Blocks are read when they are asked for; any thread may ask.
/// </summary>
public sealed class SeasonRecording : IDisposable
{
    private readonly IRecordingBlocks _blocks;
    private readonly string _name;
    private readonly Lock _lock = new();
    private readonly List<(DayRow Row, int Canopy, RecordedLeaves Leaves)> _days = [];
    private (int Number, DrawnCanopy Canopy)? _lastCanopy;
    private (int Number, RecordedHours Hours)? _lastHours;
    private SeasonResult? _outcome;
    private Dictionary<DateOnly, WeatherDay>? _weather;

    /// <param name="blocks">Where its blocks are.</param>
    /// <param name="name">What messages call it.</param>
    /// <exception cref="InputError">It is damaged.</exception>
    public SeasonRecording(IRecordingBlocks blocks, string name)
    {
        (_blocks, _name) = (blocks, name);
        if (blocks.Count(BlockKind.Head) == 0) throw FileBlocks.Damaged(name, "its head is missing");
        Head = Checked(() => RecordingJson.Read<RecordingHead>(blocks.Read(BlockKind.Head, 0)));
    }

    public RecordingHead Head { get; }

    public Scenario Scenario => Head.Scenario;

    /// <summary>Days that are there.</summary>
    public int DayCount => _blocks.Count(BlockKind.Day);

    /// <summary>True where no day will follow.</summary>
    public bool IsFinished => _blocks.Count(BlockKind.Outcome) > 0;

    /// <summary>Opens a recording's file.</summary>
    /// <exception cref="InputError">The file cannot be read, is no recording, or is a damaged one.</exception>
    public static SeasonRecording Open(string path)
    {
        var blocks = FileBlocks.Open(path);
        try
        {
            var recording = new SeasonRecording(blocks, path);
            if (!recording.IsFinished || blocks.Count(BlockKind.Hours) != blocks.Count(BlockKind.Day) || blocks.Count(BlockKind.Weather) == 0)
                throw FileBlocks.Damaged(path, "it is not complete");
            return recording;
        }
        catch
        {
            blocks.Dispose();
            throw;
        }
    }

    /// <summary>The day's row of <c>days.csv</c>.</summary>
    public DayRow Row(int day) => DayAt(day).Row;

    /// <summary>What leaves are and did on a day, in the order of the canopy's blades.</summary>
    public RecordedLeaves Leaves(int day) => DayAt(day).Leaves;

    /// <summary>Number of the canopy of a day, −1 where there is none: days with the same number look alike.</summary>
    public int CanopyNumber(int day) => DayAt(day).Canopy;

    /// <summary>The canopy of a day; empty where there is none.</summary>
    public DrawnCanopy Canopy(int day)
    {
        var number = DayAt(day).Canopy;
        if (number < 0) return new DrawnCanopy([], [], []);
        lock (_lock)
        {
            if (_lastCanopy is { } last && last.Number == number) return last.Canopy;
            var canopy = Read(BlockKind.Canopy, number, CanopyBytes.Read);
            var leaves = DayAt(day).Leaves.Count;
            if (leaves > 0 && leaves != canopy.Blades.Count) throw FileBlocks.Damaged(_name, "a day's canopy has other leaves");
            _lastCanopy = (number, canopy);
            return canopy;
        }
    }

    /// <summary>The hours of a day.</summary>
    public RecordedHours Hours(int day)
    {
        lock (_lock)
        {
            if (_lastHours is { } last && last.Number == day) return last.Hours;
            var hours = Read(BlockKind.Hours, day, DayBytes.ReadHours);
            if (hours.Count > 0 && hours.LeafCount != DayAt(day).Leaves.Count) throw FileBlocks.Damaged(_name, "a day's hours are of other leaves");
            _lastHours = (day, hours);
            return hours;
        }
    }

    /// <summary>The weather of a day.</summary>
    public WeatherDay WeatherOf(int day)
    {
        var date = DayAt(day).Row.Date;
        lock (_lock)
        {
            _weather ??= Read(BlockKind.Weather, 0, WeatherBytes.Read).ToDictionary(of => of.Date);
            return _weather.TryGetValue(date, out var weather)
                ? weather : throw FileBlocks.Damaged(_name, "a day's weather is missing");
        }
    }

    /// <summary>The season's weather, to compute it again.</summary>
    public WeatherSeries Weather() => new()
    {
        Days = Read(BlockKind.Weather, 0, WeatherBytes.Read),
        EstimatedInputs = Head.EstimatedInputs,
    };

    /// <summary>What the season gave, with its days; null while it is being computed. Leaves and picture are not in it.</summary>
    public SeasonResult? Outcome()
    {
        if (!IsFinished) return null;
        lock (_lock)
        {
            return _outcome ??= Checked(() => RecordingJson.Read<SeasonResult>(_blocks.Read(BlockKind.Outcome, 0))) with
            {
                Days = [.. Enumerable.Range(0, DayCount).Select(Row)],
            };
        }
    }

    public void Dispose() => _blocks.Dispose();

    // Rows and leaves of all days are kept: they are small, and a leaf's course through the season asks for every one.
    private (DayRow Row, int Canopy, RecordedLeaves Leaves) DayAt(int day)
    {
        lock (_lock)
        {
            while (_days.Count <= day) _days.Add(Read(BlockKind.Day, _days.Count, ReadDay));
            return _days[day];
        }
    }

    private (DayRow Row, int Canopy, RecordedLeaves Leaves) ReadDay(BinaryReader reader)
    {
        var row = RecordingJson.Read<DayRow>(reader.ReadBytes(ByteCounts.Read(reader)));
        var canopy = reader.ReadInt32();
        if (canopy < -1 || canopy >= _blocks.Count(BlockKind.Canopy)) throw new InvalidDataException("a day has no canopy");
        var leaves = DayBytes.ReadLeaves(reader);
        return (row, canopy, leaves);
    }

    private T Read<T>(BlockKind kind, int number, Func<BinaryReader, T> read) => Checked(() =>
    {
        using var reader = new BinaryReader(new MemoryStream(_blocks.Read(kind, number), writable: false), Encoding.UTF8);
        return read(reader);
    });

    private T Checked<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception error) when (error is IOException or InvalidDataException)
        {
            throw FileBlocks.Damaged(_name, error.Message);
        }
    }
}
