using CanopySim.Files.Recording;
using Xunit;

namespace CanopySim.Files.Tests.Recording;

public sealed class RecordingFileTest : IDisposable
{
    private const int Damages = 2000;

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-test-").FullName;

    private readonly string _path;

    public RecordingFileTest()
    {
        _path = Path.Combine(_folder, RecordingWriter.FileName);
        ShortSeason.WriteFile(_path);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_file_holds_what_memory_holds()
    {
        using var blocks = FileBlocks.Open(_path);
        foreach (var kind in Enum.GetValues<BlockKind>())
        {
            Assert.Equal(ShortSeason.Blocks.Count(kind), blocks.Count(kind));
            for (var i = 0; i < blocks.Count(kind); i++)
                if (kind != BlockKind.Outcome) Assert.Equal(ShortSeason.Blocks.Read(kind, i), blocks.Read(kind, i));
        }
    }

    [Fact]
    public void The_same_season_is_the_same_file()
    {
        var again = Path.Combine(_folder, "again.bin");
        ShortSeason.WriteFile(again);
        Assert.Equal(File.ReadAllBytes(_path), File.ReadAllBytes(again));
    }

    [Theory]
    [InlineData("", "no recording")]
    [InlineData("PK\u0003\u0004 something else", "no recording")]
    [InlineData("vineyear", "no recording")]
    public void A_foreign_file_is_refused(string text, string found)
    {
        var path = Path.Combine(_folder, "foreign.bin");
        File.WriteAllText(path, text);
        var error = Assert.Throws<InputError>(() => SeasonRecording.Open(path));
        Assert.Contains(found, error.Message);
        Assert.StartsWith(path, error.Message);
    }

    [Fact]
    public void One_of_another_version_says_so()
    {
        var bytes = File.ReadAllBytes(_path);
        bytes[8] = 7;
        File.WriteAllBytes(_path, bytes);
        var error = Assert.Throws<InputError>(() => SeasonRecording.Open(_path));
        Assert.Contains("version 7", error.Message);
        Assert.Contains("--record again", error.Message);
    }

    [Fact]
    public void One_that_is_not_there_says_so() =>
        Assert.Contains("cannot be read", Assert.Throws<InputError>(() => SeasonRecording.Open(Path.Combine(_folder, "none.bin"))).Message);

    /// <summary>Bytes changed, cut off, doubled or put in at seeded places: nothing but an input error may come of it, and nothing wrong be read.</summary>
    [Fact]
    public void A_damaged_file_is_refused()
    {
        var whole = File.ReadAllBytes(_path);
        var random = new Random(1);
        var path = Path.Combine(_folder, "damaged.bin");
        var refused = 0;
        for (var i = 0; i < Damages; i++)
        {
            File.WriteAllBytes(path, Damaged(whole, random, i % 4));
            try
            {
                using var recording = SeasonRecording.Open(path);
                ReadAll(recording);
                Assert.Equal(ShortSeason.Result.Days, recording.Outcome()!.Days);
            }
            catch (InputError error)
            {
                Assert.StartsWith(path, error.Message);
                Assert.Contains("expected", error.Message);
                refused++;
            }
        }

        // A packed block has bits that say nothing; all else is held by checks.
        Assert.True(refused > Damages * 0.98, $"{refused} of {Damages} refused");
    }

    private static byte[] Damaged(byte[] whole, Random random, int how)
    {
        var at = random.Next(whole.Length);
        switch (how)
        {
            case 0:
                var changed = (byte[])whole.Clone();
                changed[at] ^= (byte)(1 << random.Next(8));
                return changed;
            case 1:
                return whole[..at];
            case 2:
                return [.. whole[..at], (byte)random.Next(256), .. whole[at..]];
            default:
                // Often in the index and the tail, which are small.
                var tail = (byte[])whole.Clone();
                tail[^random.Next(1, 3000)] = (byte)random.Next(256);
                return tail;
        }
    }

    private static void ReadAll(SeasonRecording recording)
    {
        _ = recording.Weather();
        for (var day = 0; day < recording.DayCount; day++)
        {
            _ = recording.Canopy(day);
            _ = recording.Leaves(day);
            _ = recording.Hours(day);
        }
    }
}
