using System.Text;

namespace CanopySim.Files.Text;

/// <summary>
/// Reads text files strictly: UTF-8 (a byte order mark is fine), of bounded size, without control characters.
/// </summary>
internal static class StrictText
{
    private static readonly UTF8Encoding Strict = new(
        encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The bytes of a file after its byte order mark, or an error that says why they cannot be had.</summary>
    public static byte[] ReadBytes(string path, InputPlace place, long largest, string what, string? key = null)
    {
        if (Directory.Exists(path))
            throw new InputError(place, $"{InputError.Quote(path)} is a folder", $"a {what} file", key);
        if (!File.Exists(path)) throw new InputError(place, $"no file {InputError.Quote(path)}", $"a {what} file", key);
        byte[] bytes;
        try
        {
            bytes = ReadBounded(path, largest, place, what, key);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new InputError(
                place,
                $"{InputError.Quote(path)} cannot be read ({error.Message})",
                $"a {what} file that can be read",
                key);
        }

        var start = new InputPlace(path, 1);
        if (bytes.Length == 0) throw new InputError(start, "an empty file", $"a {what} file");
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]) throw new InputError(start, "UTF-16 text", "text in UTF-8");
        var nul = Array.IndexOf(bytes, (byte)0);
        if (nul >= 0) throw new InputError(new InputPlace(path, LineAt(bytes, nul)), "a NUL byte", "text in UTF-8");
        return bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes;
    }

    /// <summary>The whole text of a file.</summary>
    public static string Read(string path, InputPlace place, long largest, string what, string? key = null)
    {
        var bytes = ReadBytes(path, place, largest, what, key);
        var line = 1;
        for (var start = 0; start < bytes.Length; line++)
        {
            var length = LineLength(bytes, start);
            CheckControlCharacters(DecodeLine(bytes.AsSpan(start, length), path, line), path, line);
            start += length + 1;
        }

        return Strict.GetString(bytes);
    }

    /// <summary>A line's text; bytes that are not UTF-8 are an error at that line.</summary>
    public static string DecodeLine(ReadOnlySpan<byte> bytes, string path, int line)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            throw new InputError(new InputPlace(path, line), "bytes that are not UTF-8", "text in UTF-8");
        }
    }

    public static int LineLength(byte[] bytes, int start)
    {
        var end = Array.IndexOf(bytes, (byte)'\n', start);
        return (end < 0 ? bytes.Length : end) - start;
    }

    public static void CheckControlCharacters(string text, string path, int line)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            var allowed = letter == '\t' || (letter == '\r' && i == text.Length - 1);
            if ((char.IsControl(letter) && !allowed) || letter == '\uFEFF')
            {
                throw new InputError(
                    new InputPlace(path, line, i + 1),
                    $"control character U+{(int)letter:X4}",
                    "text without control characters");
            }
        }
    }

    // Read to a bound and not by the length that the file names: devices name none.
    private static byte[] ReadBounded(string path, long largest, InputPlace place, string what, string? key)
    {
        using var stream = File.OpenRead(path);
        using var memory = new MemoryStream();
        var buffer = new byte[1 << 16];
        int count;
        while ((count = stream.Read(buffer)) > 0)
        {
            memory.Write(buffer, 0, count);
            if (memory.Length > largest)
            {
                throw new InputError(
                    place,
                    $"{InputError.Quote(path)} is larger than {largest / 1_000_000} MB",
                    $"a {what} of at most {largest / 1_000_000} MB",
                    key);
            }
        }

        return memory.ToArray();
    }

    private static int LineAt(byte[] bytes, int index) => 1 + bytes.AsSpan(0, index).Count((byte)'\n');
}
