using CanopySim.Files.Forecast;
using Xunit;

namespace CanopySim.Files.Tests.Forecast;

/// <summary>What a forecast rests on: nothing of a later day, and every wrong input said so.</summary>
public sealed class ForecastInputTest : IDisposable
{
    private const string Head = "date,tmin °C,tmax °C,rain mm,solar MJ/m2,rh %,wind m/s\n";
    private static readonly DateOnly Day = new(2021, 5, 20);

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Weather_after_the_day_changes_nothing()
    {
        var (one, other) = (Read(Block(tail: 0)), Read(Block(tail: 9)));
        Assert.Equal(Day, one.AsOf);
        Assert.Equal(one.Record.Days, other.Record.Days);
        Assert.Equal(one.Known.Days.SelectMany(day => day.Hours), other.Known.Days.SelectMany(day => day.Hours));
        Assert.Equal(Day, one.Known.Days[^1].Date);
        Assert.Equal(Day, one.Record.FirstDay.AddDays(one.Record.DayCount - 1));
    }

    [Fact]
    public void The_day_is_the_last_of_the_weather_where_that_ends_soon_after_the_notes() =>
        Assert.Equal(new DateOnly(2021, 6, 4), Read(Block(to: new DateOnly(2021, 6, 4))).AsOf);

    [Fact]
    public void The_day_is_the_last_note_where_the_weather_goes_on() =>
        Assert.Equal(Day, Read(Block(to: new DateOnly(2021, 6, 30))).AsOf);

    [Fact]
    public void Later_notes_are_not_used()
    {
        var input = Read(Block(), asOf: new DateOnly(2021, 5, 1));
        Assert.Equal(1, input.LaterNotes);
        Assert.Single(input.Noted.Observations);
    }

    [Fact]
    public void An_outlook_goes_on_from_the_next_day()
    {
        var outlook = Write("outlook.csv", Head + Days(new DateOnly(2021, 5, 18), new DateOnly(2021, 5, 30), 3));
        var input = Read(Block(), outlook: outlook);
        Assert.True(input.HasOutlook);
        Assert.Equal(new DateOnly(2021, 5, 30), input.Known.Days[^1].Date);
        Assert.Equal(Read(Block()).Known.Days[^1].Hours, input.Known.Days.Single(day => day.Date == Day).Hours);
    }

    [Theory]
    [InlineData("2021-05-22", "2021-05-30")]
    [InlineData("2021-05-01", "2021-05-20")]
    public void An_outlook_that_leaves_a_gap_is_refused(string from, string to)
    {
        var outlook = Write("outlook.csv", Head + Days(DateOnly.Parse(from), DateOnly.Parse(to), 0));
        var error = Assert.Throws<InputError>(() => Read(Block(), outlook: outlook));
        Assert.Contains($"days from {from} to {to}; expected an outlook that holds 2021-05-21", error.Message);
    }

    [Theory]
    [InlineData("2021-01-15")]
    [InlineData("2022-01-15")]
    public void A_day_outside_season_or_weather_is_refused(string day)
    {
        var error = Assert.Throws<InputError>(() => Read(Block(), asOf: DateOnly.Parse(day)));
        Assert.Equal($"--as-of: {day}; expected a day of the season that the weather covers, 2021-02-01 to 2021-11-30", error.Message);
    }

    [Fact]
    public void A_record_shorter_than_a_year_is_refused()
    {
        var error = Assert.Throws<InputError>(() => Read(Block(from: new DateOnly(2021, 1, 1))));
        Assert.Contains("140 days of weather up to 2021-05-20; expected a whole year or more", error.Message);
    }

    [Fact]
    public void A_note_of_another_season_is_refused()
    {
        var error = Assert.Throws<InputError>(() => Read(Block(), notes: "date,what,value,unit\n2020-05-03,nodes,8,\n", asOf: Day));
        Assert.Contains("notes.csv:2: ", error.Message);
        Assert.Contains("2020-05-03; expected a day of the season 2021-02-01 to 2021-11-30", error.Message);
    }

    [Fact]
    public void Notes_without_a_line_need_the_day()
    {
        var error = Assert.Throws<InputError>(() => Read(Block(), notes: "date,what,value,unit\n"));
        Assert.Contains("no notes; expected at least one note, or the day with --as-of", error.Message);
    }

    private ForecastInput Read(string block, string? notes = null, DateOnly? asOf = null, string? outlook = null) => ForecastInput.Read(
        block, [], Write("notes.csv", notes ?? "date,what,value,unit\n2021-04-20,nodes,7,\n2021-05-20,nodes,17,\n"), asOf, outlook);

    private string Block(DateOnly? from = null, DateOnly? to = null, double tail = 0)
    {
        var first = from ?? new DateOnly(2020, 1, 1);
        Write("weather.csv", Head + Days(first, Day, 0) + Days(Day.AddDays(1), to ?? new DateOnly(2021, 12, 31), tail));
        return Write(
            "scenario.yaml",
            """
            name: Noted
            site: {latitude: 38.4 deg, longitude: -122.3 deg, elevation: 60 m, time_zone: "UTC-08:00"}
            weather: {file: weather.csv}
            season: {year: 2021}
            """);
    }

    private static string Days(DateOnly from, DateOnly to, double warmer) => string.Concat(
        Enumerable.Range(0, to.DayNumber - from.DayNumber + 1).Select(i =>
        {
            var day = from.AddDays(i);
            var mean = 15 - (8 * Math.Cos(2 * Math.PI * day.DayOfYear / 365)) + warmer;
            return FormattableString.Invariant(
                $"{day:yyyy-MM-dd},{mean - 6:0.0},{mean + 6:0.0},{(day.Day % 9 == 0 ? 4 : 0)},{15 + (day.Day % 5)},60,2\n");
        }));

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
