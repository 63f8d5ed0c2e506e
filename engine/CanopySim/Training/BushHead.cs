using System.Numerics;

namespace CanopySim.Training;

/// <summary>
/// The head of a bush vine: short arms that rise round the trunk's top, shoots on their ends. Lengths and number
/// assumed.
/// </summary>
internal static class BushHead
{
    public const int ArmCount = 5;

    private const double Reach = 0.16;

    private const double Rise = 0.12;

    /// <summary>Length of an arm [m].</summary>
    public static double ArmLength { get; } = Math.Sqrt((Reach * Reach) + (Rise * Rise));

    /// <summary>Where the arms leave the trunk, below the head [m].</summary>
    public static float Below => (float)Rise;

    /// <summary>End of an arm, from the middle of the head [m].</summary>
    public static Vector3 ArmEnd(int arm)
    {
        var (sin, cos) = Math.SinCos(2 * Math.PI * arm / ArmCount);
        return new Vector3((float)(Reach * cos), (float)(Reach * sin), 0);
    }

    /// <summary>The arm that points most nearly where a shoot does.</summary>
    /// <param name="azimuth">Of the shoot, from x towards y [rad].</param>
    public static int NearestArm(double azimuth)
    {
        var arm = (int)Math.Round(azimuth / (2 * Math.PI) * ArmCount) % ArmCount;
        return arm < 0 ? arm + ArmCount : arm;
    }
}
