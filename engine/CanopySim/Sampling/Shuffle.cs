using CanopySim.Numerics;

namespace CanopySim.Sampling;

/// <summary>Random orders and draws by address.</summary>
internal static class Shuffle
{
    /// <summary>The numbers 0 to count − 1 in a random order, by Fisher and Yates' exchange.</summary>
    public static int[] Order(int count, ulong seed, string purpose, long address)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        for (var last = count - 1; last > 0; last--)
        {
            var other = Draw(last + 1, seed, purpose, address, last);
            (order[last], order[other]) = (order[other], order[last]);
        }

        return order;
    }

    /// <summary>One of the numbers 0 to count − 1.</summary>
    public static int Draw(int count, ulong seed, string purpose, long a, long b) =>
        Math.Min((int)(SeededValue.Uniform(seed, purpose, a, b) * count), count - 1);
}
