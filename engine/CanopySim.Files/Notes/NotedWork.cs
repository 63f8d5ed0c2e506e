using CanopySim.Training;
using CanopySim.Water;

namespace CanopySim.Files.Notes;

/// <summary>Puts the work and the water that was noted into a scenario, so that the simulated vine has them too.</summary>
public static class NotedWork
{
    // The range of an irrigation in a scenario [mm].
    private const double LeastDepth = 0.5;
    private const double MostDepth = 200;

    /// <summary>
    /// The scenario with the noted work of the days up to the last, after what it plans by itself. Work that both the
    /// plan and the notes hold on one day is an error: it would be done twice.
    /// </summary>
    /// <exception cref="InputError">A step is planned and noted, or does not fit the block.</exception>
    public static Scenario Into(Scenario scenario, FieldNotes notes, DateOnly last)
    {
        var work = scenario.CanopyWork;
        var soil = scenario.Soil;
        foreach (var note in notes.Notes.Where(note => note.Date <= last))
        {
            (work, soil) = note.Kind switch
            {
                NoteKind.ShootThinning => (
                    work with { ShootThinning = [.. work.ShootThinning, New(work.ShootThinning, note, Thinning(note))] }, soil),
                NoteKind.Tucking => (
                    work with { Tucking = [.. work.Tucking, New(work.Tucking, note, new Tucking { On = note.Date })] }, soil),
                NoteKind.Topping => (work with { Topping = [.. work.Topping, New(work.Topping, note, Topping(note))] }, soil),
                NoteKind.SideHedging => (
                    work with
                    {
                        SideHedging =
                            [.. work.SideHedging, New(work.SideHedging, note, new SideHedging { On = note.Date, Width = note.Value })],
                    }, soil),
                NoteKind.LeafRemoval => (
                    work with
                    {
                        LeafRemoval = [.. work.LeafRemoval, New(work.LeafRemoval, note, Leaves(note))],
                    }, soil),
                NoteKind.LateralRemoval => (
                    work with
                    {
                        LateralRemoval =
                            [.. work.LateralRemoval, New(work.LateralRemoval, note, new LateralRemoval { On = note.Date, Share = note.Value })],
                    }, soil),
                NoteKind.ClusterThinning => (
                    work with
                    {
                        ClusterThinning = [.. work.ClusterThinning, New(work.ClusterThinning, note, Clusters(note))],
                    }, soil),
                NoteKind.Spray => (
                    work with { Sprays = [.. work.Sprays, new Spray { On = note.Date, Label = note.Label, Kind = note.Spray }] },
                    soil),
                NoteKind.Irrigation => (work, soil with { Irrigation = [.. soil.Irrigation, Water(note, scenario)] }),
                _ => (work, soil),
            };
        }

        return scenario with { CanopyWork = work, Soil = soil };
    }

    private static T New<T>(IReadOnlyList<T> planned, FieldNote note, T step)
        where T : WorkStep =>
        planned.Any(other => other.On == note.Date)
            ? throw new InputError(
                note.Place, $"{NoteKinds.Of(note.Kind).Name} on {note.Date:yyyy-MM-dd}, which the scenario or an earlier line has too",
                "work that was done once", "value")
            : step;

    private static ShootThinning Thinning(FieldNote note) => note.Measure == NoteMeasure.PerMeter
        ? new ShootThinning { On = note.Date, ShootsPerMeter = note.Value }
        : new ShootThinning { On = note.Date, ShootsPerVine = Whole(note, 1) };

    private static Topping Topping(FieldNote note) => note.Measure == NoteMeasure.Length
        ? new Topping { On = note.Date, Height = note.Value }
        : new Topping { On = note.Date, Nodes = Whole(note, 3) };

    private static LeafRemoval Leaves(FieldNote note) => new() { On = note.Date, Share = Some(note), Side = note.Side };

    private static ClusterThinning Clusters(FieldNote note) => note.Measure == NoteMeasure.Share
        ? new ClusterThinning { On = note.Date, Share = Some(note) }
        : new ClusterThinning { On = note.Date, ClustersPerShoot = Whole(note, 1) };

    private static Irrigation Water(FieldNote note, Scenario scenario)
    {
        if (note.Measure == NoteMeasure.Depth) return new Irrigation { On = note.Date, Amount = note.Value };
        // A liter on a square meter is a millimeter.
        var depth = note.Value / scenario.Rows.GroundAreaPerVine;
        return depth is >= LeastDepth and <= MostDepth
            ? new Irrigation { On = note.Date, Amount = depth }
            : throw new InputError(
                note.Place,
                FormattableString.Invariant($"{note.Value:0.#} l on each vine's {scenario.Rows.GroundAreaPerVine:0.##} m2, {depth:0.##} mm"),
                FormattableString.Invariant($"{LeastDepth} to {MostDepth} mm"), "value");
    }

    private static int Whole(FieldNote note, int least) =>
        note.Value == Math.Floor(note.Value) && note.Value >= least
            ? (int)note.Value
            : throw new InputError(
                note.Place, FormattableString.Invariant($"{note.Value}"), $"a whole number of {least} or more", "value");

    private static double Some(FieldNote note) => note.Value > 0
        ? note.Value
        : throw new InputError(note.Place, "0 %", "the share that went, more than 0 %", "value");
}
