using CanopySim.Numerics;

namespace CanopySim.Training;

/// <summary>How the ground of a block rises, seen from its rows.</summary>
/// <param name="Across">Per meter to the right of the row (x) [1].</param>
/// <param name="Along">Per meter along it (y) [1].</param>
public readonly record struct GroundRise(double Across, double Along)
{
    /// <summary>Of a scenario's slope and row azimuth.</summary>
    public static GroundRise Of(Scenario scenario)
    {
        var steepness = Math.Tan(UnitConversion.RadiansFromDegrees(scenario.Site.Slope));
        // The ground falls towards the aspect; y runs along the row azimuth, x 90° clockwise from it.
        var turn = UnitConversion.RadiansFromDegrees(scenario.Site.Aspect - scenario.Rows.Azimuth);
        return new GroundRise(-steepness * Math.Sin(turn), -steepness * Math.Cos(turn));
    }
}
