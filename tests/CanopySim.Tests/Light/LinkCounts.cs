using CanopySim.Light;

namespace CanopySim.Tests.Light;

/// <summary>A geometry's links as a table: how often a node, that is a face or a strip of ground, receives from another or from the sky.</summary>
internal static class LinkCounts
{
    /// <summary>Stands for the sky of a direction as a sender; of that number, the direction.</summary>
    public static int Sky(int direction) => -1 - direction;

    /// <summary>By receiver and sender; the insides of closed bodies send nothing.</summary>
    public static SortedDictionary<(int Receiver, int Sender), long> Of(LightGeometry geometry)
    {
        var (matrix, nodes) = (geometry.Matrix, geometry.Nodes);
        var links = new SortedDictionary<(int, int), long>();
        for (var node = 0; node < nodes.Count; node++)
        {
            for (var at = matrix.Starts[node]; at < matrix.Starts[node + 1]; at++) Add(node, matrix.Senders[at], matrix.Counts[at]);
            for (var at = matrix.SkyStarts[node]; at < matrix.SkyStarts[node + 1]; at++) Add(node, Sky(matrix.SkyDirections[at]), matrix.SkyCounts[at]);
        }

        return links;

        void Add(int receiver, int sender, float count)
        {
            if (count > 0) links[(receiver, sender)] = links.GetValueOrDefault((receiver, sender)) + (long)count;
        }
    }
}
