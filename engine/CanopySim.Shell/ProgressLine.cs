namespace CanopySim.Shell;

/// <summary>Progress on one line of the error stream, where a person watches.</summary>
public sealed class ProgressLine(bool quiet) : IDisposable
{
    private readonly bool _shown = !quiet && !Console.IsErrorRedirected;
    private int _longest;

    public void Show(DateOnly date, double share) => Show($"{date:d MMM yyyy}", share);

    /// <param name="what">What is being done.</param>
    /// <param name="share">How much of it is behind [0 to 1].</param>
    public void Show(string what, double share)
    {
        if (!_shown) return;
        var line = $"{what}  {100 * share,3:0} %  ";
        _longest = Math.Max(_longest, line.Length);
        Console.Error.Write($"\r{line}");
    }

    /// <summary>Leaves the line empty.</summary>
    public void Dispose()
    {
        if (_longest > 0) Console.Error.Write($"\r{new string(' ', _longest)}\r");
        _longest = 0;
    }
}
