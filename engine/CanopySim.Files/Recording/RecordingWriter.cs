using System.Text;
using CanopySim.Files.Results;
using CanopySim.Geometry;
using CanopySim.Recording;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Recording;

/// <summary>Writes a season as it is computed: head and weather first, then day by day, and what it gave last.</summary>
public sealed class RecordingWriter
{
    public const string FileName = "season.bin";

    private readonly IBlockTarget _target;
    private DrawnCanopy? _canopy;
    private int _canopies;

    /// <param name="target">Where the blocks go.</param>
    /// <param name="scenario">The block.</param>
    /// <param name="weather">Its weather; the days of the season's years are kept.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="quality">Quality of the season.</param>
    /// <param name="inputs">Hashes of what was read.</param>
    public RecordingWriter(
        IBlockTarget target, Scenario scenario, WeatherSeries weather, double utcOffsetHours, Quality quality, InputHashes inputs)
    {
        _target = target;
        var calendar = SeasonCalendar.Of(scenario, weather);
        _target.Add(BlockKind.Head, RecordingJson.Bytes(new RecordingHead
        {
            EngineVersion = SummaryJson.EngineVersion,
            Scenario = scenario with { Season = scenario.Season with { Year = calendar.Year } },
            UtcOffsetHours = utcOffsetHours,
            Quality = quality.ToString().ToLowerInvariant(),
            Inputs = inputs,
            EstimatedInputs = weather.EstimatedInputs,
        }));

        // Sums of published dates run from the calendar's winter.
        var from = new DateOnly(calendar.Year, calendar.HeatFrom.Month > 6 ? 7 : 1, 1);
        Add(BlockKind.Weather, writer => WeatherBytes.Write(
            writer, [.. weather.Days.Where(day => day.Date >= from && day.Date <= calendar.LastDay)]));
    }

    /// <summary>Adds a closed day; <see cref="SeasonOptions.Recorder"/> may be this.</summary>
    public void Add(RecordedDay day)
    {
        if (!ReferenceEquals(day.Canopy, _canopy) && !(day.Canopy.Blades.Count == 0 && day.Canopy.Stalks.Count == 0))
        {
            _canopy = day.Canopy;
            _canopies++;
            Add(BlockKind.Canopy, writer => CanopyBytes.Write(writer, day.Canopy));
        }

        Add(BlockKind.Hours, writer => DayBytes.Write(writer, day.Hours));
        Add(BlockKind.Day, writer =>
        {
            var row = RecordingJson.Bytes(day.Row);
            writer.Write(row.Length);
            writer.Write(row);
            writer.Write(ReferenceEquals(day.Canopy, _canopy) ? _canopies - 1 : -1);
            DayBytes.Write(writer, day.Leaves);
        });
    }

    /// <summary>Adds what the season gave. Its days are there already, its picture can be drawn again.</summary>
    public void Finish(SeasonResult result) =>
        _target.Add(BlockKind.Outcome, RecordingJson.Bytes(result with { Days = [], Portrait = null, Leaves = [] }));

    private void Add(BlockKind kind, Action<BinaryWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var writer = new BinaryWriter(bytes, Encoding.UTF8, leaveOpen: true)) write(writer);
        _target.Add(kind, bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }
}
