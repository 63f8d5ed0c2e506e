using System.Collections.Concurrent;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// What the sun sees of the scene: each pixel keeps its highest facet, of two at the same height the first of the mesh. One
/// thread draws a sun, in the order of the mesh.
/// </summary>
internal sealed class SunRaster
{
    // So many pixels tell a facet's sunlit share with a standard error of an eighth at most, if they were thrown at random.
    private const double PixelsThatTell = 16;

    private SunRaster(double vertical, LightNodes nodes)
    {
        Vertical = vertical;
        PowerOfNode = new double[nodes.Count];
        SunlitShares = new double[nodes.Surfaces];
    }

    /// <summary>Irradiance through the cell per normal irradiance.</summary>
    public double Vertical { get; }

    /// <summary>Power that each face or ground strip receives per normal irradiance [m²].</summary>
    public double[] PowerOfNode { get; }

    /// <summary>
    /// Sunlit share of each surface: visible part of each facet, weighted with the facet's true area. A facet too small or too
    /// steep for any pixel takes the share of the rest of its surface, and the fewer pixels one has the more it does.
    /// </summary>
    public double[] SunlitShares { get; }

    public double GroundSunlitFraction { get; private set; }

    public static SunRaster Draw(Scene scene, LightMesh mesh, LightNodes nodes, Vector3 direction, double pixel, Scratch scratch)
    {
        var grid = ProjectedGrid.For(scene.Cell, direction, pixel);
        var raster = new SunRaster(grid.Vertical, nodes);
        scratch.Draw(mesh, grid);

        var groundPixels = new int[nodes.GroundStrips];
        var stripOfColumn = nodes.StripsOfColumns(grid.Width, 0.5f);
        for (var row = 0; row < grid.Height; row++)
        {
            var owners = scratch.Owners.AsSpan(row * grid.Width, grid.Width);
            for (var column = 0; column < owners.Length; column++)
            {
                if (owners[column] < 0) groundPixels[stripOfColumn[column]]++;
                else scratch.VisibleOfFacet[owners[column]]++;
            }
        }

        for (var facet = 0; facet < mesh.Count; facet++)
            raster.PowerOfNode[(int)mesh.Faces[facet] + scratch.SideOf(facet)] += scratch.VisibleOfFacet[facet] * grid.PixelPower;
        for (var strip = 0; strip < groundPixels.Length; strip++)
            raster.PowerOfNode[nodes.FirstGround + strip] = groundPixels[strip] * grid.PixelPower;
        // Pixels are added before the division: twelve shares would make a hair more than 1 of bare ground.
        raster.GroundSunlitFraction = groundPixels.Sum() / (double)grid.PixelCount;
        ShareSunlit(mesh, scratch, raster.SunlitShares);
        return raster;
    }

    private static void ShareSunlit(LightMesh mesh, Scratch scratch, double[] shares)
    {
        var sampled = new double[shares.Length];
        for (var facet = 0; facet < mesh.Count; facet++)
        {
            var pixels = scratch.PixelsOfFacet[facet];
            if (pixels == 0) continue;
            var (surface, area) = ((int)(mesh.Faces[facet] / 2), mesh.Areas[facet] * Math.Min(1, pixels * (1 / PixelsThatTell)));
            sampled[surface] += area;
            // The share first, so that a surface in full sun has all of its area and not a hair more.
            shares[surface] += area * (scratch.VisibleOfFacet[facet] / (double)pixels);
        }

        for (var surface = 0; surface < shares.Length; surface++)
        {
            if (sampled[surface] > 0) shares[surface] /= sampled[surface];
        }
    }

    /// <summary>Pixels that are free, for any number of geometries and threads.</summary>
    public sealed class ScratchPool
    {
        private readonly ConcurrentBag<Scratch> _free = [];

        public Scratch Take() => _free.TryTake(out var scratch) ? scratch : new Scratch();

        public void Return(Scratch scratch) => _free.Add(scratch);
    }

    /// <summary>One worker's pixels.</summary>
    public sealed class Scratch : IFacetTarget
    {
        private readonly FacetRaster _raster = new();
        private float[] _heights = [];
        private int[] _sides = [];
        private LightMesh? _mesh;

        /// <summary>The highest facet in each pixel; −1 for the ground.</summary>
        public int[] Owners { get; private set; } = [];

        /// <summary>Pixels that each facet covers.</summary>
        public int[] PixelsOfFacet { get; private set; } = [];

        /// <summary>Those of them in which it is the highest.</summary>
        public int[] VisibleOfFacet { get; private set; } = [];

        /// <summary>The side of a facet that faces the sun: 0 upper, 1 lower.</summary>
        public int SideOf(int facet) => _sides[facet];

        public void Draw(LightMesh mesh, in ProjectedGrid grid)
        {
            _mesh = mesh;
            var (pixels, facets) = (grid.PixelCount, mesh.Count);

            // Eight at a time are read past the end of the last row.
            if (_heights.Length < pixels + LightMesh.Lanes) (_heights, Owners) = (new float[Room(pixels + LightMesh.Lanes)], new int[Room(pixels + LightMesh.Lanes)]);
            if (_sides.Length < facets) (_sides, PixelsOfFacet, VisibleOfFacet) = (new int[Room(facets)], new int[Room(facets)], new int[Room(facets)]);
            PixelsOfFacet.AsSpan(0, facets).Clear();
            VisibleOfFacet.AsSpan(0, facets).Clear();
            _heights.AsSpan(0, pixels).Fill(-float.Epsilon);
            Owners.AsSpan(0, pixels).Fill(-1);
            _raster.Draw(mesh, grid, 0.5f, 0.5f, this);
        }

        // A growing canopy gets a quarter more than it needs.
        private static int Room(int count) => count + (count / 4);

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Take(FacetRows rows)
        {
            var mesh = _mesh!;
            var places = rows.Places;
            var slopes = rows.Slopes;
            for (var row = 0; row < rows.Count; row++)
            {
                var (start, length, place) = (rows.Pixels[row], rows.Lengths[row], places[row]);
                _sides[place] = 1 - rows.UpperSeesLight[place];
                ref var height = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_heights), start);
                ref var owners = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Owners), start);
                var (slope, lowest, highest) = (slopes[place], Vector256.Create(mesh.Lowest[place]), Vector256.Create(mesh.Highest[place]));
                var (firstHeight, step, owner) = (Vector256.Create(rows.Heights[row]), Vector256<float>.Indices, Vector256.Create(place));
                var belowGround = mesh.Lowest[place] < 0;
                var drawn = belowGround ? 0 : length;
                for (var i = 0; i < length; i += LightMesh.Lanes)
                {
                    var z = Vector256.MinNative(Vector256.MaxNative(firstHeight + (step * slope), lowest), highest);
                    var own = Vector256.LessThan(Vector256<int>.Indices, Vector256.Create(length - i)).AsSingle();
                    var old = Vector256.LoadUnsafe(ref height, (nuint)i);
                    var before = Vector256.LoadUnsafe(ref owners, (nuint)i);
                    var first = Vector256.Equals(z, old).AsInt32() & Vector256.LessThan(owner, before);
                    var higher = (Vector256.GreaterThan(z, old) | first.AsSingle()) & own;
                    Vector256.ConditionalSelect(higher, z, old).StoreUnsafe(ref height, (nuint)i);
                    Vector256.ConditionalSelect(higher.AsInt32(), owner, before).StoreUnsafe(ref owners, (nuint)i);
                    if (belowGround)
                        drawn += BitOperations.PopCount((Vector256.GreaterThanOrEqual(z, Vector256<float>.Zero) & own).ExtractMostSignificantBits());
                    step += Vector256.Create((float)LightMesh.Lanes);
                }

                PixelsOfFacet[place] += drawn;
            }
        }
    }
}
