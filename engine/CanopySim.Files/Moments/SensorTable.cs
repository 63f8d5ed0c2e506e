using System.Globalization;
using CanopySim.Files.Text;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Files.Moments;

/// <summary>A sensor with the name that its file gives it.</summary>
public readonly record struct NamedSensor(string Name, LightSensor Sensor);

/// <summary>
/// Reads the table of sensors of <c>canopysim light --sensors</c>: <c>sensor,x_m,y_m,z_m</c> in the frame of the scene,
/// with a
/// word in <c>facing</c> or a vector in <c>facing_x,facing_y,facing_z</c>. Without a facing a sensor is a sphere.
/// </summary>
public static class SensorTable
{
    private const int LargestFile = 20_000_000;
    private const int MostSensors = 10_000;

    // Cells repeat without end, but no one measures from here to there [m].
    private const double Farthest = 1000;

    // A sensor on the ground may lie so far under it by the rounding of its file [m].
    private const double GroundTolerance = 0.001;

    private static readonly string[] Places = ["x_m", "y_m", "z_m"];
    private static readonly string[] Vector = ["facing_x", "facing_y", "facing_z"];
    private static readonly string[] Columns = ["sensor", .. Places, "facing", .. Vector];

    // Compass azimuth of the words that have one [°].
    private static readonly Dictionary<string, double> Compass = new(StringComparer.OrdinalIgnoreCase)
    {
        ["north"] = 0,
        ["east"] = 90,
        ["south"] = 180,
        ["west"] = 270,
    };

    // The rest, in the frame of the cell; a sphere faces nowhere.
    private static readonly Dictionary<string, Point3?> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["up"] = new Point3(0, 0, 1),
        ["down"] = new Point3(0, 0, -1),
        ["right"] = new Point3(1, 0, 0),
        ["left"] = new Point3(-1, 0, 0),
        ["sphere"] = null,
        [""] = null,
    };

    /// <param name="path">The file.</param>
    /// <param name="cell">The cell: no sensor may lie under its ground.</param>
    /// <param name="rowAzimuthDegrees">Of the cell's y axis, for the words of the compass.</param>
    /// <exception cref="InputError">The table is wrong.</exception>
    public static IReadOnlyList<NamedSensor> Read(string path, in Cell cell, double rowAzimuthDegrees)
    {
        var lines = new CsvLines(StrictText.ReadBytes(path, new InputPlace(path), LargestFile, "sensors"), path);
        var columns = Header(lines);
        var sensors = new List<NamedSensor>();
        var linesOfNames = new Dictionary<string, int>(StringComparer.Ordinal);
        while (lines.NextRow() is { } cells)
        {
            if (cells.Count != columns.Count) throw new InputError(
                lines.Place, $"{cells.Count} cells", $"{columns.Count}, as the header has");
            if (sensors.Count == MostSensors) throw new InputError(
                lines.Place, "too many sensors", $"at most {MostSensors}");
            var row = new Row(cells, columns, lines.Place);
            var name = row.Text("sensor");
            if (name.Length == 0) throw new InputError(
                row.Place("sensor"), "no name", "a name for the sensor", "sensor");
            if (!linesOfNames.TryAdd(name, lines.Line))
                throw new InputError(
                    row.Place("sensor"), $"{InputError.Quote(name)} a second time, after line {linesOfNames[name]}",
                    "a name for each sensor", "sensor");
            sensors.Add(new NamedSensor(name, new LightSensor(Point(row, cell), Facing(row, rowAzimuthDegrees))));
        }

        return sensors.Count > 0 ? sensors : throw new InputError(lines.Place, "no sensors", "a row for each sensor");
    }

    private static Dictionary<string, int> Header(CsvLines lines)
    {
        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var name in lines.Header())
        {
            if (!Columns.Contains(name))
                throw new InputError(
                    lines.Place, $"unknown column {InputError.Quote(name)}", string.Join(", ", Columns), name,
                    NearestName.Among(name, Columns));
            if (!columns.TryAdd(name, columns.Count)) throw new InputError(
                lines.Place, $"the column {name} twice", "each column once", name);
        }

        var vector = Vector.Count(columns.ContainsKey);
        foreach (var name in (string[])["sensor", .. Places, .. vector > 0 ? Vector : []])
            if (!columns.ContainsKey(name)) throw new InputError(
                lines.Place, $"no column {name}", "sensor,x_m,y_m,z_m with facing, or with facing_x,facing_y,facing_z",
                name);
        if (vector > 0 && columns.ContainsKey("facing")) throw new InputError(
            lines.Place, "facing as a word and as a vector", "one of them", "facing");
        return columns;
    }

    private static Point3 Point(Row row, in Cell cell)
    {
        var point = new Point3(row.Number("x_m", Farthest), row.Number("y_m", Farthest), row.Number("z_m", Farthest));
        var ground = (cell.RiseAcross * point.X) + (cell.RiseAlong * point.Y);
        if (point.Z < ground - GroundTolerance)
            throw new InputError(
                row.Place("z_m"), $"{InputError.Quote(row.Text("z_m"))}, under the ground",
                $"{NumberText.Rounded(ground, "z_m")} or more", "z_m");
        return point with { Z = Math.Max(point.Z, ground) };
    }

    private static Point3? Facing(Row row, double rowAzimuthDegrees)
    {
        if (row.Has("facing_x"))
        {
            if (Vector.All(name => row.Text(name).Length == 0)) return null;
            var facing =
                new Point3(row.Number("facing_x", 1e6), row.Number("facing_y", 1e6), row.Number("facing_z", 1e6));
            return Point3.Dot(facing, facing) >= 1e-12
                ? facing.Normalized()
                : throw new InputError(
                    row.Place("facing_x"), "a vector without length", "a direction, or three empty cells for a sphere",
                    "facing_x");
        }

        var word = row.Has("facing") ? row.Text("facing") : "";
        if (Words.TryGetValue(word, out var known)) return known;
        if (!Compass.TryGetValue(word, out var azimuth))
        {
            string[] words = [.. Words.Keys.Concat(Compass.Keys).Where(candidate => candidate.Length > 0)];
            throw new InputError(
                row.Place("facing"), InputError.Quote(word), $"{string.Join(", ", words)}, or nothing for a sphere",
                "facing", NearestName.Among(word, words));
        }

        var (sine, cosine) = Math.SinCos(UnitConversion.RadiansFromDegrees(azimuth - rowAzimuthDegrees));
        return new Point3(sine, cosine, 0);
    }

    private readonly record struct Row(IReadOnlyList<string> Cells, Dictionary<string, int> Columns, InputPlace Line)
    {
        public bool Has(string name) => Columns.ContainsKey(name);

        public string Text(string name) => Cells[Columns[name]];

        public InputPlace Place(string name) => Line with { Column = Columns[name] + 1 };

        public double Number(string name, double most) =>
            double.TryParse(Text(name), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                && Math.Abs(value) <= most
                ? value
                : throw new InputError(
                    Place(name), InputError.Quote(Text(name)),
                    FormattableString.Invariant($"a number from {-most} to {most}"), name);
    }
}
