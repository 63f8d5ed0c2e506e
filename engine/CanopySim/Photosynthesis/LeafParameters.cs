using CanopySim.Parameters;

namespace CanopySim.Photosynthesis;

/// <summary>Gas exchange of a leaf at its best age, in full light.</summary>
public sealed record LeafParameters
{
    [Parameter("umol m-2 s-1", 10, 200, "Vcmax at 25 degC.", Mark = Mark.Fitted,
        Source = "about 9 to 10 g CO2 a day and m2 of leaf in July (5 to 11 derived from whole-canopy chambers); published 70 to 90: Schultz 2003, from memory")]
    public double Vcmax25 { get; init; } = 57;

    [Parameter("1", 1, 3, "Jmax over Vcmax at 25 degC.", Mark = Mark.Recalled, Source = "1.6 to 2.1: Schultz 2003; Greer & Weedon 2012")]
    public double JmaxToVcmax { get; init; } = 1.75;

    [Parameter("umol m-2 s-1", 0, 4, "Day respiration at 25 degC.", Mark = Mark.Recalled, Source = "0.7 to 1.5: Schultz 2003")]
    public double DayRespiration25 { get; init; } = 0.65;

    [Parameter("degC", 11, 35, "Growth temperature for the optima of Vcmax and Jmax.", Mark = Mark.Published, Source = "Kattge & Knorr 2007: 11 to 35")]
    public double GrowthTemperature { get; init; } = 25;

    [Parameter("1", 0.3, 0.95, "Curvature of the light response of electron transport.", Mark = Mark.Recalled, Source = "0.7 to 0.9")]
    public double ElectronTransportCurvature { get; init; } = 0.7;

    [Parameter("kPa0.5", 0.5, 15, "Slope g1 of stomatal conductance.", Mark = Mark.Recalled, Source = "2.5 to 5.0 for grapevine: fits of Medlyn et al. 2011")]
    public double StomatalSlope { get; init; } = 3.5;

    [Parameter("mol m-2 s-1", 0.001, 0.2, "Floor g0 of stomatal conductance to water vapor.", Mark = Mark.Assumed)]
    public double StomatalFloor { get; init; } = 0.01;

    [Parameter("1", 0, 1, "Capacity of a leaf in deep shade against one in full light.", Mark = Mark.Assumed)]
    public double ShadeCapacity { get; init; } = 0.4;

    [Parameter("1", 0.05, 1, "Share of the incident PAR at which a leaf is fully acclimated to light.", Mark = Mark.Assumed)]
    public double FullAcclimationLight { get; init; } = 0.3;

    [Parameter("1", 0.5, 1, "Longwave emissivity of a blade.", Mark = Mark.Recalled, Source = "0.96 to 0.98")]
    public double Emissivity { get; init; } = 0.97;

    [Parameter("degC", 38, 44, "Leaf temperature above which heat closes the leaf down.", Mark = Mark.Assumed)]
    public double HeatClosureStart { get; init; } = 40;

    [Parameter("degC", 44, 55, "Leaf temperature at which it is closed.", Mark = Mark.Assumed)]
    public double HeatClosureEnd { get; init; } = 46;
}
