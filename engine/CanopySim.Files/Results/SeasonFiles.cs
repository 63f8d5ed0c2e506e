using CanopySim.Results;

namespace CanopySim.Files.Results;

/// <summary>Writes the tables and the summary of a season into a folder.</summary>
public static class SeasonFiles
{
    /// <param name="file">Where to write a file by its name.</param>
    /// <param name="result">The season.</param>
    /// <param name="hashes">What was read.</param>
    public static void Write(Func<string, string> file, SeasonResult result, InputHashes hashes)
    {
        DaysCsv.Write(file(DaysCsv.FileName), result.Days);
        LeafAgesCsv.Write(file(LeafAgesCsv.FileName), result.LeafAges);
        LeavesCsv.Write(file(LeavesCsv.FileName), result.Leaves);
        WorkCsv.Write(file(WorkCsv.FileName), result.Work);
        AssessmentCsv.Write(file, result.Assessment);
        SummaryJson.Write(file(SummaryJson.FileName), result.Summary, hashes);
    }
}
