namespace CanopySim.Training;

/// <summary>Says where a zone is.</summary>
internal static class ZoneWords
{
    /// <summary>
    /// The zone between two heights over the cordon [m]; an end left out is the fruit zone's, or of the whole canopy
    /// none.
    /// </summary>
    public static string Of(double? from, double? to, bool whole = false) => (from, to) switch
    {
        (null, null) => whole ? "in the canopy" : "in the fruit zone",
        ({ } low, { } high) => FormattableString.Invariant($"from {low:0.##} to {high:0.##} m over the cordon"),
        ({ } low, null) when whole => FormattableString.Invariant($"from {low:0.##} m over the cordon up"),
        (null, { } high) when whole => FormattableString.Invariant($"up to {high:0.##} m over the cordon"),
        ({ } low, null) =>
            FormattableString.Invariant($"from {low:0.##} m over the cordon to the top of the fruit zone"),
        (null, { } high) =>
            FormattableString.Invariant($"from the bottom of the fruit zone to {high:0.##} m over the cordon"),
    };
}

/// <summary>Whether two steps work in the same part of the canopy.</summary>
public static class StepsOverlap
{
    /// <summary>True where two leaf removals share a piece of zone and a side.</summary>
    public static bool Of(LeafRemoval one, LeafRemoval other, Trellis trellis, double rowAzimuth) =>
        Zones(one, other, TrellisLayout.WallsOf(trellis)) && Sides(one.Side, other.Side, rowAzimuth);

    /// <summary>True where two removals of laterals share a piece of zone.</summary>
    public static bool Of(LateralRemoval one, LateralRemoval other, Trellis trellis) =>
        Zones(one, other, TrellisLayout.WallsOf(trellis));

    /// <summary>
    /// True where two toppings can meet the same wall: one over its cordon misses what hangs, one under it what stands.
    /// </summary>
    public static bool Of(Topping one, Topping other, Trellis trellis) => TrellisLayout.WallsOf(trellis).Any(wall =>
        ToppingWork.Meets(wall, one.Height) && ToppingWork.Meets(wall, other.Height));

    internal static bool Of(LeafRemoval one, LeafRemoval other, WorkPlace place) =>
        Of(one, other, place.Scenario.Trellis, place.Scenario.Rows.Azimuth);

    internal static bool Of(LateralRemoval one, LateralRemoval other, WorkPlace place) =>
        Of(one, other, place.Scenario.Trellis);

    private static bool Zones(ZoneStep one, ZoneStep other, IReadOnlyList<FoliageWall> walls) => walls.Any(wall =>
    {
        var (a, b) = (one.Within(wall), other.Within(wall));
        return a.From < b.To && b.From < a.To;
    });

    private static bool Sides(CanopySide one, CanopySide other, double rowAzimuth) => new[] { true, false }.Any(
        isRight => RowSides.IsOn(one, isRight, rowAzimuth) && RowSides.IsOn(other, isRight, rowAzimuth));
}
