namespace CanopySim.Light;

/// <summary>Light on every surface of a scene for a list of moments. Flat arrays are indexed [hour × surfaces + surface].</summary>
public sealed class LightSolution
{
    internal LightSolution(int hourCount, int surfaceCount, double skyGapFraction)
    {
        (HourCount, SurfaceCount, SkyGapFraction) = (hourCount, surfaceCount, skyGapFraction);
        AbsorbedParDirect = new double[hourCount * surfaceCount];
        AbsorbedPar = new double[hourCount * surfaceCount];
        AbsorbedNir = new double[hourCount * surfaceCount];
        SunlitShare = new double[hourCount * surfaceCount];
        ParBudgets = new LightBudget[hourCount];
        NirBudgets = new LightBudget[hourCount];
        GroundSunlitFraction = new double[hourCount];
    }

    public int HourCount { get; }

    public int SurfaceCount { get; }

    /// <summary>PAR that comes straight from the sun and stays at the first hit [W].</summary>
    public double[] AbsorbedParDirect { get; }

    /// <summary>All PAR absorbed: direct, diffuse and scattered [W].</summary>
    public double[] AbsorbedPar { get; }

    /// <summary>All NIR absorbed [W].</summary>
    public double[] AbsorbedNir { get; }

    /// <summary>Share of the surface's one-sided area that the sun reaches.</summary>
    public double[] SunlitShare { get; }

    public LightBudget[] ParBudgets { get; }

    public LightBudget[] NirBudgets { get; }

    /// <summary>Share of the ground that the sun reaches, by hour; 0 when it is down.</summary>
    public double[] GroundSunlitFraction { get; }

    /// <summary>Share of the irradiance of a uniform sky that reaches the ground unshaded.</summary>
    public double SkyGapFraction { get; }

    public int IndexOf(int hour, int surface) => (hour * SurfaceCount) + surface;
}
