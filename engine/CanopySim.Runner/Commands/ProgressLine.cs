namespace CanopySim.Runner.Commands;

/// <summary>Progress on one line of the error stream, where a person watches.</summary>
public sealed class ProgressLine(bool quiet) : IDisposable
{
    private readonly bool _shown = !quiet && !Console.IsErrorRedirected;
    private bool _any;

    public void Show(DateOnly date, double share)
    {
        if (!_shown) return;
        _any = true;
        Console.Error.Write($"\r{date:d MMM yyyy}  {100 * share,3:0} %  ");
    }

    public void Dispose()
    {
        if (_any) Console.Error.Write("\r                         \r");
    }
}
