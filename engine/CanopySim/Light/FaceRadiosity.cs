namespace CanopySim.Light;

/// <summary>What every face and strip of ground sends out in each hour, kept for sensors that look at them.</summary>
public sealed class FaceRadiosity
{
    private const int Lanes = ScatteringSolver.Lanes;

    private readonly float[][] _par, _nir;

    internal FaceRadiosity(LightGeometry geometry, IReadOnlyList<IncidentLight> hours)
    {
        (Geometry, Hours) = (geometry, hours);
        _par = new float[(hours.Count + Lanes - 1) / Lanes][];
        _nir = new float[_par.Length][];
    }

    /// <summary>What fell on the scene in each hour.</summary>
    public IReadOnlyList<IncidentLight> Hours { get; }

    internal LightGeometry Geometry { get; }

    /// <summary>Keeps the radiosity of a group of hours of one band, as the solver has it.</summary>
    internal void Keep(ScatteringSolver solver, int group, bool nir) => (nir ? _nir : _par)[group] = solver.Radiosity.ToArray();

    /// <summary>Radiosity of a node in an hour [W m⁻²].</summary>
    internal double Of(int node, int hour, bool nir) => (nir ? _nir : _par)[hour / Lanes][(node * Lanes) + (hour % Lanes)];
}
