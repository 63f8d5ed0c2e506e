using CanopySim.Numerics;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>Throws that belong to one file of a fuzz: the same seed, format and index throw the same on every machine.</summary>
internal sealed class Dice(ulong seed, string format, long index)
{
    private long _thrown;

    public double Unit() => SeededValue.Uniform(seed, format, index, _thrown++);

    /// <summary>A whole number from 0 to one less than <paramref name="count"/>; 0 where there is nothing to choose.</summary>
    public int Below(int count) => (int)(Unit() * count);

    public bool OneIn(int count) => Below(count) == 0;

    public T Of<T>(IReadOnlyList<T> choices) => choices[Below(choices.Count)];

    /// <summary>A size between two bounds, small ones as often as large ones.</summary>
    public int Size(int least, int most) => (int)(least * Math.Pow((double)most / least, Unit()));
}
