namespace CanopySim.Viewer.Commands;

/// <summary>Progress on one line of the error stream, where a person watches.</summary>
internal sealed class ProgressLine(bool quiet) : IDisposable
{
    private readonly bool _shown = !quiet && !Console.IsErrorRedirected;
    private int _longest;

    public void Show(string what, double share)
    {
        if (!_shown) return;
        var line = $"{what}  {100 * share,3:0} %  ";
        _longest = Math.Max(_longest, line.Length);
        Console.Error.Write($"\r{line}");
    }

    public void Dispose()
    {
        if (_longest > 0) Console.Error.Write($"\r{new string(' ', _longest)}\r");
        _longest = 0;
    }
}
