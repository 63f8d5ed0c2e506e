using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Viewer.Tests.Painting;

/// <summary>A bare block, and blades put where a test wants them.</summary>
internal static class SyntheticBlock
{
    private const float Area = 0.02f;

    /// <summary>Bushes of a level block: no wires and posts in the way.</summary>
    public static Scenario Scenario { get; } = new()
    {
        Name = "bare",
        Site = new Site { Latitude = 45, Longitude = 0 },
        Weather = new WeatherOptions { File = "" },
        Rows = new RowLayout { Spacing = 2.4, VineSpacing = 1.5 },
        Trellis = new Trellis { Form = TrellisForm.Bush },
    };

    /// <summary>Hangs over the row, its upper side to the right of it, tip down.</summary>
    public static DrawnBlade Facing(int id, float along, float height) =>
        new(id, 0, 0, 1, id + 1, Area, new BladeFrame(new Vector3(0, along, height), -Vector3.UnitY, -Vector3.UnitZ, Vector3.UnitX));

    /// <summary>Lies level, its tip along the row.</summary>
    public static DrawnBlade Flat(int id, float across, float along, float height) =>
        new(id, 0, 0, 1, id + 1, 3 * Area, new BladeFrame(new Vector3(across, along - 0.02f, height), Vector3.UnitX, Vector3.UnitY, Vector3.UnitZ));
}
