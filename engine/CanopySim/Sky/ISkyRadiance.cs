namespace CanopySim.Sky;

/// <summary>
/// How bright one direction of the sky is against another, the sun's own disk left out. Implemented by <see cref="UniformSky"/>,
/// <see cref="StandardOvercastSky"/>, <see cref="CieStandardSky"/> and <see cref="AllWeatherSky"/> (the season's default). Only
/// ratios mean anything: <see cref="SkyDirections.IrradianceShares"/> scales them to a diffuse irradiance.
/// </summary>
public interface ISkyRadiance
{
    /// <summary>
    /// Relative radiance [any unit], finite and never negative, of a direction by its zenith angle (0 to π/2) and azimuth [rad],
    /// the latter counted from where the sun's azimuth is counted.
    /// </summary>
    double RelativeRadiance(double zenithRadians, double azimuthRadians);
}

/// <summary>A sky equally bright everywhere.</summary>
public sealed class UniformSky : ISkyRadiance
{
    public double RelativeRadiance(double zenithRadians, double azimuthRadians) => 1;
}

/// <summary>
/// The standard overcast sky, L/Lz = (1 + 2 cos z) / 3: Moon &amp; Spencer 1942, Illuminating Engineering 37:707-726. Three times
/// as bright at the zenith as at the horizon.
/// </summary>
public sealed class StandardOvercastSky : ISkyRadiance
{
    public double RelativeRadiance(double zenithRadians, double azimuthRadians) => (1 + 2 * Math.Cos(zenithRadians)) / 3;
}
