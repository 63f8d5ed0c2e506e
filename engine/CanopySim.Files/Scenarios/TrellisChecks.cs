using System.Globalization;
using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Whether a trellis can stand: wires that rise, foliage that leaves the next row its place, keys that its form has a
/// use for.
/// </summary>
internal static class TrellisChecks
{
    private const string Section = "trellis.";

    /// <summary>Keys of the trellis that the form has no use for.</summary>
    /// <param name="trellis">As it was read.</param>
    /// <param name="placeOf">Where a key stands.</param>
    /// <param name="depthOf">How far down a key lies: 0 on the command line, then the scenario and the files under it;
    /// null where it is left out.</param>
    /// <returns>Those that a file under the one that gives the form gave to another form.</returns>
    /// <exception cref="InputError">One stands beside the form, or over it.</exception>
    public static IReadOnlyList<string> KeysWithoutUse(
        Trellis trellis, Func<string, InputPlace> placeOf, Func<string, int?> depthOf)
    {
        var form = depthOf(Section + "form") ?? int.MaxValue;
        var inherited = new List<string>();
        foreach (var key in TrellisKeys.GivenInVain(trellis).Select(name => Section + KeyNames.Snake(name)))
        {
            if (depthOf(key) > form) inherited.Add(key);
            else
                throw new InputError(
                    placeOf(key), $"does not apply to form {KeyNames.Choice(trellis.Form)}",
                        $"keys that this form uses: {Used(trellis.Form)}", key);
        }

        return inherited;
    }

    public static void Check(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var (trellis, rows) = (scenario.Trellis, scenario.Rows);
        var cordon = trellis.CordonHeightOrDefault;
        if (trellis.RoofArms == RoofArms.Facing && rows.RowsInCell % 2 != 0)
            Fail(
                "roof_arms", $"\"facing\" with rows.rows_in_cell {rows.RowsInCell}",
                "an even number of rows in the cell: roofs face each other in pairs");
        if (trellis.Form == TrellisForm.UpAndDown && trellis.LowerCordonHeightOrDefault > cordon)
            Fail(
                "lower_cordon_height",
                $"{Meters(trellis.LowerCordonHeightOrDefault)}, above the upper cordon at {Meters(cordon)}",
                "a lower cordon no higher than cordon_height");
        CheckWires();
        if (TrellisKeys.IsDividedAcross(trellis.Form) && trellis.CordonDistanceOrDefault >= rows.Spacing)
            Fail(
                "cordon_distance",
                $"{Meters(trellis.CordonDistanceOrDefault)}{OwnOf(trellis.CordonDistance)}, with rows {Meters(rows.Spacing)} apart",
                "cordons closer to each other than rows are");
        CheckHanging();
        CheckWidth();

        void CheckWires()
        {
            var isRoof = trellis.Form == TrellisForm.Overhead;
            if (!isRoof && !TrellisKeys.HasWalls(trellis.Form)) return;
            var top = trellis.TopWireHeightOrDefault;
            for (var i = 0; i < trellis.CatchWires.Count; i++)
            {
                var key = $"catch_wires.{i}";
                var height = trellis.CatchWires[i].Height;
                if (height < cordon) Fail(
                    key, $"{Meters(height)}, below the cordon at {Meters(cordon)}", "catch wires above the cordon");
                if (i > 0 && height <= trellis.CatchWires[i - 1].Height)
                    Fail(key, $"{Meters(height)} after {Meters(trellis.CatchWires[i - 1].Height)}",
                        "heights that rise");
                if (height > top) Fail(
                    key, $"{Meters(height)}, above the top wire at {Meters(top)}",
                    "catch wires no higher than top_wire_height");
            }

            if (top >= cordon) return;
            var expected = isRoof ? "a roof no lower than the cordon" : "a top wire above the cordon where shoots are led up";
            if (trellis.TopWireHeight is null && trellis.CatchWires.Count == 0)
                Fail("cordon_height", $"{Meters(cordon)}, above the form's own top wire at {Meters(top)}", $"{expected}: give top_wire_height");
            Fail("top_wire_height", $"{Meters(top)}, below the cordon at {Meters(cordon)}", expected);
        }

        // Fruit hangs under a cordon whose shoots are led down or lie as a roof.
        void CheckHanging()
        {
            foreach (var wall in TrellisLayout.WallsOf(trellis))
            {
                if (!(wall.FruitZone.Height(0) < 0)) continue;
                var key = trellis.Form == TrellisForm.UpAndDown ? "lower_cordon_height" : "cordon_height";
                Fail(
                    key, $"{Meters(wall.CordonHeight)}, with shoots that hang or lie as a roof",
                    $"at least {Meters(-wall.FruitZone.From)}: the fruit hangs so far under the cordon");
            }
        }

        void CheckWidth()
        {
            // Rows are alike, or mirror each other in pairs: roofs that face each other share an alley.
            var (left, right) = TrellisLayout.SpanOf(trellis);
            var wide = (right - left) * (trellis.RoofArms == RoofArms.Facing ? 2 : 1);
            if (wide <= rows.Spacing) return;
            var key = new[] { "wall_tilt", "top_wire_height", "cordon_distance", "catch_wires", "foliage_width" }
                .FirstOrDefault(name => IsGiven(trellis, name)) ?? "foliage_width";
            Fail(
                key,
                $"foliage {Meters(wide)} wide over the cordons and wires, with rows {Meters(rows.Spacing)} apart",
                "foliage that does not reach into the next row's");
        }

        void Fail(string key, string found, string expected) =>
            throw new InputError(placeOf(Section + key), found, expected, Section + key);
    }

    private static bool IsGiven(Trellis trellis, string key) => key switch
    {
        "wall_tilt" => trellis.WallTilt is not null,
        "top_wire_height" =>
            trellis.TopWireHeight is not null && trellis.Form is (TrellisForm.OpenU or TrellisForm.SlantedV),
        "cordon_distance" => trellis.CordonDistance is not null,
        "catch_wires" => trellis.CatchWires.Count > 0,
        _ => trellis.FoliageWidth is not null,
    };

    private static string Used(TrellisForm form)
    {
        var all = new Trellis
        {
            Form = form,
            CordonHeight = 1,
            LowerCordonHeight = 1,
            HeadHeight = 1,
            TopWireHeight = 1,
            FoliageWidth = 1,
            CordonDistance = 1,
            WallTilt = 1,
            RoofArms = RoofArms.Right,
            CatchWires = [new CatchWirePair(1, 1)],
        };
        var vain = TrellisKeys.GivenInVain(all).Select(KeyNames.Snake).ToHashSet();
        return string.Join(
            ", ", SectionShape.Of(typeof(Trellis)).Keys.Select(key => key.Name).Where(name => !vain.Contains(name)));
    }

    private static string OwnOf(double? given) => given is null ? " (the form's own)" : "";

    private static string Meters(double value) => value.ToString("0.###", CultureInfo.InvariantCulture) + " m";
}
