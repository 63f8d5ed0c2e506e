using CanopySim.Fitting;

namespace CanopySim.Files.Notes;

/// <summary>A note that does not go with the others of its day.</summary>
/// <param name="Note">The note.</param>
/// <param name="Usual">What the others say, their median, in the note's unit.</param>
/// <param name="Hint">What may have happened; empty where nothing suggests itself.</param>
public sealed record OddNote(FieldNote Note, double Usual, string Hint);

/// <summary>What the notes say of the vines.</summary>
/// <param name="Observations">The mean of the notes of each thing and day, by date.</param>
/// <param name="NotesOf">The notes behind each observation, in their order.</param>
/// <param name="Odd">Notes that were left out of a mean.</param>
public sealed record NotedVines(
    IReadOnlyList<Observation> Observations, IReadOnlyList<IReadOnlyList<FieldNote>> NotesOf, IReadOnlyList<OddNote> Odd);

/// <summary>
/// Turns field notes into observations with their errors. Shoots of a vineyard differ, so ten of them tell more than one; what all share,
/// the way of measuring and what the model calls so, does not grow less with their number. The errors are assumed.
/// </summary>
public static class NoteObservations
{
    // Standard deviation between shoots, and the error that more shoots do not lessen, both as a share of the length.
    private const double LengthBetween = 0.25;
    private const double LengthShared = 0.07;
    private const double LeastLengthError = 0.01;

    // The same of nodes. One who counts is easily one off.
    private const double NodesBetween = 1.2;
    private const double NodesShared = 0.7;

    private const double LeafBetween = 0.2;
    private const double LeafShared = 0.1;
    private const double ClustersBetween = 0.6;
    private const double ClustersShared = 0.1;
    private const double SugarBetween = 0.7;
    private const double SugarShared = 0.6;

    // Error of the day of half a stage, and how the stage runs about it, the scale of a logistic [d]: budbreak takes about a week, bloom
    // ten days, veraison two weeks from 5 to 95 % (common practice, no source).
    private const double BudbreakError = 2.5;
    private const double BudbreakScale = 1.2;
    private const double BloomError = 1.5;
    private const double BloomScale = 1.7;
    private const double VeraisonError = 2.5;
    private const double VeraisonScale = 2.4;

    // Of so many like notes of a day, one this many times off their median is a slip and no shoot.
    private const int EnoughToTell = 4;
    private const double MostTimesOff = 2.2;

    /// <summary>What the notes up to a day say.</summary>
    public static NotedVines Of(FieldNotes notes, DateOnly last)
    {
        var (observations, behind, odd) =
            (new List<Observation>(), new List<IReadOnlyList<FieldNote>>(), new List<OddNote>());
        foreach (var group in notes.Notes.Where(note => note.Date <= last).GroupBy(note => (note.Date, note.Kind, note.Measure)))
        {
            var kept = WithoutOdd([.. group], odd);
            if (Observed(group.Key.Date, group.Key.Kind, group.Key.Measure, kept) is not { } observation) continue;
            observations.Add(observation);
            behind.Add(kept);
        }

        return new NotedVines(observations, behind, odd);
    }

    private static Observation? Observed(DateOnly date, NoteKind kind, NoteMeasure measure, IReadOnlyList<FieldNote> notes)
    {
        var (mean, count) = (notes.Average(note => note.Value), notes.Count);
        return kind switch
        {
            NoteKind.ShootLength => new Observation(
                date, ObservedQuantity.ShootLength, mean, Math.Max(LeastLengthError, mean * Error(LengthBetween, LengthShared))),
            NoteKind.Nodes => new Observation(date, ObservedQuantity.Nodes, mean, Error(NodesBetween, NodesShared)),
            NoteKind.LeafSize => new Observation(date, ObservedQuantity.LeafSize, mean, mean * Error(LeafBetween, LeafShared)),
            NoteKind.Clusters when measure == NoteMeasure.PerShoot => new Observation(
                date, ObservedQuantity.ClustersPerShoot, mean, Error(ClustersBetween, ClustersShared)),
            NoteKind.BerrySugar => new Observation(date, ObservedQuantity.Sugar, mean, Error(SugarBetween, SugarShared)),
            NoteKind.Budbreak => Stage(date, ObservedQuantity.Budbreak, mean, BudbreakScale, BudbreakError),
            NoteKind.Bloom => Stage(date, ObservedQuantity.Bloom, mean, BloomScale, BloomError),
            NoteKind.Veraison => Stage(date, ObservedQuantity.Veraison, mean, VeraisonScale, VeraisonError),
            _ => null,
        };

        double Error(double between, double shared) => Math.Sqrt((between * between / count) + (shared * shared));
    }

    // Nothing yet, or all done, only bounds the day of the half.
    private static Observation Stage(DateOnly date, ObservedQuantity stage, double share, double scale, double error)
    {
        const double NearlyNothing = 0.02;
        if (share < NearlyNothing) return new Observation(date, stage, date.DayNumber, error, Bound.AtLeast);
        if (share > 1 - NearlyNothing) return new Observation(date, stage, date.DayNumber, error, Bound.AtMost);
        return new Observation(date, stage, date.DayNumber - (scale * Math.Log(share / (1 - share))), error);
    }

    private static List<FieldNote> WithoutOdd(List<FieldNote> notes, List<OddNote> odd)
    {
        var isMeasured = notes[0].Kind is NoteKind.ShootLength or NoteKind.LeafSize or NoteKind.Nodes;
        if (!isMeasured || notes.Count < EnoughToTell) return notes;
        var median = Median(notes.Select(note => note.Value));
        var kept = new List<FieldNote>();
        foreach (var note in notes)
        {
            if (note.Value <= MostTimesOff * median && note.Value >= median / MostTimesOff) kept.Add(note);
            else odd.Add(new OddNote(note, median, Hint(note, median)));
        }

        return kept;
    }

    // A wrong unit is off by a factor of its own.
    private static string Hint(FieldNote note, double usual)
    {
        if (note.Kind != NoteKind.ShootLength || note.Value <= 0) return "";
        var times = note.Value / usual;
        return times switch
        {
            > 2.2 and < 2.9 => "the number may be of centimeters, not inches",
            > 8 and < 12.5 or > 0.08 and < 0.125 => "a digit or the decimal point may be wrong",
            > 0.34 and < 0.455 => "the number may be of inches, not centimeters",
            _ => "",
        };
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
