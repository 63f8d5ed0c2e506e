using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Links counted by several workers in several turns against a plain dictionary.</summary>
public class LinkTableTests
{
    private const int Surfaces = 70;

    // Full chunks, chunks that begin, a pool that grows, a pair that comes a hundred thousand times.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 1)]
    [InlineData(128, 2)]
    [InlineData(1_000, 3)]
    [InlineData(700_000, 2)]
    public void Every_link_is_counted_once_whoever_found_it(int links, int workers)
    {
        var nodes = Nodes();
        var (table, expected) = (LinkTable.Empty(nodes.FirstGround), new SortedDictionary<(int, int), long>());
        var counters = Enumerable.Range(0, workers).Select(_ => new LinkCounter()).ToArray();
        for (var turn = 0; turn < 2; turn++)
        {
            foreach (var counter in counters) counter.Begin(nodes);
            for (var link = 0; link < links; link++)
            {
                int Draw(string purpose, int count) => (int)(count * SeededValue.Uniform(91, purpose, link, turn));

                // Half of them between few faces.
                var few = link % 2 == 0 ? 3 : nodes.FirstGround;
                var (a, b) = (Draw("a", few), Draw("b", few));
                if (link % 7 == 0)
                {
                    b = Draw("ground", nodes.GroundStrips);
                    counters[link % workers].AddGround(a, b);
                    b += nodes.FirstGround;
                }
                else
                {
                    counters[link % workers].Add(a, b);
                }

                var pair = (Math.Min(a, b), Math.Max(a, b));
                expected[pair] = expected.GetValueOrDefault(pair) + 1;
            }

            table = table.With(counters, nodes, threads: 1 + turn);
        }

        var found = new List<((int, int) Pair, long Count)>();
        for (var row = 0; row < nodes.FirstGround; row++)
            for (var at = table.Starts[row]; at < table.Starts[row + 1]; at++)
                found.Add(((row, table.Partners[at]), table.Counts[at]));

        // Rows in order and partners ascending, which is the dictionary's order as well.
        Assert.Equal(expected.Select(entry => (entry.Key, entry.Value)), found.Select(entry => (entry.Pair, entry.Count)));
    }

    private static LightNodes Nodes()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        for (var surface = 0; surface < Surfaces; surface++) scenes.AddSurface(SurfaceKind.Blade);
        return new LightNodes(scenes.Build(), 12, 4);
    }
}
