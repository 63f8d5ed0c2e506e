using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Walks every pixel of one direction from the sky to the ground and reports each pair of faces that look at each other
/// along it. One worker's scratch arrays, reused from direction to direction and from day to day.
/// </summary>
internal sealed class LinkTracer
{
    // Stands before the fragments of a pixel and is above every height.
    private const ulong Border = 0xFFFF_FFFF_0000_0000;

    private readonly FacetRaster _raster = new();
    private readonly FragmentList _fragments = new();
    private ulong[] _sorted = [];
    private int[] _ends = [];

    /// <summary>Counts the links of a direction; returns its pixels.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="mesh">Its facets.</param>
    /// <param name="nodes">Numbering of what exchanges light.</param>
    /// <param name="direction">The direction.</param>
    /// <param name="links">Receives links between faces and from faces to the ground.</param>
    /// <param name="sky">Receives links from the direction's sky, by node.</param>
    public int Trace(in Cell cell, LightMesh mesh, LightNodes nodes, LinkDirection direction, LinkCounter links, int[] sky)
    {
        var grid = ProjectedGrid.For(cell, direction.Upwards, direction.Pixel);
        _fragments.Begin(mesh);
        _raster.Draw(mesh, grid, direction.ColumnOffset, direction.RowOffset, _fragments);
        Sort(grid.PixelCount);
        Walk(grid, nodes.FirstGround, nodes.StripsOfColumns(grid.Width, direction.ColumnOffset), links, sky);
        return grid.PixelCount;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Walk(in ProjectedGrid grid, int firstGround, int[] stripOfColumn, LinkCounter links, int[] sky)
    {
        ref var sorted = ref MemoryMarshal.GetArrayDataReference(_sorted);
        var at = 1;
        for (var row = 0; row < grid.Height; row++)
        {
            var ends = _ends.AsSpan(row * grid.Width, grid.Width);
            for (var column = 0; column < ends.Length; column++)
            {
                var end = ends[column];
                if (end == at)
                {
                    sky[firstGround + stripOfColumn[column]]++;
                    continue;
                }

                var top = (int)(uint)Unsafe.Add(ref sorted, at);
                sky[top]++;
                for (at++; at < end; at++)
                {
                    var below = (int)(uint)Unsafe.Add(ref sorted, at);
                    links.Add(top ^ 1, below);
                    top = below;
                }

                links.AddGround(top ^ 1, stripOfColumn[column]);
                at++;
            }
        }
    }

    // Places each fragment behind the border of its pixel, by falling height. Drawing goes from the highest facet down, so
    // most land at the end of their pixel's list at once. A pixel without fragments has no border.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Sort(int pixelCount)
    {
        if (_ends.Length < pixelCount) _ends = new int[pixelCount];
        var ends = _ends.AsSpan(0, pixelCount);
        ends.Clear();
        var pixels = _fragments.Pixels;
        foreach (var pixel in pixels) ends[pixel]++;
        var most = pixels.Length + Math.Min(pixels.Length, pixelCount) + 2;
        if (_sorted.Length < most) _sorted = new ulong[most + (most / 4)];
        var sorted = _sorted;
        sorted[0] = Border;
        var next = 1;
        foreach (ref var end in ends)
        {
            var count = end;
            end = next;
            next += count;
            sorted[next] = Border;
            next += count > 0 ? 1 : 0;
        }

        var heights = _fragments.Heights;
        var faces = _fragments.Faces;
        for (var i = 0; i < pixels.Length; i++)
        {
            var key = ((ulong)BitConverter.SingleToUInt32Bits(heights[i]) << 32) | faces[i];
            var place = ends[pixels[i]]++;
            for (; sorted[place - 1] < key; place--) sorted[place] = sorted[place - 1];
            sorted[place] = key;
        }
    }
}
