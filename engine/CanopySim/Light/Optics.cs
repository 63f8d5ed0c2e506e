using CanopySim.Parameters;

namespace CanopySim.Light;

/// <summary>How blades, wood and ground treat light in two bands: photosynthetically active (PAR, 400 to 700 nm) and near infrared (NIR).</summary>
public sealed record Optics
{
    private const string LeafSource = "suggested set within the ranges of Smart 1985, Schultz 1996 and Walter-Shea & Norman 1991";

    [Parameter("1", 0, 1, "Share of PAR that a blade reflects.", Mark = Mark.Recalled, Source = LeafSource)]
    public double LeafParReflectance { get; init; } = 0.08;

    [Parameter("1", 0, 1, "Share of PAR that a blade lets through.", Mark = Mark.Recalled, Source = LeafSource)]
    public double LeafParTransmittance { get; init; } = 0.06;

    [Parameter("1", 0, 1, "Share of NIR that a blade reflects.", Mark = Mark.Recalled, Source = LeafSource)]
    public double LeafNirReflectance { get; init; } = 0.45;

    [Parameter("1", 0, 1, "Share of NIR that a blade lets through.", Mark = Mark.Recalled, Source = LeafSource)]
    public double LeafNirTransmittance { get; init; } = 0.40;

    [Parameter("1", 0, 1, "Share of PAR that wood and fruit reflect.", Mark = Mark.Assumed)]
    public double WoodParReflectance { get; init; } = 0.15;

    [Parameter("1", 0, 1, "Share of NIR that wood and fruit reflect.", Mark = Mark.Assumed)]
    public double WoodNirReflectance { get; init; } = 0.40;

    [Parameter("1", 0, 1, "Share of PAR that the ground reflects.", Mark = Mark.Recalled, Source = "soil 0.10 to 0.15: Campbell & Norman 1998")]
    public double GroundParReflectance { get; init; } = 0.12;

    [Parameter("1", 0, 1, "Share of NIR that the ground reflects.", Mark = Mark.Recalled, Source = "soil 0.20 to 0.30: Campbell & Norman 1998")]
    public double GroundNirReflectance { get; init; } = 0.25;
}
