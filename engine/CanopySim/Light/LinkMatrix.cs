using System.Runtime.CompilerServices;

namespace CanopySim.Light;

/// <summary>
/// The links as the solver walks them: for each face and ground strip the nodes that send it light with the number of times
/// they meet, and apart from that its sky, direction by direction. A face's links in all tell its effective area, so that what
/// it sends is what arrives elsewhere and energy closes whatever the sampling left out.
/// </summary>
internal sealed class LinkMatrix
{
    private LinkMatrix(int nodes)
    {
        Starts = new int[nodes + 1];
        SkyStarts = new int[nodes + 1];
        LinksOfNode = new double[nodes];
        SkyLinksOfNode = new double[nodes];
    }

    public int[] Starts { get; }

    public int[] Senders { get; private set; } = [];

    public float[] Counts { get; private set; } = [];

    public int[] SkyStarts { get; }

    public int[] SkyDirections { get; private set; } = [];

    public float[] SkyCounts { get; private set; } = [];

    /// <summary>All links of a node, with the sky's.</summary>
    public double[] LinksOfNode { get; }

    public double[] SkyLinksOfNode { get; }

    /// <summary>One over the links of a node; 0 where it has none.</summary>
    public float[] InverseLinks { get; private set; } = [];

    /// <summary>Share of all links that end inside a closed body: 0 where bodies are closed and nothing sticks in them.</summary>
    public double InsideShare { get; private set; }

    /// <param name="table">Faces and ground.</param>
    /// <param name="sky">Links of each direction's sky, by node.</param>
    /// <param name="nodes">All of them.</param>
    /// <param name="threads">Workers: the sky's half goes beside the faces'.</param>
    public static LinkMatrix From(LinkTable table, int[][] sky, LightNodes nodes, int threads)
    {
        var matrix = new LinkMatrix(nodes.Count);
        var (all, inside) = (0.0, 0.0);
        Workers.Run(threads, 2, () => true, (_, half) =>
        {
            if (half == 0) (all, inside) = matrix.TakeFaces(table, nodes);
            else matrix.TakeSky(sky, nodes);
        });

        // Links are whole numbers: no order of these sums changes a bit.
        for (var node = 0; node < nodes.Count; node++)
        {
            var links = matrix.SkyLinksOfNode[node];
            matrix.LinksOfNode[node] += links;
            all += links;
            if (nodes.IsInside(node)) inside += links;
        }

        matrix.InsideShare = all > 0 ? inside / all : 0;
        matrix.InverseLinks = Array.ConvertAll(matrix.LinksOfNode, links => links > 0 ? (float)(1 / links) : 0);
        return matrix;
    }

    private (double All, double Inside) TakeFaces(LinkTable table, LightNodes nodes)
    {
        var counted = CountEntries(table, nodes);
        for (var node = 0; node < nodes.Count; node++) Starts[node + 1] += Starts[node];
        Senders = new int[Starts[nodes.Count]];
        Counts = new float[Senders.Length];
        Fill(table, nodes);
        return counted;
    }

    private void TakeSky(int[][] sky, LightNodes nodes)
    {
        CountSky(sky, nodes);
        for (var node = 0; node < nodes.Count; node++) SkyStarts[node + 1] += SkyStarts[node];
        SkyDirections = new int[SkyStarts[nodes.Count]];
        SkyCounts = new float[SkyDirections.Length];
        FillSky(sky);
    }

    private void CountSky(int[][] sky, LightNodes nodes)
    {
        foreach (var counts in sky)
        {
            for (var node = 0; node < nodes.Count; node++)
            {
                SkyLinksOfNode[node] += counts[node];
                SkyStarts[node + 1] += counts[node] > 0 ? 1 : 0;
            }
        }
    }

    private void FillSky(int[][] sky)
    {
        var next = SkyStarts.AsSpan(0, SkyStarts.Length - 1).ToArray();
        for (var direction = 0; direction < sky.Length; direction++)
        {
            var counts = sky[direction];
            for (var node = 0; node < counts.Length; node++)
                if (counts[node] > 0) (SkyDirections[next[node]], SkyCounts[next[node]++]) = (direction, counts[node]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (double All, double Inside) CountEntries(LinkTable table, LightNodes nodes)
    {
        var (all, inside) = (0.0, 0.0);
        for (var row = 0; row < nodes.FirstGround; row++)
        {
            for (var at = table.Starts[row]; at < table.Starts[row + 1]; at++)
            {
                var (partner, count) = (table.Partners[at], table.Counts[at]);
                all += count;
                LinksOfNode[row] += count;
                LinksOfNode[partner] += count;
                if (!nodes.IsInside(partner)) Starts[row + 1]++;
                if (!nodes.IsInside(row) && partner != row) Starts[partner + 1]++;
                if (nodes.IsInside(row) != nodes.IsInside(partner)) inside += count;
            }
        }

        return (all, inside);
    }

    // Rows come in ascending order, so a node's senders below it are all in place before its own row adds those above it.
    // A face that sees itself along a line stands at both ends of it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fill(LinkTable table, LightNodes nodes)
    {
        var next = Starts.AsSpan(0, nodes.Count).ToArray();
        for (var row = 0; row < nodes.FirstGround; row++)
        {
            for (var at = table.Starts[row]; at < table.Starts[row + 1]; at++)
            {
                var (partner, count) = (table.Partners[at], table.Counts[at]);
                if (!nodes.IsInside(partner))
                    (Senders[next[row]], Counts[next[row]++]) = (partner, partner == row ? 2 * count : count);
                if (!nodes.IsInside(row) && partner != row)
                    (Senders[next[partner]], Counts[next[partner]++]) = (row, count);
            }
        }
    }
}
