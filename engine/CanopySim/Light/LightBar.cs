using CanopySim.Geometry;
using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>Sensors evenly along a line, as on a bar that is pushed into a canopy: their mean is what the bar reads.</summary>
public static class LightBar
{
    /// <summary>Each sensor in the middle of its own length of the line.</summary>
    public static LightSensor[] Between(Point3 start, Point3 end, int count, Point3? facing)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return [.. Enumerable.Range(0, count).Select(index => new LightSensor(start + (((index + 0.5) / count) * (end - start)), facing))];
    }

    /// <summary>A bar along the whole row of a cell, at one height over its ground.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="across">How far to the right of the row, seen along its azimuth [m].</param>
    /// <param name="height">Over the ground [m].</param>
    /// <param name="count">Sensors.</param>
    /// <param name="facing">As a sensor's.</param>
    public static LightSensor[] AlongRow(in Cell cell, double across, double height, int count, Point3? facing)
    {
        var start = new Point3(across, 0, height + (cell.RiseAcross * across));
        return Between(start, start + new Point3(0, cell.Along, cell.RiseAlong * cell.Along), count, facing);
    }

    /// <summary>Mean of what sensors read.</summary>
    public static SensorReading Mean(IReadOnlyCollection<SensorReading> readings) => new(
        Mean(readings, reading => reading.Par),
        Mean(readings, reading => reading.Nir));

    private static SensorIrradiance Mean(IReadOnlyCollection<SensorReading> readings, Func<SensorReading, SensorIrradiance> band) => new(
        readings.Average(reading => band(reading).Direct),
        readings.Average(reading => band(reading).Diffuse),
        readings.Average(reading => band(reading).Scattered));
}
