using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>Reflectance and transmittance of each node in one band. Insides of closed bodies are black.</summary>
internal sealed class BandOptics
{
    public BandOptics(Scene scene, LightNodes nodes, Optics optics, bool nir)
    {
        var (leafReflectance, leafTransmittance) = nir
            ? (optics.LeafNirReflectance, optics.LeafNirTransmittance)
            : (optics.LeafParReflectance, optics.LeafParTransmittance);
        if (leafReflectance + leafTransmittance > 1)
            throw new ArgumentException("a blade reflects and lets through more light than it receives", nameof(optics));
        Reflectance = new float[nodes.Count];
        Transmittance = new float[nodes.Count];
        for (var surface = 0; surface < nodes.Surfaces; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade)
            {
                var wood = (float)(nir ? optics.WoodNirReflectance : optics.WoodParReflectance);
                Reflectance[2 * surface] = wood;
                if (!nodes.IsInside((2 * surface) + 1)) Reflectance[(2 * surface) + 1] = wood;
                continue;
            }

            Reflectance[2 * surface] = Reflectance[(2 * surface) + 1] = (float)leafReflectance;
            Transmittance[2 * surface] = Transmittance[(2 * surface) + 1] = Rest(leafTransmittance, (float)leafReflectance);
        }

        SentByBlade = leafReflectance + leafTransmittance;
        Reflectance.AsSpan(nodes.FirstGround).Fill((float)(nir ? optics.GroundNirReflectance : optics.GroundParReflectance));
    }

    public float[] Reflectance { get; }

    /// <summary>Share of its light that a blade sends on.</summary>
    public double SentByBlade { get; }

    public float[] Transmittance { get; }

    /// <summary>
    /// What stays in the node, from the single-precision shares that the solver uses: the budget would miss their rounding.
    /// </summary>
    public double Absorptance(int node) => 1.0 - Reflectance[node] - Transmittance[node];

    // Two shares that make 1 may make more once each is rounded: blades that keep nothing would then keep less than nothing.
    private static float Rest(double transmittance, float reflectance)
    {
        var rounded = (float)transmittance;
        if (1.0 - reflectance - rounded >= 0) return rounded;
        rounded = (float)(1.0 - reflectance);
        return 1.0 - reflectance - rounded >= 0 ? rounded : MathF.BitDecrement(rounded);
    }
}
