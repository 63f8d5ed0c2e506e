using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Walks every pixel of one direction from the sky to the ground and reports each pair of faces that look at each other
/// along it. One worker's scratch arrays, reused from direction to direction.
/// </summary>
internal sealed class LinkTracer(Scene scene, LightMesh mesh, LightNodes nodes)
{
    private int[] _pixels = new int[1 << 16];
    private ulong[] _keys = new ulong[1 << 16];
    private ulong[] _sorted = [];
    private int[] _ends = [];

    /// <summary>Counts the links of a direction; returns its pixels.</summary>
    public int Trace(LinkDirection direction, LinkCounter links)
    {
        var grid = ProjectedGrid.For(scene.Cell, direction.Upwards, direction.Pixel);
        if (_ends.Length < grid.PixelCount) _ends = new int[grid.PixelCount];
        Array.Clear(_ends, 0, grid.PixelCount);
        var runs = new FragmentRuns { Pixels = _pixels, Keys = _keys, CountOfPixel = _ends, Faces = mesh.Faces };
        TriangleRaster.Draw(mesh, grid, direction.ColumnOffset, direction.RowOffset, ref runs);
        (_pixels, _keys) = (runs.Pixels, runs.Keys);
        SortByPixel(runs.Count, grid.PixelCount);

        var sky = nodes.FirstSky + direction.Index;
        var stripOfColumn = nodes.StripsOfColumns(grid.Width, direction.ColumnOffset);
        var (pixel, start) = (0, 0);
        for (var row = 0; row < grid.Height; row++)
        {
            for (var column = 0; column < grid.Width; column++, pixel++)
            {
                var above = sky;
                foreach (var key in SortByHeight(_sorted.AsSpan(start, _ends[pixel] - start)))
                {
                    var top = (int)(uint)key;
                    links.Add(above, top);
                    above = top ^ 1;
                }

                links.Add(above, nodes.FirstGround + stripOfColumn[column]);
                start = _ends[pixel];
            }
        }

        return grid.PixelCount;
    }

    // Counting sort; it keeps the order of drawing, so that fragments arrive nearly sorted from the highest down.
    private void SortByPixel(int count, int pixelCount)
    {
        if (_sorted.Length < count) _sorted = new ulong[_keys.Length];
        var sum = 0;
        foreach (ref var end in _ends.AsSpan(0, pixelCount))
        {
            var fragments = end;
            end = sum;
            sum += fragments;
        }

        var pixels = _pixels.AsSpan(0, count);
        var keys = _keys.AsSpan(0, count);
        for (var i = 0; i < pixels.Length; i++) _sorted[_ends[pixels[i]]++] = keys[i];
    }

    private static Span<ulong> SortByHeight(Span<ulong> fragments)
    {
        for (var i = 1; i < fragments.Length; i++)
        {
            var key = fragments[i];
            var j = i - 1;
            for (; j >= 0 && fragments[j] < key; j--) fragments[j + 1] = fragments[j];
            fragments[j + 1] = key;
        }

        return fragments;
    }

    private struct FragmentRuns : IPixelRuns
    {
        public int[] Pixels;
        public ulong[] Keys;
        public int[] CountOfPixel;
        public uint[] Faces;
        public int Count;

        public void Add(int place, bool upperSeesLight, int pixel, int count, float height, float slope, float lowest, float highest)
        {
            if (Count + count > Keys.Length) Grow(count);
            var top = Faces[place] | (upperSeesLight ? 0u : 1u);
            for (var i = 0; i < count; i++)
            {
                var z = Math.Clamp(height + (i * slope), lowest, highest);
                if (z < 0) continue;
                Keys[Count] = ((ulong)BitConverter.SingleToUInt32Bits(z + 0f) << 32) | top;
                Pixels[Count++] = pixel + i;
                CountOfPixel[pixel + i]++;
            }
        }

        private void Grow(int count)
        {
            var size = Math.Max(2 * Keys.Length, Count + count);
            Array.Resize(ref Keys, size);
            Array.Resize(ref Pixels, size);
        }
    }
}
