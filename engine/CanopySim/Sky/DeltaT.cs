namespace CanopySim.Sky;

/// <summary>
/// Terrestrial time minus universal time, ΔT [s], from the date alone: the polynomials of Espenak &amp; Meeus 2006 (Five
/// Millennium Canon of Solar Eclipses, NASA/TP-2006-214141, from memory). Their forecast after 2005 runs some seconds high; a second of ΔT
/// moves the sun by 0.00001°. Universal time is taken for UTC, which is never more than 0.9 s (0.004°) away from it.
/// </summary>
internal static class DeltaT
{
    /// <summary>ΔT [s] in a year given with its fraction, good from 1941 to 2150 and rough outside.</summary>
    public static double Seconds(double year)
    {
        var t = year - 2000;
        switch (year)
        {
            case < 1941 or >= 2150:
                return LongTerm(year);
            case < 1961:
                t = year - 1950;
                return 29.07 + t * (0.407 + t * (-1 / 233.0 + t / 2547));
            case < 1986:
                t = year - 1975;
                return 45.45 + t * (1.067 + t * (-1 / 260.0 - t / 718));
            case < 2005:
                return 63.86 + t * (0.3345 + t * (-0.060374 + t * (0.0017275 + t * (0.000651814 + t * 0.00002373599))));
            case < 2050:
                return 62.92 + t * (0.32217 + t * 0.005589);
            default:
                return LongTerm(year) - 0.5628 * (2150 - year);
        }
    }

    private static double LongTerm(double year)
    {
        var centuries = (year - 1820) / 100;
        return -20 + 32 * centuries * centuries;
    }
}
