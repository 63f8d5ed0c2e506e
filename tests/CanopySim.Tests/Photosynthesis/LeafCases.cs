using CanopySim.Numerics;
using CanopySim.Photosynthesis;
using CanopySim.Weather;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>
/// Leaves and air over the whole domain: two thirds spread evenly, a fifth in corners, a tenth at night.
/// </summary>
internal static class LeafCases
{
    private const ulong Seed = 20261125;

    public static (LeafEnvironment Environment, LeafState Leaf) At(int index)
    {
        var kind = Uniform("kind", index);
        var corner = kind < 0.2;
        var night = kind > 0.9;

        double Between(string what, double low, double high)
        {
            var u = Uniform(what, index);
            if (corner) u = u < 0.4 ? 0 : u > 0.6 ? 1 : u;
            return low + ((high - low) * u);
        }

        var air = Between("air", -5, 50);
        var saturation = SaturationVaporPressure.At(air);
        var deficit = Math.Min(Between("deficit", 0.05, 7), 0.98 * saturation);
        var environment = new LeafEnvironment(air, saturation - deficit, Between("pressure", 80, 103), Between("wind", 0, 8), Between("co2", 350, 700));
        var ppfd = night ? 0 : Between("ppfd", 0, 2200);
        return (environment, new(
            ppfd,
            ppfd * Between("nir", 0.02, 0.1),
            Between("capacity", 0, 1.5),
            Between("respiration", 0, 1.5),
            Between("width", 0.02, 0.16),
            Between("stress", 0, 1)));
    }

    /// <summary>An air and as many leaves in it.</summary>
    public static (LeafEnvironment Environment, LeafState[] Leaves) Hour(int hour, int leaves) =>
        (At(hour * leaves).Environment, [.. Enumerable.Range(hour * leaves, leaves).Select(index => At(index).Leaf)]);

    public static double Uniform(string what, int index) => SeededValue.Uniform(Seed, what, index);
}
