namespace CanopySim.Training;

/// <summary>
/// Lengths of each form where the scenario gives none. Heights, widths and angles of the trade, most without a source;
/// published among them: high wire and twin curtains at 1.5 to 1.8 m, twin curtains 1.2 m apart, open-u at 0.9 m
/// (growers' pages).
/// </summary>
internal static class TrellisDefaults
{
    public const double HeadHeight = 0.5;

    public const double LowerCordonHeight = 1.0;

    public static double CordonHeight(TrellisForm form) => form switch
    {
        TrellisForm.UprightHedge or TrellisForm.OpenU => 0.9,
        TrellisForm.HangingCurtain or TrellisForm.TwinCurtain => 1.7,
        TrellisForm.HighWire => 1.6,
        TrellisForm.SlantedV => 1.2,
        TrellisForm.UpAndDown => 1.15,
        TrellisForm.Bush => HeadHeight,
        _ => 2.0,
    };

    // Forms without wires over the cordon have none that is read; the curtain keeps the one it is built with.
    public static double TopWireHeight(TrellisForm form) => form switch
    {
        TrellisForm.HangingCurtain => 1.8,
        TrellisForm.SlantedV => 2.05,
        TrellisForm.UpAndDown => 2.15,
        TrellisForm.HighWire or TrellisForm.TwinCurtain or TrellisForm.Bush => CordonHeight(form),
        _ => 2.0,
    };

    // Of high-wire and bush, which no wire holds, what their foliage fills.
    public static double FoliageWidth(TrellisForm form, RoofArms arms) => form switch
    {
        TrellisForm.UprightHedge or TrellisForm.OpenU or TrellisForm.SlantedV => 0.35,
        TrellisForm.HangingCurtain => 0.5,
        TrellisForm.TwinCurtain => 0.4,
        TrellisForm.UpAndDown => 0.3,
        TrellisForm.HighWire => 1.1,
        TrellisForm.Bush => 1.4,
        _ => arms switch
        {
            RoofArms.Both => 2.0,
            RoofArms.Facing => 1.2,
            _ => 1.5,
        },
    };

    public static double CordonDistance(TrellisForm form) => form switch
    {
        TrellisForm.TwinCurtain => 1.2,
        TrellisForm.OpenU => 0.8,
        TrellisForm.SlantedV => 0.3,
        _ => 0,
    };

    public static double WallTilt(TrellisForm form) => form switch
    {
        TrellisForm.OpenU => 12,
        TrellisForm.SlantedV => 40,
        _ => 0,
    };
}
