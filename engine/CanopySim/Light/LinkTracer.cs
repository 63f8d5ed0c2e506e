using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Walks every pixel of one direction from the sky to the ground and reports each pair of faces that look at each other
/// along it. One worker's scratch arrays, reused from direction to direction. Here and elsewhere in Light/ the loops that a season
/// runs millions of times are compiled once and well: run slow first and made fast later they cost a draft half its time.
/// </summary>
internal sealed class LinkTracer(Scene scene, LightMesh mesh, LightNodes nodes)
{
    // Stands before the fragments of a pixel and is above every height.
    private const ulong Border = 0xFFFF_FFFF_0000_0000;

    private readonly FragmentList _fragments = new(mesh.Faces);
    private ulong[] _sorted = [];
    private int[] _ends = [];

    /// <summary>Counts the links of a direction; returns its pixels.</summary>
    /// <param name="direction">The direction.</param>
    /// <param name="links">Receives links between faces and from faces to the ground.</param>
    /// <param name="sky">Receives links from the direction's sky, by node.</param>
    public int Trace(LinkDirection direction, LinkCounter links, int[] sky)
    {
        var grid = ProjectedGrid.For(scene.Cell, direction.Upwards, direction.Pixel);
        _fragments.Count = 0;
        var rows = new Rows(_fragments);
        FacetRaster.Draw(mesh, grid, direction.ColumnOffset, direction.RowOffset, ref rows);
        Sort(grid.PixelCount);
        Walk(grid, nodes.StripsOfColumns(grid.Width, direction.ColumnOffset), links, sky);
        return grid.PixelCount;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Walk(in ProjectedGrid grid, int[] stripOfColumn, LinkCounter links, int[] sky)
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
                    sky[nodes.FirstGround + stripOfColumn[column]]++;
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
        var pixels = _fragments.Pixels.AsSpan(0, _fragments.Count);
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

        var heights = _fragments.Heights.AsSpan(0, pixels.Length);
        var faces = _fragments.Faces.AsSpan(0, pixels.Length);
        for (var i = 0; i < pixels.Length; i++)
        {
            var key = ((ulong)BitConverter.SingleToUInt32Bits(heights[i]) << 32) | faces[i];
            var place = ends[pixels[i]]++;
            for (; sorted[place - 1] < key; place--) sorted[place] = sorted[place - 1];
            sorted[place] = key;
        }
    }

    private readonly struct Rows(FragmentList fragments) : IFacetRows
    {
        public void Add(in FacetRows rows, uint covered) => fragments.Add(rows, covered);
    }
}
