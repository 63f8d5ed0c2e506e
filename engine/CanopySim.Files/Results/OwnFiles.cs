using System.Text.Json;
using CanopySim.Files.Recording;

namespace CanopySim.Files.Results;

/// <summary>Tells which files of a results folder this program wrote, so that nobody else's are ever removed.</summary>
internal static class OwnFiles
{
    private const int LargestSummary = 10_000_000;

    private static readonly HashSet<string> Names = new(StringComparer.Ordinal)
    {
        SummaryJson.FileName, DaysCsv.FileName, LeafAgesCsv.FileName, LeavesCsv.FileName, WorkCsv.FileName, AssessmentCsv.SheetFile, AssessmentCsv.LightFile,
        AssessmentCsv.HoursFile, AssessmentCsv.HeatFile, RecordingWriter.FileName, "report.html", "compare.csv",
        "forecast.json", "forecast.html", "light.json", "sensors.csv", "scene.ply",
    };

    private static readonly HashSet<string> PictureExtensions = new(StringComparer.Ordinal) { ".png", ".svg" };

    /// <summary>True where the folder holds a summary that this program wrote.</summary>
    public static bool HasSummary(string folder)
    {
        var path = Path.Combine(folder, SummaryJson.FileName);
        if (!File.Exists(path) || new FileInfo(path).Length > LargestSummary) return false;
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            return json.RootElement.ValueKind == JsonValueKind.Object
                && json.RootElement.TryGetProperty("engine_version", out _)
                && json.RootElement.TryGetProperty("scenario", out _);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>What in the folder is not ours, with paths from the folder; links count as foreign.</summary>
    public static IEnumerable<string> Foreign(string folder) => Foreign(folder, "");

    /// <summary>
    /// Removes our files and the folders that are empty then. What appeared since the check stays, and its folder with
    /// it.
    /// </summary>
    public static void Remove(string folder)
    {
        foreach (var file in Directory.GetFiles(folder))
            if (Names.Contains(Path.GetFileName(file)) || IsPicture(file)) File.Delete(file);
        foreach (var inner in Directory.GetDirectories(folder))
            if (!IsLink(inner)) Remove(inner);
        if (!Directory.EnumerateFileSystemEntries(folder).Any()) Directory.Delete(folder);
    }

    private static IEnumerable<string> Foreign(string folder, string prefix)
    {
        foreach (var file in Directory.GetFiles(folder))
            if (IsLink(file) || !Names.Contains(Path.GetFileName(file))) yield return prefix + Path.GetFileName(file);
        foreach (var inner in Directory.GetDirectories(folder))
        {
            var name = prefix + Path.GetFileName(inner);
            if (IsLink(inner))
            {
                yield return name;
            }
            else if (Path.GetFileName(inner) == "charts")
            {
                foreach (var entry in Directory.GetFileSystemEntries(inner))
                    if (!IsPicture(entry) || IsLink(entry)) yield return $"{name}/{Path.GetFileName(entry)}";
            }
            else if (HasSummary(inner))
            {
                // An option of a comparison.
                foreach (var found in Foreign(inner, name + "/")) yield return found;
            }
            else
            {
                yield return name;
            }
        }
    }

    private static bool IsPicture(string path) =>
        Path.GetFileName(Path.GetDirectoryName(path)) == "charts" && PictureExtensions.Contains(Path.GetExtension(path))
            && File.Exists(path);

    private static bool IsLink(string path) => File.GetAttributes(path).HasFlag(FileAttributes.ReparsePoint);
}
