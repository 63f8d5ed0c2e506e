namespace CanopySim.Viewer.Window;

/// <summary>A window cannot be opened; the message says what is missing and what to do.</summary>
public sealed class WindowException(string message) : Exception(message);
