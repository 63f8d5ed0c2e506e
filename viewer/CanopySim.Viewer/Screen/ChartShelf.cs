using CanopySim.Files.Charts;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The charts of the season in sight, made when they are looked at and kept as pictures until anything of them changes.
/// </summary>
public sealed class ChartShelf(SeasonFacts facts, LeafFinder leaves) : IDisposable
{
    private const float SeasonChartHeight = 300;

    private const float TwoPanelHeight = 330;

    private const float LeafChartHeight = 290;

    private const int MostSheets = 24;

    private const int MostPictures = 6;

    private readonly Dictionary<string, ChartSheet> _sheets = [];
    private readonly List<(string Key, SKImage Image, IReadOnlyList<ChartField> Fields)> _pictures = [];

    /// <summary>The charts to choose from, with their names on buttons.</summary>
    public static IReadOnlyList<(string Stem, string Caption)> Offered { get; } =
    [
        (SeasonCharts.CarbonByLeafAge, "Carbon by age"),
        (SeasonCharts.LeafAreaByLeafAge, "Leaf area by age"),
        (SeasonCharts.FruitCarbonByLeafAge, "What fed the fruit"),
        (SeasonCharts.RipeningCapacity, "Ripening capacity"),
        (SeasonCharts.Sugar, "Sugar"),
        (SeasonCharts.DayCourse, "Through the day"),
    ];

    /// <summary>Pictures that were drawn so far: a still screen must draw none.</summary>
    public int Drawn { get; private set; }

    /// <summary>Adds the chosen chart, its caption and the values at the pointer or in sight.</summary>
    public void AddSeason(Sheet sheet, Column column)
    {
        if (facts.DayCount == 0)
        {
            column.Text("chart.none", "No day is there yet.");
            return;
        }

        var (state, model) = (sheet.State, sheet.Model);
        var date = facts.DateOf(state.Day);
        var chart = SheetOf(state.Chart, state);
        var isDay = state.Chart == SeasonCharts.DayCourse;
        var now = state.Chart == SeasonCharts.FruitCarbonByLeafAge ? (double?)null : isDay ? state.Hour + 0.5
            : ChartAxis.PlaceOf(date);
        Action<double>? go = state.Chart == SeasonCharts.FruitCarbonByLeafAge ? null
            : isDay ? value => model.SetHour((int)Math.Clamp(Math.Floor(value), 0, HourTrack.Hours - 1))
            : value => model.SetDay(facts.DayOf(DateOnly.FromDayNumber((int)Math.Round(value))));
        Add(sheet, column, chart, "chart.view", isDay ? $"{state.Chart}:{state.Day}" : state.Chart, isDay
            ? TwoPanelHeight : SeasonChartHeight, now, go);
        column.Gap(6);
        column.Text("chart.caption", facts.Recording.IsFinished || isDay ? chart.Caption
            : "The season is being computed: this is what is there so far.", isQuiet: true);
        column.Gap(8);
        var (heading, rows) = ChartReadings.At(facts, leaves, state, model.ChartPointer ?? now);
        column.Text("chart.at", heading, TextKind.Strong);
        column.Gap(2);
        for (var i = 0; i < rows.Count; i++) column.Pair($"chart.value.{Measure.Number(i, 0)}", rows[i].What,
            rows[i].Value);
    }

    /// <summary>Adds a leaf's course with the values of the day in sight or under the pointer.</summary>
    public void AddLeaf(Sheet sheet, Column column, int leaf)
    {
        var state = sheet.State;
        var key = $"leaf:{leaf}:{facts.DayCount}";
        if (!_sheets.TryGetValue(key, out var chart))
        {
            if (_sheets.Count > MostSheets) _sheets.Clear();
            _sheets[key] = chart = LeafCourseChart.Of(leaves.Course(leaf), facts.DateOf(0),
                facts.DateOf(facts.DayCount - 1), facts.Stages);
        }

        var date = facts.DateOf(state.Day);
        Add(
            sheet, column, chart, "leaf.chart", $"leaf:{leaf}", LeafChartHeight, ChartAxis.PlaceOf(date),
            value => sheet.Model.SetDay(facts.DayOf(DateOnly.FromDayNumber((int)Math.Round(value)))));
        column.Gap(4);
        var at = sheet.Model.ChartPointer is { } place ? DateOnly.FromDayNumber((int)Math.Round(place)) : date;
        column.Text("leaf.at", ChartReadings.OfLeaf(leaves, facts, leaf, at, state.Units), isQuiet: true);
    }

    public void Dispose()
    {
        foreach (var (_, image, _) in _pictures) image.Dispose();
        _pictures.Clear();
    }

    private ChartSheet SheetOf(string stem, ViewState state)
    {
        var key = stem == SeasonCharts.DayCourse ? $"{stem}:{state.Day}"
            : $"{stem}:{state.Units}:{facts.DayCount}:{facts.Recording.IsFinished}";
        if (_sheets.TryGetValue(key, out var sheet)) return sheet;
        if (_sheets.Count > MostSheets) _sheets.Clear();
        return _sheets[key] = stem == SeasonCharts.DayCourse
            ? DayCourseChart.Of(facts.DateOf(state.Day),
                DayCourseChart.Hours(facts.Recording.Hours(state.Day), leaves.AreasOf(state.Day)))
            : SeasonCharts.Sheets(facts.Result(), facts.Recording.Scenario, state.Units).First(chart =>
                chart.Stem == stem);
    }

    private void Add(
        Sheet sheet, Column column, ChartSheet chart, string name, string key, float height, double? now,
            Action<double>? go)
    {
        var bounds = column.Take(height);
        var size = new ChartSize((int)(bounds.Width / sheet.Scale), (int)height);
        var surface = sheet.State.Theme == ScreenTheme.Dark ? ChartSurface.Dark : ChartSurface.Day;
        var full = $"{key}:{size}:{sheet.Scale}:{sheet.State.Theme}:{sheet.State.Units}:"
            + $"{facts.DayCount}:{facts.Recording.IsFinished}";
        var known = _pictures.FindIndex(picture => picture.Key == full);
        if (known < 0)
        {
            using var drawn = SKSurface.Create(new SKImageInfo((int)bounds.Width, (int)bounds.Height));
            drawn.Canvas.Scale(sheet.Scale);
            var fields = chart.Draw(drawn.Canvas, size, surface);
            _pictures.Add((full, drawn.Snapshot(), fields));
            Drawn++;
            if (_pictures.Count > MostPictures)
            {
                _pictures[0].Image.Dispose();
                _pictures.RemoveAt(0);
            }

            known = _pictures.Count - 1;
        }

        sheet.Add(new ChartView
        {
            Name = name,
            Bounds = new SKRect(bounds.Left, bounds.Top, bounds.Left + (int)bounds.Width, bounds.Top
                + (int)bounds.Height),
            Image = _pictures[known].Image,
            Fields = _pictures[known].Fields,
            Scale = sheet.Scale,
            Now = now,
            Go = go,
            Key = go is null ? "" : "← →",
        });
    }
}
