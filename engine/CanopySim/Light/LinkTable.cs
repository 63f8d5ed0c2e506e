using System.Runtime.CompilerServices;

namespace CanopySim.Light;

/// <summary>
/// How often each face looks at another and at the ground, over all directions: rows by the smaller node, partners ascending.
/// Counts are whole numbers, so the table is the same for any number of workers and any order of directions.
/// </summary>
internal sealed class LinkTable
{
    private LinkTable(int[] starts, int[] partners, uint[] counts) => (Starts, Partners, Counts) = (starts, partners, counts);

    /// <summary>First entry of each row, and one past the last.</summary>
    public int[] Starts { get; }

    public int[] Partners { get; }

    public uint[] Counts { get; }

    public static LinkTable Empty(int rows) => new(new int[rows + 1], [], []);

    /// <summary>This table with the workers' links added.</summary>
    public LinkTable With(IReadOnlyList<LinkCounter> workers, LightNodes nodes, int threads)
    {
        const int BlockRows = 64;
        var rows = nodes.FirstGround;
        var blocks = new (int[] Partners, uint[] Counts)[(rows + BlockRows - 1) / BlockRows];
        var starts = new int[rows + 1];
        Workers.Run(threads, blocks.Length, () => new RowCount(nodes.Count), (scratch, block) =>
        {
            scratch.Begin();
            for (var row = block * BlockRows; row < Math.Min(rows, (block + 1) * BlockRows); row++)
            {
                for (var at = Starts[row]; at < Starts[row + 1]; at++) scratch.Add(Partners[at], Counts[at]);
                foreach (var worker in workers) worker.Count(row, scratch.Histogram, scratch.Marks);
                starts[row + 1] = scratch.Flush();
            }

            blocks[block] = scratch.Result();
        });

        for (var row = 0; row < rows; row++) starts[row + 1] = checked(starts[row + 1] + starts[row]);
        var (partners, counts) = (new int[starts[rows]], new uint[starts[rows]]);
        for (var block = 0; block < blocks.Length; block++)
        {
            blocks[block].Partners.CopyTo(partners, starts[block * BlockRows]);
            blocks[block].Counts.CopyTo(counts, starts[block * BlockRows]);
        }

        return new LinkTable(starts, partners, counts);
    }

    private sealed class RowCount(int partnerCount)
    {
        private int[] _partners = new int[1 << 12];
        private uint[] _counts = new uint[1 << 12];
        private int _entries;

        public uint[] Histogram { get; } = new uint[(partnerCount + LinkCounter.MarkWidth) / LinkCounter.MarkWidth * LinkCounter.MarkWidth];

        public byte[] Marks { get; } = new byte[(partnerCount + LinkCounter.MarkWidth) / LinkCounter.MarkWidth];

        public void Begin() => _entries = 0;

        public void Add(int partner, uint count)
        {
            Histogram[partner] += count;
            Marks[partner / LinkCounter.MarkWidth] = 1;
        }

        // Entries of the row in ascending order by way of the marks; leaves histogram and marks clean.
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public int Flush()
        {
            var before = _entries;
            for (var mark = Marks.AsSpan().IndexOf((byte)1); mark >= 0;)
            {
                Marks[mark] = 0;
                if (_entries + LinkCounter.MarkWidth > _partners.Length)
                {
                    Array.Resize(ref _partners, 2 * _partners.Length);
                    Array.Resize(ref _counts, 2 * _counts.Length);
                }

                for (var partner = mark * LinkCounter.MarkWidth; partner < (mark + 1) * LinkCounter.MarkWidth; partner++)
                {
                    var count = Histogram[partner];
                    Histogram[partner] = 0;
                    (_partners[_entries], _counts[_entries]) = (partner, count);
                    _entries += count > 0 ? 1 : 0;
                }

                var next = Marks.AsSpan(mark).IndexOf((byte)1);
                mark = next < 0 ? -1 : mark + next;
            }

            return _entries - before;
        }

        public (int[] Partners, uint[] Counts) Result() => (_partners[.._entries], _counts[.._entries]);
    }
}
