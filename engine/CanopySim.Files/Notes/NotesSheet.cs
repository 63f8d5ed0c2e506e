using System.Text;

namespace CanopySim.Files.Notes;

/// <summary>An empty sheet of field notes that says how each thing is measured.</summary>
public static class NotesSheet
{
    private const string Head =
        """
        # Field notes. A line for each thing you measure; leave empty what you do not know.
        # date   2025-05-12, or left empty for the same day as the line above
        # vine   a name or number of your own; left empty where the note is of the whole block
        # shoot  a name or number of your own for a shoot that you come back to; left empty for shoots picked at random
        # unit   cm, in, m, ft, %, mm, Brix; a count has none
        #
        # How to count nodes: start where the shoot leaves the old wood. Each place where a leaf sits, or sat, is a node.
        # Stop at the last leaf whose blade is 3 cm (1.2 in) or longer; smaller ones still wrapped at the tip do not count.
        # Ten shoots, spread over the block and picked without choosing, tell more than one shoot measured often.
        #
        # How to look at a tip, on ten shoots or so, early in the day:
        # - Let the shoot stand as it is: do the youngest tendrils reach over the tip? Then write: tendrils above tip.
        # - The tip stands over its tendrils, with small leaves still folding open: tip above tendrils.
        # - No young leaf is left, the tip is dry, dropped or gone: stopped. Leave out shoots that were topped.
        # - Go down below the five youngest leaves, where internodes are done. Each shorter than the one under it?
        #   Then upper_internodes is shortening, otherwise even.
        # A line without vine and shoot stands for what most shoots of the block do.
        #
        # What can be noted, in the column "what":

        """;

    private const string Tail =
        """
        #
        # After a spray keep the label's re-entry and pre-harvest intervals; this sheet is no spray record as the law may ask
        # for. Another way to keep the sheet: a column for each thing, date,vine,shoot,shoot_length [cm],nodes.
        date,vine,shoot,what,value,unit,note

        """;

    /// <summary>The sheet's text.</summary>
    public static string Empty()
    {
        var text = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (var word in NoteKinds.All)
        {
            var example = $"{word.Example.Value} {word.Example.Unit}".Trim();
            text.Append($"# {word.Name,-17}{example,-20} {word.Help}\n");
        }

        return text.Append(Tail.ReplaceLineEndings("\n")).ToString();
    }
}
