namespace CanopySim.Numerics;

/// <summary>
/// Randomness that is addressed, not consumed: every value is a function of the scenario's seed and of what it is for,
/// so that the order of work and the number of threads change nothing.
/// </summary>
public static class SeededValue
{
    /// <summary>A uniform value in [0, 1) for an address of up to four parts.</summary>
    public static double Uniform(ulong seed, string purpose, long a = 0, long b = 0, long c = 0)
    {
        var hash = Mix(seed);
        foreach (var letter in purpose) hash = Mix(hash ^ letter);
        hash = Mix(hash ^ (ulong)a);
        hash = Mix(hash ^ (ulong)b);
        hash = Mix(hash ^ (ulong)c);
        return (hash >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>A standard normal value (Box-Muller) for an address.</summary>
    public static double Normal(ulong seed, string purpose, long a = 0, long b = 0, long c = 0)
    {
        var u = 1 - Uniform(seed, purpose, a, b, (2 * c) + 1);
        var v = Uniform(seed, purpose, a, b, 2 * c);
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v);
    }

    // The finaliser of SplitMix64 (Steele, Lea & Flood 2014, doi:10.1145/2660193.2660195).
    private static ulong Mix(ulong value)
    {
        value += 0x9E3779B97F4A7C15UL;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
