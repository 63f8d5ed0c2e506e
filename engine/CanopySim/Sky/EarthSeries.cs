namespace CanopySim.Sky;

/// <summary>
/// Heliocentric place of the Earth, ecliptic and mean equinox of date: the leading periodic terms A cos(B + C τ) of VSOP87
/// (Bretagnon &amp; Francou 1988, Astron Astrophys 202:309-315; listed in Meeus 1998, Astronomical Algorithms, appendix III),
/// τ in Julian millennia of terrestrial time from J2000. Terms under 1e-6 rad (longitude) and 2.4e-6 AU (distance) are left
/// out. The coefficients are from memory; the tests measure the whole against an independent ephemeris.
/// </summary>
internal static class EarthSeries
{
    private readonly record struct Term(double Amplitude, double Phase, double Frequency);

    // Amplitudes in units of 1e-8 rad or 1e-8 AU, phases [rad], frequencies [rad per millennium].
    private const double Unit = 1e-8;

    private static readonly Term[] Longitude0 =
    [
        new(175347046, 0, 0), new(3341656, 4.6692568, 6283.0758500), new(34894, 4.6261, 12566.1517),
        new(3497, 2.7441, 5753.3849), new(3418, 2.8289, 3.5231), new(3136, 3.6277, 77713.7715),
        new(2676, 4.4181, 7860.4194), new(2343, 6.1352, 3930.2097), new(1324, 0.7425, 11506.7698),
        new(1273, 2.0371, 529.6910), new(1199, 1.1096, 1577.3435), new(990, 5.233, 5884.927),
        new(902, 2.045, 26.298), new(857, 3.508, 398.149), new(780, 1.179, 5223.694),
        new(753, 2.533, 5507.553), new(505, 4.583, 18849.228), new(492, 4.205, 775.523),
        new(357, 2.920, 0.067), new(317, 5.849, 11790.629), new(284, 1.899, 796.298),
        new(271, 0.315, 10977.079), new(243, 0.345, 5486.778), new(206, 4.806, 2544.314),
        new(205, 1.869, 5573.143), new(202, 2.458, 6069.777), new(156, 0.833, 213.299),
        new(132, 3.411, 2942.463), new(126, 1.083, 20.775), new(115, 0.645, 0.980),
        new(103, 0.636, 4694.003), new(102, 0.976, 15720.839), new(102, 4.267, 7.114),
    ];

    private static readonly Term[] Longitude1 =
    [
        new(628331966747, 0, 0), new(206059, 2.678235, 6283.075850), new(4303, 2.6351, 12566.1517),
        new(425, 1.590, 3.523), new(119, 5.796, 26.298), new(109, 2.966, 1577.344),
    ];

    private static readonly Term[] Longitude2 = [new(52919, 0, 0), new(8720, 1.0721, 6283.0758), new(309, 0.867, 12566.152)];

    private static readonly Term[] Latitude0 = [new(280, 3.199, 84334.662), new(102, 5.422, 5507.553)];

    private static readonly Term[] Distance0 =
    [
        new(100013989, 0, 0), new(1670700, 3.0984635, 6283.0758500), new(13956, 3.05525, 12566.15170),
        new(3084, 5.1985, 77713.7715), new(1628, 1.1739, 5753.3849), new(1576, 2.8469, 7860.4194),
        new(925, 5.453, 11506.770), new(542, 4.564, 3930.210), new(472, 3.661, 5884.927),
        new(346, 0.964, 5507.553), new(329, 5.900, 5223.694), new(307, 0.299, 5573.143),
        new(243, 4.273, 11790.629),
    ];

    private static readonly Term[] Distance1 =
    [
        new(103019, 1.107490, 6283.075850), new(1721, 1.0644, 12566.1517), new(702, 3.142, 0),
    ];

    private static readonly Term[] Distance2 = [new(4359, 5.7846, 6283.0758)];

    /// <summary>Heliocentric longitude [rad], not reduced to a turn.</summary>
    public static double LongitudeAt(double tau) =>
        Unit * (Sum(Longitude0, tau) + tau * (Sum(Longitude1, tau) + tau * Sum(Longitude2, tau)));

    /// <summary>Heliocentric latitude [rad].</summary>
    public static double LatitudeAt(double tau) => Unit * Sum(Latitude0, tau);

    /// <summary>Distance from the sun [AU].</summary>
    public static double DistanceAt(double tau) =>
        Unit * (Sum(Distance0, tau) + tau * (Sum(Distance1, tau) + tau * Sum(Distance2, tau)));

    private static double Sum(Term[] terms, double tau)
    {
        var sum = 0.0;
        foreach (var term in terms) sum += term.Amplitude * Math.Cos(term.Phase + term.Frequency * tau);
        return sum;
    }
}
