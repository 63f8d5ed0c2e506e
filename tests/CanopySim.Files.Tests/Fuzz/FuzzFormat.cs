using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CanopySim.Files.Batch;
using CanopySim.Files.Moments;
using CanopySim.Files.Notes;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Geometry;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>
/// A format to be fuzzed: whole files to damage, and how a damaged one is read. The whole ones are small, so that a change meets
/// something that matters.
/// </summary>
internal sealed partial record FuzzFormat(string Name, string FileName, IReadOnlyList<byte[]> Whole, Action<string, long> Read)
{
    /// <summary>Bytes of memory that reading other files may take, which the file names: a few scenarios for a plan.</summary>
    public long BytesBeside { get; private init; }

    /// <summary>Bytes of memory that each byte of a large file may take.</summary>
    public long BytesPerByte { get; private init; } = FuzzLimits.BytesPerByte;

    private static readonly Site Place = new() { Latitude = 47.6, Longitude = -122.3, TimeZone = "UTC-08:00" };

    public static readonly FuzzFormat Scenario = new("scenario", "block.yaml", Encode(Least, Starter(all: false), Starter(all: true)), (path, _) => ScenarioFile.Read(path));

    public static readonly FuzzFormat Weather = new("weather", "weather.csv", Encode(DailyTable(), HourlyTable(), LooseTable()), ReadWeather);

    public static readonly FuzzFormat Epw = new("epw", "weather.epw", Encode(EpwTable(), EpwOfTwoYears()), ReadWeather);

    public static readonly FuzzFormat Sensors = new("sensors", "sensors.csv", Encode(SensorsByWord(), SensorsByVector()), (path, _) => SensorTable.Read(path, new Cell(2.4, 1.5, 0.1, -0.05), 30));

    public static readonly FuzzFormat Plan = new("plan", "plan.yaml", Encode(PlanOfLists, PlanOfDistributions), (path, _) => new PlanItems(PlanFile.Read(path)))
    {
        BytesBeside = 10_000_000,
    };

    public static readonly FuzzFormat Notes = new("notes", "notes.csv", Encode(NotesByLine(), NotesByColumn), (path, _) => NotesFile.Read(path))
    {
        // Rows are short, and each word of a date or a measure is looked at by itself: 390 measured.
        BytesPerByte = 450,
    };

    public static readonly IReadOnlyList<FuzzFormat> All = [Scenario, Weather, Epw, Sensors, Plan, Notes];

    /// <summary>Files that stand beside a damaged one: what a scenario names.</summary>
    public static IEnumerable<(string Name, byte[] Bytes)> Beside => [("weather.csv", Weather.Whole[0]), ("base.yaml", Scenario.Whole[2]), ("small.yaml", Scenario.Whole[1])];

    private const string Least = """
        name: small block
        site:
          latitude: 47.6 deg
          longitude: -122.3 deg
          time_zone: UTC-08:00
        weather: {file: weather.csv, columns: {rain: "rain [mm]", wind: "wind (mph)"}}
        based_on: base.yaml
        leaf_age:
          points: [[0 d, 0.2], [35 d, 1], [120 d, 50 %]]

        """;

    private const string PlanOfLists = """
        name: small-plan
        scenarios: [small.yaml]
        weather: {years: 2014 to 2015, seeds: [3, 7 to 8]}
        vary:
          rows.spacing: {values: [2 m, 2.4 m]}
          soil.transpirable_water: {from: 60 mm, to: 180 mm, steps: 3}
        set: {season.target_sugar: 23 Brix}
        replicates: 2
        quality: rough
        until: 06-30
        seed: 5
        shard: {items: 4}

        """;

    private const string PlanOfDistributions = """
        name: drawn
        scenarios: [small.yaml, base.yaml]
        vary:
          rows.spacing: {distribution: uniform, from: 2 m, to: 3 m}
          leaf.vcmax25: {distribution: normal, mean: 57 umol m-2 s-1, standard_deviation: 6 umol m-2 s-1}
        design: {kind: latin_hypercube, points: 8}
        shard: {minutes: 10}

        """;

    private static string NotesByLine() =>
        "date,vine,shoot,what,value,unit,note\n" + Rows(12, row => $"{Day(row):yyyy-MM-dd},{row},a,{(row % 2 == 0 ? "shoot_length" : "nodes")},{10 + row},{(row % 2 == 0 ? "cm" : "")},\n")
        + "2014-05-01,,,bloom,50,%,east\n2014-05-02,,,leaf_size,11 x 12.5,cm,\n2014-05-03,,,spray,sulfur first cover,,\n2014-05-04,1,a,tip,tendrils above tip,,\n";

    private const string NotesByColumn = "date;vine;shoot;shoot_length (in);nodes;clusters\n2014-05-01;3;a;12 1/2;9;2\n5 May 2014;3;b;14;10;\n";

    // Every other file may be filled, by its index; a typical year is taken for one with a 29 February.
    private static void ReadWeather(string path, long index) =>
        WeatherFile.Read(path, new WeatherOptions { File = path, FillGaps = index % 2 == 1 }, Place, year: 2016);

    // The starter without remarks; where all is asked for, every key that it only shows is given too.
    private static string Starter(bool all)
    {
        var lines = ScenarioFile.Starter().Split('\n').Select(line => all ? ShownKey().Replace(line, "$1$2") : line)
            .Where(line => !line.TrimStart().StartsWith('#')).Select(line => line.Split("    #")[0].TrimEnd())
            // Weather of a seed needs a whole year of record, more than is worth damaging.
            .Where(line => line != "  seed: 1")
            // Lengths that the form of the starter has no use for are refused.
            .Where(line => line.Split(':')[0].Trim() is not ("lower_cordon_height" or "head_height" or "cordon_distance" or "wall_tilt"));
        return string.Join('\n', lines.Select(line => line == "  topping:" ? "  topping:\n    - on: 2014-07-01\n      height: 2.1 m\n    - when_shoots_reach: 6 ft\n      nodes: 16" : line));
    }

    private static string DailyTable() =>
        "date,tmin,tmax,rain [mm],rh,wind (mph)\n" + Rows(40, day => $"{Day(day):yyyy-MM-dd},{5 + (day % 7)},{15 + (day % 9)},{day % 3},{60 + (day % 5)},4.5\n");

    private static string HourlyTable() =>
        "time;temp [°C];rh_%;ghi W/m2;pressure\n" + Rows(60, hour => $"{Day(hour / 24):yyyy-MM-dd}T{hour % 24:00}:00;{hour % 24};60;{hour % 24 * 10};1013\n");

    // Quotes, remarks, empty cells, a separate column for the hour, units to convert.
    private static string LooseTable() =>
        "# a station\n\"Date\"\tHour\tTemperature (°F)\tDew Point [°F]\tPrecip in\tdirection\n" +
        Rows(48, hour => $"{Day(hour / 24):yyyy/MM/dd}\t{hour % 24}\t\"{50 + (hour % 24)}\"\t{(hour == 7 ? "NA" : "41")}\t0.01\tSSW\n");

    private static string SensorsByWord() =>
        "# a bar\nsensor,x_m,y_m,z_m,facing\n" + Rows(30, index => $"bar {index},0.1,{0.05 * index},1.1,{(index % 3 == 0 ? "up" : index % 3 == 1 ? "West" : "")}\n");

    private static string SensorsByVector() =>
        "sensor;z_m;y_m;x_m;facing_x;facing_y;facing_z\n" + Rows(30, index => $"\"s {index}\";{1 + (0.1 * index)};-0.5;1e0;{index % 4};0;-1\n") + "ball;2;0;0;;;\n";

    private static string EpwTable() => EpwHeader + Rows(24, hour => EpwRow(new DateOnly(2014, 4, 1), hour));

    private static string EpwOfTwoYears() =>
        EpwHeader + Rows(48, hour => EpwRow(hour < 24 ? new DateOnly(2003, 2, 28) : new DateOnly(2010, 3, 1), hour % 24));

    private const string EpwHeader =
        "LOCATION,Nowhere,-,-,-,0,47.6,-122.3,-8.0,50.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n" +
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,made for a test\nCOMMENTS 2,-\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n";

    private static FormattableString EpwRow(DateOnly day, int hour) =>
        $"{day.Year},{day.Month},{day.Day},{hour + 1},60,A7,{hour}.5,{(hour == 3 ? 99.9 : 0)},80,101325,0,0,300,{hour * 10},{hour * 5},{hour * 3},0,0,0,0,180,2.1,5,5,20.0,77777,9,999999999,10,0.1,0,88,0.2,999,0\n";

    private static DateOnly Day(int index) => new DateOnly(2014, 4, 1).AddDays(index);

    private static string Rows(int count, Func<int, FormattableString> row) =>
        string.Concat(Enumerable.Range(0, count).Select(index => row(index).ToString(CultureInfo.InvariantCulture)));

    private static byte[][] Encode(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];

    [GeneratedRegex(@"^( *)# (?!based_on)([a-z_0-9]+:\s[^{]*)$")]
    private static partial Regex ShownKey();
}
