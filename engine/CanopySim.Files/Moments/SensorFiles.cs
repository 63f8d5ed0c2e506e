using CanopySim.Files.Results;
using CanopySim.Light;
using CanopySim.Numerics;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Files.Moments.SensorRow>;

namespace CanopySim.Files.Moments;

/// <summary>A sensor in the light of a moment: a row of <c>sensors.csv</c>.</summary>
/// <param name="Sensor">Where and how it looks.</param>
/// <param name="Reading">What it reads [W m⁻²].</param>
/// <param name="ParAboveUmolM2S">PAR that falls on the horizontal above the canopy.</param>
public readonly record struct SensorRow(NamedSensor Sensor, SensorReading Reading, double ParAboveUmolM2S);

/// <summary>Writes the moment's <c>sensors.csv</c>.</summary>
public static class SensorFiles
{
    public const string FileName = "sensors.csv";

    private const double Micromoles = UnitConversion.MicromolesPerJouleOfDaylightPar;

    private static readonly CsvColumn<SensorRow>[] Columns =
    [
        Words("sensor", row => row.Sensor.Name),
        Number("x_m", row => row.Sensor.Sensor.Point.X),
        Number("y_m", row => row.Sensor.Sensor.Point.Y),
        Number("z_m", row => row.Sensor.Sensor.Point.Z),
        Number("par_direct_umol_m2_s", row => row.Reading.Par.Direct * Micromoles),
        Number("par_diffuse_umol_m2_s", row => row.Reading.Par.Diffuse * Micromoles),
        Number("par_scattered_umol_m2_s", row => row.Reading.Par.Scattered * Micromoles),
        Number("par_umol_m2_s", row => row.Reading.Par.Total * Micromoles),
        Optional("par_share_of_above", row =>
            row.ParAboveUmolM2S > 0 ? row.Reading.Par.Total * Micromoles / row.ParAboveUmolM2S : null),
        Number("nir_w_m2", row => row.Reading.Nir.Total),
    ];

    public static void Write(string path, IEnumerable<SensorRow> rows) => CsvTable.Write(path, Columns, rows);
}
