using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Viewer.Commands;

namespace CanopySim.Viewer.Tests.Commands;

public class ViewCommandTest
{
    [Fact]
    public void A_picture_is_written_whole_into_the_file_that_was_named()
    {
        using (RecordedBlock.Context()) { }
        var file = Path.Combine(RecordedBlock.Folder, "june.png");
        Assert.Equal(ExitCode.Ok, ViewerApp.Run(
            [RecordedBlock.Folder, "--picture", file, "--date", "2025-06-05", "--time", "9:30", "--color", "light-now", "--from", "across", "--size", "300x240", "--theme", "dark", "--quiet"]));
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(file)[..4]);
        Assert.False(File.Exists(file + ".unfinished"));
    }

    [Theory]
    [InlineData("--picture", "x.jpg")]
    [InlineData("--film", "x.png")]
    [InlineData("--picture", "no-such-folder/x.png")]
    [InlineData("--date", "20 July")]
    [InlineData("--date", "2031-07-20")]
    [InlineData("--time", "25:00")]
    [InlineData("--color", "hue")]
    [InlineData("--from", "below")]
    [InlineData("--size", "12x12")]
    [InlineData("--theme", "blue")]
    [InlineData("--units", "furlongs")]
    [InlineData("--of", "year")]
    [InlineData("--colour", "age")]
    public void What_cannot_be_understood_is_bad_input(string option, string value)
    {
        string[] target = option is "--picture" or "--film" ? [] : ["--picture", Path.Combine(RecordedBlock.Folder, "never.png")];
        Assert.Equal(ExitCode.BadInput, ViewerApp.Run([RecordedBlock.Folder, .. target, option, value, "--quiet"]));
        Assert.False(File.Exists(Path.Combine(RecordedBlock.Folder, "never.png")));
    }

    [Fact]
    public void Without_picture_and_film_the_window_would_open() =>
        Assert.Equal(ExitCode.BadInput, ViewerApp.Run([RecordedBlock.Folder]));
}

public class RecordingSourceTest
{
    [Fact]
    public void A_cut_recording_is_named_as_damaged()
    {
        var whole = File.ReadAllBytes(Path.Combine(RecordedBlock.Folder, RecordingWriter.FileName));
        var cut = Path.Combine(RecordedBlock.Folder, "cut.bin");
        File.WriteAllBytes(cut, whole[..(whole.Length / 2)]);
        var error = Assert.Throws<InputError>(() => RecordingSource.Open(cut, 1));
        Assert.StartsWith(cut, error.Message);
        Assert.Contains("expected", error.Message);
    }

    [Fact]
    public void A_folder_without_recording_says_how_one_is_made()
    {
        var folder = Directory.CreateTempSubdirectory("canopysim-view-").FullName;
        var error = Assert.Throws<InputError>(() => RecordingSource.Open(folder, 1));
        Directory.Delete(folder);
        Assert.Contains("no season.bin", error.Message);
        Assert.Contains("canopysim season SCENARIO --record", error.Message);
    }

    [Fact]
    public void A_scenario_is_computed_until_it_is_stopped()
    {
        using var stop = new CancellationTokenSource();
        using var source = RecordingSource.Open(RecordedBlock.ScenarioFile, 1);
        List<double> shares = [];
        Assert.Throws<OperationCanceledException>(() => source.Wait(share =>
        {
            shares.Add(share);
            if (shares.Count == 3) stop.Cancel();
        }, stop.Token));
        Assert.Equal(shares.Order(), shares);
        Assert.False(source.Recording.IsFinished);
        Assert.True(source.Recording.DayCount > 0);
    }
}
