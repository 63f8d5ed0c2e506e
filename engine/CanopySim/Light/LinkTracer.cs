using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Walks every pixel of one direction from the sky to the ground and reports each pair of faces that look at each other
/// along it. One worker's scratch arrays, reused from direction to direction.
/// </summary>
internal sealed class LinkTracer(Scene scene, LightMesh mesh, LightNodes nodes)
{
    // Where a pixel's fragments begin: its key is above every height, its node is told apart by the walk.
    private const ulong Border = 0xFFFF_FFFF_0000_0000;

    private readonly FragmentList _fragments = new(mesh.Faces);
    private ulong[] _sorted = [];
    private int[] _ends = [];

    /// <summary>Counts the links of a direction; returns its pixels.</summary>
    public int Trace(LinkDirection direction, LinkCounter links)
    {
        var grid = ProjectedGrid.For(scene.Cell, direction.Upwards, direction.Pixel);
        _fragments.Count = 0;
        var rows = new Rows(_fragments);
        FacetRaster.Draw(mesh, grid, direction.ColumnOffset, direction.RowOffset, ref rows);
        var count = Sort(grid, nodes.StripsOfColumns(grid.Width, direction.ColumnOffset));

        // Between two borders lies one pixel from the sky down; the border at its end is its ground. Only borders have the sign
        // bit; a mask of it spares a branch that nobody could predict.
        var above = nodes.FirstSky + direction.Index;
        var sky = above;
        foreach (var key in _sorted.AsSpan(1, count - 1))
        {
            var top = (int)(uint)key;
            links.Add(above, top);
            var border = (int)((long)key >> 63);
            above = (sky & border) | ((top ^ 1) & ~border);
        }

        return grid.PixelCount;
    }

    // Places each fragment behind the border of its pixel, by falling height. Drawing goes from the highest triangle down, so
    // most land at the end of their pixel's list at once. The border after a pixel carries the ground strip under it.
    private int Sort(in ProjectedGrid grid, int[] stripOfColumn)
    {
        if (_ends.Length < grid.PixelCount) _ends = new int[grid.PixelCount];
        var ends = _ends.AsSpan(0, grid.PixelCount);
        ends.Clear();
        foreach (var pixel in _fragments.Pixels.AsSpan(0, _fragments.Count)) ends[pixel]++;
        var total = _fragments.Count + grid.PixelCount + 1;
        if (_sorted.Length < total) _sorted = new ulong[total + (total / 4)];
        _sorted[0] = Border;
        var next = 1;
        for (var (pixel, row) = (0, 0); row < grid.Height; row++)
        {
            foreach (var strip in stripOfColumn)
            {
                var fragments = ends[pixel];
                ends[pixel++] = next;
                next += fragments;
                _sorted[next++] = Border | (uint)(nodes.FirstGround + strip);
            }
        }

        var pixels = _fragments.Pixels.AsSpan(0, _fragments.Count);
        var heights = _fragments.Heights.AsSpan(0, pixels.Length);
        var faces = _fragments.Faces.AsSpan(0, pixels.Length);
        var sorted = _sorted;
        for (var i = 0; i < pixels.Length; i++)
        {
            var key = ((ulong)BitConverter.SingleToUInt32Bits(heights[i]) << 32) | faces[i];
            var place = ends[pixels[i]]++;
            for (; sorted[place - 1] < key; place--) sorted[place] = sorted[place - 1];
            sorted[place] = key;
        }

        return total;
    }

    private readonly struct Rows(FragmentList fragments) : IFacetRows
    {
        public void Add(in FacetRows rows, uint covered) => fragments.Add(rows, covered);
    }
}
