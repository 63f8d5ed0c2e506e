namespace CanopySim.Training;

/// <summary>A wire along the row.</summary>
/// <param name="Height">Over the ground [m].</param>
/// <param name="Across">From the middle of the row [m].</param>
/// <param name="IsCordon">True for one that bears a cordon.</param>
public readonly record struct TrellisWire(double Height, double Across, bool IsCordon);

/// <summary>
/// A straight post or arm, square to the row: from one end to the other, across from the middle of the row and over the
/// ground [m].
/// </summary>
public readonly record struct TrellisBar(double FromAcross, double FromHeight, double ToAcross, double ToHeight);

/// <summary>
/// Wires, posts and arms of a trellis, for drawing and for telling. Light does not see them: they shade next to
/// nothing.
/// </summary>
public static class TrellisParts
{
    // Over a roof a wire runs about every half metre. Common practice, no source.
    private const double BetweenRoofWires = 0.5;

    // A post stands so far over what it carries [m].
    private const double PostOver = 0.05;

    /// <summary>Wires of a row, cordons first, then from the lowest up.</summary>
    public static IReadOnlyList<TrellisWire> WiresOf(Trellis trellis, int row = 0)
    {
        if (trellis.Form == TrellisForm.Bush) return [];
        var cordons = TrellisLayout.CordonsOf(trellis)
            .Select(cordon => new TrellisWire(cordon.Height, cordon.Across, true)).ToList();
        // A roof's middle wire is its cordon's.
        var foliage = TrellisLayout.WallsOf(trellis, row).SelectMany(FoliageWires)
            .Where(wire => !cordons.Contains(wire with { IsCordon = true }));
        return [.. cordons, .. foliage.OrderBy(wire => wire.Height).ThenBy(wire => wire.Across)];
    }

    /// <summary>Posts and arms of a row.</summary>
    public static IReadOnlyList<TrellisBar> BarsOf(Trellis trellis, int row = 0)
    {
        if (trellis.Form == TrellisForm.Bush) return [];
        var wires = WiresOf(trellis, row);
        var walls = TrellisLayout.WallsOf(trellis, row);
        if (walls.Any(wall => Math.Abs(wall.Tilt) is > 0 and < 1.5))
        {
            // Two posts that lean as the walls do, from a foot in the middle, with an arm under the cordons.
            var arm = new TrellisBar(
                walls[0].CordonAcross, walls[0].CordonHeight, walls[1].CordonAcross, walls[1].CordonHeight);
            return [new TrellisBar(0, 0, 0, walls[0].CordonHeight), arm, .. walls.Select(Leaning)];
        }

        var bars = new List<TrellisBar> { new(0, 0, 0, wires.Max(wire => wire.Height) + PostOver) };
        foreach (var level in wires.GroupBy(wire => wire.Height))
        {
            var (left, right) =
                (Math.Min(0, level.Min(wire => wire.Across)), Math.Max(0, level.Max(wire => wire.Across)));
            if (right > left) bars.Add(new TrellisBar(left, level.Key, right, level.Key));
        }

        return bars;
    }

    private static TrellisBar Leaning(FoliageWall wall) =>
        new(wall.CordonAcross, wall.CordonHeight, wall.MiddleAt(wall.TopHeight), wall.TopHeight);

    private static IEnumerable<TrellisWire> FoliageWires(FoliageWall wall)
    {
        if (!wall.IsHeld) return [];
        if (wall.IsFlat) return RoofWires(wall);
        if (wall.Hangs)
            return Pair(wall.CordonAcross, wall.CordonHeight, 0.5 * wall.Width);
        var inner = wall.CatchWires.SelectMany(pair =>
            Pair(wall.MiddleAt(pair.Height), pair.Height, 0.5 * pair.Distance / Math.Cos(wall.Tilt)));
        var highest = wall.CatchWires.Count > 0 ? wall.CatchWires[^1].Height : double.NegativeInfinity;
        return wall.TopHeight <= highest
            ? inner
            : inner.Concat(
                Pair(wall.MiddleAt(wall.TopHeight), wall.TopHeight,
                0.5 * wall.WidthAt(wall.TopHeight) / Math.Cos(wall.Tilt)));
    }

    private static IEnumerable<TrellisWire> RoofWires(FoliageWall wall)
    {
        var (left, right) = wall.OnlySide switch
        {
            > 0 => (0.0, wall.Width),
            < 0 => (-wall.Width, 0.0),
            _ => (-0.5 * wall.Width, 0.5 * wall.Width),
        };
        var count = Math.Max(1, (int)Math.Round((right - left) / BetweenRoofWires));
        for (var i = 0; i <= count; i++)
            yield return new TrellisWire(wall.TopHeight, left + ((right - left) * i / count), false);
    }

    private static IEnumerable<TrellisWire> Pair(double middle, double height, double half) =>
        [new TrellisWire(height, middle - half, false), new TrellisWire(height, middle + half, false)];
}
