using System.Numerics;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Light;

/// <summary>
/// Sun and sky in the cell's frame: the directions that stand for the sky, about the vertical, and the light of an hour along
/// them.
/// </summary>
public sealed class SkyFrame
{
    private readonly double _rowAzimuth;
    private readonly Vector3[] _directions;

    public SkyFrame(double rowAzimuthDegrees, int directionCount)
    {
        _rowAzimuth = UnitConversion.RadiansFromDegrees(rowAzimuthDegrees);
        var even = SkyDirections.Create(directionCount);
        _directions = new Vector3[directionCount];
        for (var i = 0; i < directionCount; i++)
            _directions[i] = new Vector3((float)even.X(i), (float)even.Y(i), (float)even.Z(i));
    }

    /// <summary>Unit vectors of equal solid angle.</summary>
    public IReadOnlyList<Vector3> Directions => _directions;

    /// <summary>The light of an hour; null when the sun is down or nothing comes.</summary>
    public IncidentLight? Of(WeatherHour hour, HourlySun sun)
    {
        if (!sun.IsUp || hour.GlobalHorizontalIrradiance <= 0) return null;
        var sky = AllWeatherSky.Of(sun, hour.DirectNormalIrradiance, hour.DiffuseHorizontalIrradiance);
        return new IncidentLight
        {
            SunDirection = CellFromSky(sun.Position.ZenithRadians, sun.Position.AzimuthRadians),
            DirectNormalPar = BandSplit.ParShareOfDirect * hour.DirectNormalIrradiance,
            DirectNormalNir = (1 - BandSplit.ParShareOfDirect) * hour.DirectNormalIrradiance,
            DiffuseHorizontalPar = BandSplit.ParShareOfDiffuse * hour.DiffuseHorizontalIrradiance,
            DiffuseHorizontalNir = (1 - BandSplit.ParShareOfDiffuse) * hour.DiffuseHorizontalIrradiance,
            SkyRadiance = Array.ConvertAll(_directions, direction => Towards(Point3.From(direction))),
            SkyRadianceTowards = Towards,
        };

        double Towards(Point3 direction) =>
            sky.RelativeRadiance(Math.Acos(Math.Clamp(direction.Z, -1, 1)), Math.Atan2(direction.X, direction.Y) + _rowAzimuth);
    }

    /// <summary>Unit vector in the cell's frame towards a zenith and an azimuth [rad].</summary>
    public Vector3 CellFromSky(double zenith, double azimuth)
    {
        var fromRow = azimuth - _rowAzimuth;
        var sine = Math.Sin(zenith);
        return new Vector3((float)(sine * Math.Sin(fromRow)), (float)(sine * Math.Cos(fromRow)), (float)Math.Cos(zenith));
    }
}
