using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CanopySim.Light;

/// <summary>Arrays of one solution of the scattering problem, by node and lane.</summary>
internal sealed unsafe class SolverArrays
{
    private const int Lanes = ScatteringSolver.Lanes;

    // A node's lanes fill a line of the cache; the array is pinned, so that they still do later.
    private const int LineBytes = 64;

    public SolverArrays(int nodes)
    {
        (Nodes, Source, Received) = (nodes, new float[nodes * Lanes], new float[nodes * Lanes]);
        Lines = GC.AllocateArray<float>((nodes + 1) * Lanes, pinned: true);
        var address = (long)Unsafe.AsPointer(ref MemoryMarshal.GetArrayDataReference(Lines));
        FirstLine = (int)((LineBytes - (address % LineBytes)) % LineBytes / sizeof(float));
    }

    /// <summary>Nodes that there is room for.</summary>
    public int Nodes { get; }

    public float[] Source { get; }

    public float[] Received { get; }

    /// <summary>Radiosities, from <see cref="FirstLine"/> on.</summary>
    public float[] Lines { get; }

    public int FirstLine { get; }

    /// <summary>Arrays that are free, for any number of geometries and threads.</summary>
    public sealed class Pool
    {
        private readonly ConcurrentBag<SolverArrays> _free = [];

        /// <summary>Arrays with whatever was in them; a growing canopy gets a quarter more than it needs.</summary>
        public SolverArrays Take(LightNodes nodes) =>
            _free.TryTake(out var arrays) && arrays.Nodes >= nodes.Count ? arrays : new SolverArrays(nodes.Count + (nodes.Count / 4));

        public void Return(SolverArrays arrays) => _free.Add(arrays);
    }
}
