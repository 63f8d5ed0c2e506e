using CanopySim.Drawing;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Pictures;
using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Files.Results;

namespace CanopySim.Viewer.Tests;

/// <summary>The first season until the middle of June at draft quality, recorded into a file once for all tests.</summary>
internal static class RecordedBlock
{
    private static readonly Lazy<string> Recorded = new(Record);

    private static KeptCanopy? Kept { get; set; }

    /// <summary>Folder with its season.bin.</summary>
    public static string Folder => Recorded.Value;

    /// <summary>The canopy that the season kept.</summary>
    public static KeptCanopy KeptCanopy => Folder.Length > 0 && Kept is { } kept ? kept
        : throw new InvalidOperationException("nothing grew");

    public static string ScenarioFile => Path.Combine(Repository, "scenarios", "first-season", "scenario.yaml");

    private static string Repository
    {
        get
        {
            var folder = AppContext.BaseDirectory;
            while (!File.Exists(Path.Combine(folder, "CanopySim.sln")))
                folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests must run inside the repository");
            return folder;
        }
    }

    public static SeasonRecording Open() => SeasonRecording.Open(Path.Combine(Folder, RecordingWriter.FileName));

    /// <summary>A context, or the test is skipped where the system has no EGL.</summary>
    public static EglContext Context()
    {
        try
        {
            return EglContext.Create();
        }
        catch (DrawingException missing)
        {
            Assert.Skip(missing.Message);
            throw;
        }
    }

    private static string Record()
    {
        var folder = Directory.CreateTempSubdirectory("canopysim-view-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        var input = SeasonInput.Read(ScenarioFile, []);
        using var file = new FileBlockWriter(Path.Combine(folder, RecordingWriter.FileName));
        var writer = new RecordingWriter(
            file, input.Document.Scenario, input.Weather, input.UtcOffsetHours, Quality.Draft, InputHashes.Of(input.Document));
        var season = Simulation.Run(input.Document.Scenario, input.Weather, input.UtcOffsetHours, new SeasonOptions
        {
            Quality = Quality.Draft,
            Threads = Environment.ProcessorCount,
            Until = new DateOnly(2025, 6, 15),
            Recorder = writer.Add,
        });
        writer.Finish(season);
        Kept = new KeptCanopy(season.Portrait!, input.Document.Scenario, input.UtcOffsetHours);
        file.Finish();
        return folder;
    }
}
