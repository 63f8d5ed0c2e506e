namespace CanopySim.Training;

/// <summary>What a trellis holds: its walls of foliage.</summary>
public static class TrellisLayout
{
    /// <summary>The walls of one row, in the order of their numbers.</summary>
    public static IReadOnlyList<FoliageWall> WallsOf(Trellis trellis) =>
        [new FoliageWall(0, 0, trellis.CordonHeightOrDefault, TiltOf(trellis.Form), trellis.FoliageWidthOrDefault)];

    private static double TiltOf(TrellisForm form) => form switch
    {
        TrellisForm.UprightHedge => 0,
        TrellisForm.HangingCurtain => Math.PI,
        _ => 0.5 * Math.PI,
    };
}
