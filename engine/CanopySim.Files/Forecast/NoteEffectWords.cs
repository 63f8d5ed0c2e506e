using CanopySim.Files.Charts;
using CanopySim.Files.Notes;
using CanopySim.Fitting;

namespace CanopySim.Files.Forecast;

/// <summary>What notes did to the vines, in words.</summary>
public static class NoteEffectWords
{
    /// <summary>What was seen, as results name it.</summary>
    public static string NameOf(ObservedQuantity quantity) => quantity switch
    {
        ObservedQuantity.ShootLength => "shoot_length",
        ObservedQuantity.Nodes => "nodes",
        ObservedQuantity.Budbreak => "budbreak",
        ObservedQuantity.Bloom => "bloom",
        ObservedQuantity.Veraison => "veraison",
        ObservedQuantity.LeafSize => "leaf_size",
        ObservedQuantity.ClustersPerShoot => "clusters",
        ObservedQuantity.Sugar => "berry_sugar",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "unknown quantity"),
    };

    /// <summary>What was seen, in a sentence: "shoot length on 12 May".</summary>
    public static string Subject(Observation seen) => $"{WordsOf(seen.Quantity)}, noted on {DayText(seen.Date)}";

    /// <summary>A value as readers see it.</summary>
    public static string Value(ObservedQuantity quantity, double value, Units units) => quantity switch
    {
        ObservedQuantity.ShootLength => Measure.Length.Text(units, 100 * value, 0),
        ObservedQuantity.Nodes => $"{Measure.Number(value, 1)} nodes",
        ObservedQuantity.LeafSize => Measure.LeafAreaOfShoot.Text(units, 1e4 * value, 0),
        ObservedQuantity.ClustersPerShoot => $"{Measure.Number(value, 1)} clusters",
        ObservedQuantity.Sugar => $"{Measure.Number(value, 1)} Brix",
        _ => DayText(DateOnly.FromDayNumber((int)Math.Round(value))),
    };

    /// <summary>How far a value may be off.</summary>
    public static string Width(ObservedQuantity quantity, double width, Units units) => quantity switch
    {
        ObservedQuantity.Budbreak or ObservedQuantity.Bloom or ObservedQuantity.Veraison => $"{Measure.Number(width, 1)} days",
        _ => Value(quantity, width, units),
    };

    /// <summary>A note that contradicts the vines, and where it stands.</summary>
    public static string Contradiction(NotedEffect contradicting, Units units)
    {
        var effect = contradicting.Effect;
        var seen = effect.Observation;
        return $"{Capital(Subject(seen))} ({Lines(contradicting.Notes)}), does not go with these vines: it says "
            + $"{Bounded(seen, units)}, and they come to {Value(seen.Quantity, effect.MeanBefore, units)}, give or take "
            + $"{Width(seen.Quantity, effect.SpreadBefore, units)}. It was left out. A slip, another unit, hail or frost: look again.";
    }

    /// <summary>A note that does not go with the others of its day.</summary>
    public static string Odd(OddNote odd, Units units)
    {
        var quantity = odd.Note.Kind switch
        {
            NoteKind.Nodes => ObservedQuantity.Nodes,
            NoteKind.LeafSize => ObservedQuantity.LeafSize,
            _ => ObservedQuantity.ShootLength,
        };
        var hint = odd.Hint.Length > 0 ? $"; {odd.Hint}" : "";
        return $"{Capital(WordsOf(quantity))}, noted on {DayText(odd.Note.Date)} ({Lines([odd.Note])}): {Value(quantity, odd.Note.Value, units)} "
            + $"does not go with the others of that day, half of which are {Value(quantity, odd.Usual, units)} or more{hint}. It was left out.";
    }

    /// <summary>Cells of a table of what notes said: what, day, noted, vines before, vines after, whether used.</summary>
    public static IReadOnlyList<string> Row(NotedEffect told, Units units)
    {
        var effect = told.Effect;
        var seen = effect.Observation;
        return
        [
            Capital(WordsOf(seen.Quantity)), DayText(seen.Date), Bounded(seen, units),
            Shown(effect.MeanBefore, effect.SpreadBefore), Shown(effect.MeanAfter, effect.SpreadAfter),
            effect.IsExcluded ? "left out" : "used",
        ];

        string Shown(double mean, double spread) =>
            $"{Value(seen.Quantity, mean, units)} ± {Width(seen.Quantity, spread, units)}";
    }

    internal static string DayText(DateOnly day) => day.ToString("d MMMM", System.Globalization.CultureInfo.InvariantCulture);

    private static string Bounded(Observation seen, Units units) => seen.Bound switch
    {
        Bound.AtLeast => $"not before {Value(seen.Quantity, seen.Value, units)}",
        Bound.AtMost => $"by {Value(seen.Quantity, seen.Value, units)}",
        _ => Value(seen.Quantity, seen.Value, units),
    };

    internal static string Lines(IReadOnlyList<FieldNote> notes)
    {
        var lines = notes.Select(note => note.Place.Line).OfType<int>().Distinct().Order().ToList();
        return lines.Count switch
        {
            0 => "in the notes",
            1 => $"line {lines[0]} of the notes",
            _ => $"lines {lines[0]} to {lines[^1]} of the notes",
        };
    }

    private static string WordsOf(ObservedQuantity quantity) => quantity switch
    {
        ObservedQuantity.ShootLength => "shoot length",
        ObservedQuantity.LeafSize => "leaf size",
        ObservedQuantity.ClustersPerShoot => "clusters a shoot",
        ObservedQuantity.Sugar => "sugar of berries",
        _ => NameOf(quantity),
    };

    private static string Capital(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;
}
