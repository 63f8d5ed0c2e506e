namespace CanopySim.Shell;

/// <summary>What the programs tell whoever started them.</summary>
public static class ExitCode
{
    public const int Ok = 0;

    /// <summary>What was asked for or handed in cannot be used; the message says what, and what to do.</summary>
    public const int BadInput = 2;

    /// <summary>Some of many seasons failed, the others are there.</summary>
    public const int SomeFailed = 3;

    /// <summary>A fault of the program.</summary>
    public const int Unexpected = 70;

    /// <summary>Not done, but may be tried again: a scheduler puts it back into its queue.</summary>
    public const int TryAgain = 75;

    /// <summary>Stopped by a person or a scheduler.</summary>
    public const int Stopped = 130;
}
