using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>The sky directions of a geometry and what each sends through the cell.</summary>
internal sealed class SkyPatches
{
    private readonly bool[] _sees;
    private readonly int[] _pixels;
    private readonly double[] _horizontalWeights;
    private readonly Cell _cell;

    /// <param name="cell">The cell.</param>
    /// <param name="directions">Unit vectors of equal solid angle over a hemisphere.</param>
    /// <param name="pixel">Edge of a pixel square to them [m].</param>
    /// <param name="pixels">Pixels traced in each; 0 where none.</param>
    public SkyPatches(in Cell cell, IReadOnlyList<Vector3> directions, double pixel, int[] pixels)
    {
        (_cell, _pixels, Directions) = (cell, pixels, directions);
        LinkPower = 2.0 / directions.Count * pixel * pixel;
        _sees = new bool[directions.Count];
        _horizontalWeights = new double[directions.Count];
        for (var index = 0; index < directions.Count; index++)
        {
            var vertical = ProjectedGrid.VerticalOf(cell, directions[index]);

            // The cosine as the pixels have it, so that on flat ground the cell receives the diffuse irradiance to the last digit.
            // A horizontal plane in the open sees what the hillside hides from the cell.
            var solidAngle = pixels[index] > 0
                ? LinkPower * pixels[index] / (Math.Abs(vertical) * cell.GroundArea)
                : 2.0 / directions.Count;
            _horizontalWeights[index] = solidAngle * Math.Max(0, directions[index].Z);
            _sees[index] = vertical > 0 && directions[index].Z > 0 && pixels[index] > 0;
            if (_sees[index]) TotalPixels += pixels[index];
        }
    }

    public IReadOnlyList<Vector3> Directions { get; }

    /// <summary>
    /// Power that a link carries per radiosity of its sender [m²]: solid angle of a direction (2π / N) times the area of a pixel
    /// square to it, over π.
    /// </summary>
    public double LinkPower { get; }

    /// <summary>Pixels of all directions that see the sky.</summary>
    public long TotalPixels { get; }

    /// <summary>What a radiance of 1 in each direction brings to a horizontal plane in the open.</summary>
    public IReadOnlyList<double> HorizontalWeights => _horizontalWeights;

    public bool Sees(int direction) => _sees[direction];

    /// <summary>
    /// π times the radiance of each direction [W m⁻²] for a diffuse irradiance of 1 W m⁻² on a horizontal plane in the open;
    /// 0 in the hillside. A sky that is dark all over stays dark.
    /// </summary>
    public double[] Scale(double[]? relative)
    {
        if (relative is not null && relative.Length != _sees.Length)
            throw new ArgumentException($"{relative.Length} radiances for {_sees.Length} directions", nameof(relative));
        var (radiance, horizontal) = (new double[_sees.Length], 0.0);
        for (var index = 0; index < radiance.Length; index++)
        {
            var value = relative?[index] ?? 1;
            if (!(value >= 0 && double.IsFinite(value)))
                throw new ArgumentException($"sky radiance {value} in direction {index}", nameof(relative));
            radiance[index] = _horizontalWeights[index] > 0 ? value : 0;
            horizontal += radiance[index] * _horizontalWeights[index];
        }

        if (horizontal > 0)
            for (var index = 0; index < radiance.Length; index++) radiance[index] = _sees[index] ? radiance[index] / horizontal : 0;
        return radiance;
    }

    /// <summary>Power through the cell from radiances as <see cref="Scale"/> gives them [W m⁻² of horizontal ground].</summary>
    public double Through(double[] radiance)
    {
        var power = 0.0;
        for (var index = 0; index < radiance.Length; index++) power += radiance[index] * LinkPower * _pixels[index];
        return power / _cell.GroundArea;
    }
}
