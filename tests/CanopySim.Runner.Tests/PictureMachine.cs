using CanopySim.Drawing;
using CanopySim.Drawing.Gl;

namespace CanopySim.Runner.Tests;

/// <summary>Whether this machine can draw pictures without a window, as reports want them.</summary>
internal static class PictureMachine
{
    /// <summary>What the program says where it cannot.</summary>
    public const string Missing = "the report has no picture in perspective";

    private static readonly Lazy<bool> Drawing = new(() =>
    {
        try
        {
            EglContext.Create().Dispose();
            return true;
        }
        catch (DrawingException)
        {
            return false;
        }
    });

    public static bool CanDraw => Drawing.Value;

    /// <summary>So many pictures, where there are any.</summary>
    public static int Count(int pictures) => CanDraw ? pictures : 0;
}
