using System.Numerics;
using CanopySim.Sampling;
using Xunit;

namespace CanopySim.Tests.Sampling;

public class SobolSequenceTests
{
    private const int Dimensions = 80;

    private static double[][] First(int count, ulong? seed) => SobolSequence.Points(count, Dimensions, seed);

    /// <summary>The ten points of three dimensions that Joe and Kuo print with their program, from memory.</summary>
    [Fact]
    public void The_first_points_are_the_published_ones()
    {
        double[][] published =
        [
            [0, 0, 0], [0.5, 0.5, 0.5], [0.75, 0.25, 0.25], [0.25, 0.75, 0.75], [0.375, 0.375, 0.625], [0.875, 0.875, 0.125],
            [0.625, 0.125, 0.875], [0.125, 0.625, 0.375], [0.1875, 0.3125, 0.9375], [0.6875, 0.8125, 0.4375],
        ];
        Assert.Equal(published, SobolSequence.Points(10, 3));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(7ul)]
    public void Each_dimension_has_one_point_in_each_dyadic_interval(ulong? seed)
    {
        for (var power = 0; power <= 11; power++)
        {
            var count = 1 << power;
            var points = First(count, seed);
            for (var dimension = 0; dimension < Dimensions; dimension++)
                Assert.Equal(count, points.Select(point => (int)(point[dimension] * count)).Distinct().Count());
        }
    }

    /// <summary>
    /// Sobol's property A: of 2^d points each of the 2^d cubes that halve every axis has one. By counting where that is possible; for
    /// any d it is the same that the first digits of the first d directions of d dimensions are independent modulo 2.
    /// </summary>
    [Fact]
    public void Property_A_holds_for_any_number_of_leading_dimensions()
    {
        for (var dimensions = 1; dimensions <= 14; dimensions++)
        {
            var cubes = SobolSequence.Points(1 << dimensions, dimensions)
                .Select(point => point.Aggregate(0, (cube, x) => (2 * cube) + (x < 0.5 ? 0 : 1)));
            Assert.Equal(1 << dimensions, cubes.Distinct().Count());
        }

        for (var dimensions = 1; dimensions <= 32; dimensions++)
            Assert.Equal(dimensions, Rank([.. Enumerable.Range(0, dimensions).Select(dimension => FirstDigits(dimension, 0, dimensions))]));
    }

    /// <summary>Any two dimensions: of 8192 points each of 8 × 8 squares has as many as the others (of 4096 that fails for 7 pairs of 3160).</summary>
    [Fact]
    public void Any_two_dimensions_fill_the_square_evenly()
    {
        for (var one = 0; one < Dimensions; one++)
        {
            for (var other = 0; other < one; other++)
                Assert.Equal(6, Rank([.. from dimension in new[] { one, other } from digit in Enumerable.Range(0, 3) select FirstDigits(dimension, digit, 13)]));
        }
    }

    /// <summary>Joe and Kuo's polynomials are primitive: the shift register of one of degree s comes round after 2^s − 1 steps.</summary>
    [Fact]
    public void Every_row_is_a_primitive_polynomial_with_odd_numbers()
    {
        Assert.Equal(Dimensions, SobolSequence.MostDimensions);
        Assert.Equal(JoeKuoNumbers.Rows.Count, JoeKuoNumbers.Rows.Select(row => (row[0], row[1])).Distinct().Count());
        foreach (var row in JoeKuoNumbers.Rows)
        {
            var degree = row[0];
            Assert.Equal(2 + degree, row.Length);
            for (var k = 0; k < degree; k++)
                Assert.True(row[2 + k] % 2 == 1 && row[2 + k] < 2 << k, string.Join(' ', row));
            var polynomial = (1 << degree) | (row[1] << 1) | 1;
            var (state, steps) = (1, 0);
            do
            {
                state <<= 1;
                if ((state & (1 << degree)) != 0) state ^= polynomial;
                steps++;
            }
            while (state != 1);
            Assert.Equal((1 << degree) - 1, steps);
        }
    }

    [Fact]
    public void A_shift_is_the_seeds_own_and_leaves_no_zero()
    {
        var shifted = First(64, 1);
        Assert.Equal(shifted, First(64, 1));
        Assert.DoesNotContain(shifted.Zip(First(64, 2)), pair => pair.First.Zip(pair.Second).Any(x => x.First == x.Second));
        Assert.All(First(4096, 3), point => Assert.All(point, x => Assert.InRange(x, double.Epsilon, double.BitDecrement(1))));
    }

    [Fact]
    public void More_dimensions_than_the_table_has_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SobolSequence.Points(1, SobolSequence.MostDimensions + 1));

    // A digit of the first directions, as bits.
    private static uint FirstDigits(int dimension, int digit, int count) =>
        SobolSequence.Directions(dimension).Take(count).Select((direction, k) => (direction >> (31 - digit) & 1) << k).Aggregate(0u, (all, bit) => all | bit);

    private static int Rank(uint[] rows)
    {
        var rank = 0;
        while (rows.Any(row => row != 0))
        {
            var pivot = rows.First(row => row != 0);
            var bit = 1u << BitOperations.TrailingZeroCount(pivot);
            rows = [.. rows.Select(row => (row & bit) != 0 ? row ^ pivot : row)];
            rank++;
        }

        return rank;
    }
}
