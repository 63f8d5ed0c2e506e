using System.Globalization;
using CanopySim.Training;

namespace CanopySim.Files.Report;

/// <summary>What was understood of a trellis, in words: its walls, wires, meters of canopy and shoots.</summary>
public static class TrellisSentences
{
    /// <summary>One sentence a line.</summary>
    public static IEnumerable<string> Of(Scenario scenario)
    {
        var (trellis, rows) = (scenario.Trellis, scenario.Rows);
        var walls = TrellisLayout.WallsOf(trellis);
        var shoots = VinePlanting.ShootsPerVine(scenario);
        var meters = walls.Count * rows.VineSpacing;
        yield return $"trellis: {Name(trellis.Form)}, {Count(walls.Count, "m")} of canopy to a meter of row; "
            + $"{shoots} shoots a vine, {Text(shoots / meters)} a meter of canopy";
        foreach (var wall in walls) yield return Wall(trellis, wall);
        if (walls.Any(wall => wall.OnlySide != 0) && trellis.RoofArms == RoofArms.Facing)
            yield return "every second row leads its roof the other way, over the same alley";
        if (TrellisParts.WiresOf(trellis) is { Count: > 0 } wires)
            yield return $"wires, height and distance to the right of the row: {string.Join("; ", wires.Select(Wire))}";
        if (rows.RowsInCell > 1) yield return $"{rows.RowsInCell} rows side by side, {Count(rows.VineCount, "vine")} "
            + "in all";
    }

    /// <summary>What keys of a file underneath say in vain; empty where there are none.</summary>
    public static string Unused(Scenario scenario, IReadOnlyList<string> keys) => keys.Count == 0
        ? ""
        : $"not used, as form {Name(scenario.Trellis.Form)} has no use for it: {string.Join(", ", keys)}";

    private static string Wall(Trellis trellis, FoliageWall wall)
    {
        var place = $"from {(trellis.Form == TrellisForm.Bush ? "a head" : "a cordon")} at {Text(wall.CordonHeight)} "
            + $"m{Side(wall.CordonAcross)}";
        var lean = UnitsOf(wall.Tilt);
        var led = wall switch
        {
            { IsHeld: false, Hangs: true } => "free, bending by their own weight",
            { IsHeld: false } => "spread round it without wires",
            { IsFlat: true, OnlySide: > 0 } =>
                $"over a roof at {Text(wall.TopHeight)} m, to the right for {Text(wall.Width)} m",
            { IsFlat: true, OnlySide: < 0 } =>
                $"over a roof at {Text(wall.TopHeight)} m, to the left for {Text(wall.Width)} m",
            { IsFlat: true } => $"over a roof at {Text(wall.TopHeight)} m, {Text(wall.Width)} m wide",
            { Hangs: true } => $"led down, {Text(wall.Width)} m wide",
            { Tilt: 0 } => $"led up to {Text(wall.TopHeight)} m, {Widths(wall)} wide",
            _ => $"led up to {Text(wall.TopHeight)} m, leaning {lean} to the {(wall.Tilt < 0 ? "left" : "right")}, "
                + $"{Widths(wall)} wide",
        };
        return $"wall {wall.Index + 1}: shoots {place}, {led}";
    }

    private static string Widths(FoliageWall wall) => wall.CatchWires.Count == 0
        ? $"{Text(wall.Width)} m"
        : $"{Text(wall.CatchWires.Min(pair => pair.Distance))} to {Text(wall.CatchWires.Max(pair => pair.Distance))} m";

    private static string Side(double across) =>
        across == 0 ? "" : $", {Text(Math.Abs(across))} m to the {(across < 0 ? "left" : "right")}";

    private static string Wire(TrellisWire wire) =>
        $"{Text(wire.Height)} m, {Text(wire.Across)} m{(wire.IsCordon ? " (cordon)" : "")}";

    private static string UnitsOf(double radians) =>
        $"{(Math.Abs(radians) * 180 / Math.PI).ToString("0.#", CultureInfo.InvariantCulture)} deg";

    private static string Name(TrellisForm form) => Scenarios.KeyNames.Choice(form);

    private static string Count(int count, string what) =>
        what == "m" || count == 1 ? $"{count} {what}" : $"{count} {what}s";

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
