namespace CanopySim.Sky;

/// <summary>Angles on the sphere of the sky.</summary>
internal static class SkyAngles
{
    /// <summary>Angle between two directions [rad] given by zenith angle and azimuth [rad]; exact for near ones too.</summary>
    public static double Between(double firstZenith, double firstAzimuth, double secondZenith, double secondAzimuth)
    {
        var halfZenith = Math.Sin((firstZenith - secondZenith) / 2);
        var halfAzimuth = Math.Sin((firstAzimuth - secondAzimuth) / 2);
        var haversine = halfZenith * halfZenith + Math.Sin(firstZenith) * Math.Sin(secondZenith) * halfAzimuth * halfAzimuth;
        return 2 * Math.Asin(Math.Sqrt(Math.Clamp(haversine, 0, 1)));
    }
}
