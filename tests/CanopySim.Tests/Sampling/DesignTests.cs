using CanopySim.Sampling;
using Xunit;

namespace CanopySim.Tests.Sampling;

public class DesignTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(97, 12)]
    [InlineData(1000, 5)]
    public void A_latin_hypercube_has_one_point_in_each_share(int count, int dimensions)
    {
        var points = LatinHypercube.Points(count, dimensions, 5);
        Assert.Equal(count, points.Length);
        for (var dimension = 0; dimension < dimensions; dimension++)
        {
            double[] column = [.. points.Select(point => point[dimension])];
            Assert.All(column, x => Assert.InRange(x, 0, double.BitDecrement(1)));
            Assert.Equal(Enumerable.Range(0, count), column.Select(x => (int)(x * count)).Order());
        }
    }

    /// <summary>Correlations of independent orders have a standard error of 1/√(n − 1).</summary>
    [Fact]
    public void Columns_of_a_latin_hypercube_are_paired_at_random()
    {
        const int Count = 1000;
        var points = LatinHypercube.Points(Count, 8, 5);
        for (var one = 0; one < 8; one++)
        {
            for (var other = 0; other < one; other++)
            {
                var correlation = points.Average(point => (point[one] - 0.5) * (point[other] - 0.5)) * 12;
                Assert.InRange(correlation, -4 / Math.Sqrt(Count - 1), 4 / Math.Sqrt(Count - 1));
            }
        }

        Assert.Equal(points, LatinHypercube.Points(Count, 8, 5));
        Assert.NotEqual(points, LatinHypercube.Points(Count, 8, 6));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    public void A_trajectory_takes_each_factor_once_by_a_step(int levels)
    {
        const int Trajectories = 400;
        const int Factors = 6;
        var points = MorrisDesign.Points(Trajectories, Factors, levels, 9);
        Assert.Equal(MorrisDesign.Count(Trajectories, Factors), points.Length);
        var orders = new HashSet<string>();
        foreach (var trajectory in points.Chunk(Factors + 1))
        {
            var changed = trajectory.Zip(trajectory.Skip(1)).Select(step =>
                Assert.Single(Enumerable.Range(0, Factors), factor => step.First[factor] != step.Second[factor])).ToList();
            Assert.Equal(Enumerable.Range(0, Factors), changed.Order());
            Assert.All(trajectory.Zip(trajectory.Skip(1)), step =>
                Assert.Equal(MorrisDesign.Step, step.First.Zip(step.Second).Sum(x => Math.Abs(x.First - x.Second)), 1e-15));
            orders.Add(string.Join(' ', changed));
        }

        Assert.True(orders.Count > Trajectories / 4);

        // Every level of a factor is a start as often as any other: 400 / levels, binomial.
        var share = 1.0 / levels;
        var error = Math.Sqrt(Trajectories * share * (1 - share));
        for (var factor = 0; factor < Factors; factor++)
        {
            var counts = points.Chunk(Factors + 1).CountBy(trajectory => trajectory[0][factor]).ToList();
            Assert.Equal(levels, counts.Count);
            Assert.All(counts, level => Assert.InRange(level.Value, (Trajectories * share) - (4 * error), (Trajectories * share) + (4 * error)));
        }

        Assert.Equal(points, MorrisDesign.Points(Trajectories, Factors, levels, 9));
    }

    [Fact]
    public void Mixed_points_have_one_column_of_the_other_sample()
    {
        const int Factors = 7;
        var points = SaltelliDesign.Points(16, Factors, 3);
        Assert.Equal(SaltelliDesign.Count(16, Factors), points.Length);
        foreach (var row in points.Chunk(SaltelliDesign.RowLength(Factors)))
        {
            var (a, b) = (row[0], row[1]);
            for (var factor = 0; factor < Factors; factor++)
                for (var column = 0; column < Factors; column++)
                    Assert.Equal(column == factor ? b[column] : a[column], row[2 + factor][column]);
            Assert.DoesNotContain(a.Zip(b), pair => pair.First == pair.Second);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => SaltelliDesign.Points(16, SaltelliDesign.MostFactors + 1, 3));
    }

    [Fact]
    public void An_odd_number_of_levels_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MorrisDesign.Points(4, 2, 5, 1));
}
