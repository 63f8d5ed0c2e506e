namespace CanopySim.Files.Results;

/// <summary>
/// A results folder that appears whole or not at all: files are written into a folder beside it, which takes its place
/// on
/// <see cref="Commit"/>. An earlier folder is replaced only where all in it is ours.
/// </summary>
public sealed class ResultsFolder : IDisposable
{
    private const int MostNamed = 5;

    private readonly string _target;
    private readonly InputPlace _place;
    private readonly string _partial;
    private bool _isCommitted;

    private ResultsFolder(string target, InputPlace place, string partial) =>
        (_target, _place, _partial) = (target, place, partial);

    /// <summary>The folder as it was asked for.</summary>
    public string Target => _target;

    /// <summary>Checks that the folder may be written, and opens one beside it to write into.</summary>
    /// <exception cref="InputError">There is something of somebody else's, or the place cannot be written.</exception>
    public static ResultsFolder Begin(string path, string option = "--out")
    {
        var place = new InputPlace(option);
        if (path.Length == 0 || path.Contains('\0')) throw new InputError(place, "no path", "a folder for the results");
        CheckReplaceable(path, place);
        try
        {
            var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
            var parent = Path.GetDirectoryName(full)
                ?? throw new InputError(place, InputError.Quote(path), "a folder below the root");
            Directory.CreateDirectory(parent);
            var partial = Path.Combine(parent, $".{Path.GetFileName(full)}.{Path.GetRandomFileName()}.partial");
            Directory.CreateDirectory(partial);
            return new ResultsFolder(full, place, partial);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Unwritable(path, place, error);
        }
    }

    /// <summary>Where to write a file of the results; names may hold folders, such as charts/season.png.</summary>
    public string File(string name)
    {
        var path = Path.Combine(_partial, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        return path;
    }

    /// <summary>Puts the new folder in its place.</summary>
    public void Commit()
    {
        CheckReplaceable(_target, _place);
        try
        {
            if (!Directory.Exists(_target))
            {
                Directory.Move(_partial, _target);
            }
            else
            {
                var old = _partial + ".old";
                Directory.Move(_target, old);
                try
                {
                    Directory.Move(_partial, _target);
                }
                catch
                {
                    Directory.Move(old, _target);
                    throw;
                }

                OwnFiles.Remove(old);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Unwritable(_target, _place, error);
        }

        _isCommitted = true;
    }

    /// <summary>Without <see cref="Commit"/>, removes what was written so far.</summary>
    public void Dispose()
    {
        if (_isCommitted || !Directory.Exists(_partial)) return;
        Directory.Delete(_partial, recursive: true);
    }

    private static void CheckReplaceable(string path, InputPlace place)
    {
        if (System.IO.File.Exists(path))
            throw new InputError(place, $"{InputError.Quote(path)} is a file", "a folder for the results");
        if (!Directory.Exists(path)) return;
        try
        {
            if (System.IO.File.GetAttributes(
                    Path.TrimEndingDirectorySeparator(path)).HasFlag(FileAttributes.ReparsePoint))
                throw new InputError(place, $"{InputError.Quote(path)} is a link", "a folder for the results");
            if (!Directory.EnumerateFileSystemEntries(path).Any()) return;
            if (!OwnFiles.HasSummary(path))
                throw new InputError(
                    place,
                    $"the folder {InputError.Quote(path)} exists and holds no summary of ours",
                    "a new folder, or one that this program wrote");
            var foreign = OwnFiles.Foreign(path).Order(StringComparer.Ordinal).Take(MostNamed + 1).ToList();
            if (foreign.Count == 0) return;
            var named = string.Join(
                ", ", foreign.Take(MostNamed).Select(InputError.Quote)) + (foreign.Count > MostNamed ? ", …" : "");
            throw new InputError(
                place,
                $"the folder {InputError.Quote(path)} also holds {named}",
                "a folder with nothing but results, so that no file of yours is removed");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Unwritable(path, place, error);
        }
    }

    private static InputError Unwritable(string path, InputPlace place, Exception error) =>
        new(place, $"{InputError.Quote(path)} cannot be written ({error.Message})", "a folder that can be written");
}
