using CanopySim.Parameters;

namespace CanopySim.Files.Report;

/// <summary>How a report says how sure a value is.</summary>
public static class MarkWords
{
    public static string Of(Mark mark) => mark switch
    {
        Mark.Published => "published",
        Mark.Derived => "derived",
        Mark.Recalled => "from memory",
        Mark.CommonPractice => "common practice, no source",
        Mark.Fitted => "fitted",
        Mark.Assumed => "assumed",
        Mark.Given => "given",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "a mark without words"),
    };

    public static string Meaning(Mark mark) => mark switch
    {
        Mark.Published => "seen in published text, the source beside it",
        Mark.Derived => "follows by arithmetic from published values",
        Mark.Recalled => "recalled, with the source that is remembered, not looked up",
        Mark.CommonPractice => "what people do; nothing published behind it",
        Mark.Fitted => "set so that results meet a named figure",
        Mark.Assumed => "plausible, nothing behind it",
        Mark.Given => "said by the scenario",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "a mark without words"),
    };
}
