using CanopySim.Results;

namespace CanopySim.Files.Results;

/// <summary>Writes the tables and the summary of a season into a folder.</summary>
public static class SeasonFiles
{
    public static void Write(ResultsFolder folder, SeasonResult result, InputHashes hashes)
    {
        DaysCsv.Write(folder.File(DaysCsv.FileName), result.Days);
        LeafAgesCsv.Write(folder.File(LeafAgesCsv.FileName), result.LeafAges);
        LeavesCsv.Write(folder.File(LeavesCsv.FileName), result.Leaves);
        WorkCsv.Write(folder.File(WorkCsv.FileName), result.Work);
        SummaryJson.Write(folder.File(SummaryJson.FileName), result.Summary, hashes);
    }
}
