namespace CanopySim.Sky;

/// <summary>
/// The sky of any weather, from how bright and how clear it is: relative radiance
/// (1 + a exp(b / cos Z)) (1 + c exp(d γ) + e cos² γ), γ the angle from the sun. Perez, Seals &amp; Michalsky 1993, Solar
/// Energy 50:235-245, Eqs. 1-3 and table 1 (<see cref="AllWeatherCoefficients"/>).
/// Clearness ε = ((D + I)/D + κ Zs³) / (1 + κ Zs³), κ = 1.041; brightness Δ = D m / I0. The eight clearness bins do not join:
/// radiance jumps from bin to bin, as published.
/// </summary>
public sealed class AllWeatherSky : ISkyRadiance
{
    // Beyond these the fit has no skies and its polynomials run away; common practice of public codes, no source.
    private const double LargestClearness = 12;
    private const double SmallestBrightness = 0.01;
    private const double LargestBrightness = 0.6;
    private const double SmallestBrokenBrightness = 0.2;

    // Keeps the gradation finite at the horizon, and a sky of an extrapolated fit from going dark or negative.
    private const double SmallestCosine = 0.01;
    private const double FlattestDecay = -0.01;
    private const double DarkestFactor = 0.001;

    private readonly double _a, _b, _c, _d, _e;
    private readonly SolarPosition _sun;

    /// <summary>
    /// The sky of a moment. A sun below the horizon counts as on it; without diffuse light the sky is the clearest one,
    /// without direct light an overcast one, so that any input gives a finite sky.
    /// </summary>
    /// <param name="sun">The sun.</param>
    /// <param name="directNormal">Direct normal irradiance I [W m⁻²].</param>
    /// <param name="diffuseHorizontal">Diffuse horizontal irradiance D [W m⁻²].</param>
    /// <param name="extraterrestrialNormal">Normal irradiance above the air I0 [W m⁻²].</param>
    /// <param name="airMass">Relative optical air mass m.</param>
    public AllWeatherSky(
        SolarPosition sun, double directNormal, double diffuseHorizontal, double extraterrestrialNormal, double airMass)
    {
        var zenith = Math.Clamp(sun.ZenithRadians, 0, Math.PI / 2);
        _sun = sun with { ZenithRadians = zenith };

        var horizonTerm = 1.041 * zenith * zenith * zenith;
        var direct = Math.Max(directNormal, 0);
        var diffuse = Math.Max(diffuseHorizontal, 0);
        var ratio = diffuse > 0 ? Math.Min(direct / diffuse, 1e6) : direct > 0 ? 1e6 : 0;
        Clearness = Math.Min((1 + ratio + horizonTerm) / (1 + horizonTerm), LargestClearness);

        var brightness = Math.Clamp(diffuse * airMass / extraterrestrialNormal, SmallestBrightness, LargestBrightness);
        var bin = AllWeatherCoefficients.BinOf(Clearness);
        Brightness = bin is >= 1 and <= 4 ? Math.Max(brightness, SmallestBrokenBrightness) : brightness;

        _a = AllWeatherCoefficients.A[bin].At(zenith, Brightness);
        _b = Math.Min(AllWeatherCoefficients.B[bin].At(zenith, Brightness), FlattestDecay);
        _c = AllWeatherCoefficients.Circumsolar(bin, zenith, Brightness);
        _d = AllWeatherCoefficients.CircumsolarDecay(bin, zenith, Brightness);
        _e = AllWeatherCoefficients.E[bin].At(zenith, Brightness);
    }

    /// <summary>ε, 1 overcast to 12 (cut) clear.</summary>
    public double Clearness { get; }

    /// <summary>Δ, as used: within the range of the fit.</summary>
    public double Brightness { get; }

    /// <summary>The sky of an hour from its irradiances as hourly means [W m⁻²] and its sun.</summary>
    public static AllWeatherSky Of(HourlySun sun, double directNormal, double diffuseHorizontal)
    {
        // Means over the whole hour, brought to the lit part, in which this sun stands.
        var lit = Math.Max(sun.LitFraction, 1e-6);
        return new AllWeatherSky(
            sun.Position,
            directNormal / lit,
            diffuseHorizontal / lit,
            ExtraterrestrialRadiation.Normal(sun.Position.DistanceAu),
            AirMass.KastenYoung(sun.Position.ZenithRadians));
    }

    public double RelativeRadiance(double zenithRadians, double azimuthRadians)
    {
        var fromSun = SkyAngles.Between(zenithRadians, azimuthRadians, _sun.ZenithRadians, _sun.AzimuthRadians);
        var cosine = Math.Cos(fromSun);
        var gradation = 1 + _a * Math.Exp(_b / Math.Max(Math.Cos(zenithRadians), SmallestCosine));
        var indicatrix = 1 + _c * Math.Exp(_d * fromSun) + _e * cosine * cosine;
        return Math.Max(gradation, DarkestFactor) * Math.Max(indicatrix, DarkestFactor);
    }
}
