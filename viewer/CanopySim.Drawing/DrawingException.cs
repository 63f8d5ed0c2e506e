namespace CanopySim.Drawing;

/// <summary>Drawing that cannot be done here. The message says what is missing and what to do about it.</summary>
public sealed class DrawingException : Exception
{
    public DrawingException(string message)
        : base(message)
    {
    }

    public DrawingException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
