using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Views;

namespace CanopySim.Drawing.Painting;

/// <summary>What all shaders of a picture are told alike; see common.glsl.</summary>
internal sealed record SceneUniforms
{
    // Samplers of the scene.
    public const int ShadowUnit = 0;
    public const int TableUnit = 1;
    public const int NoiseUnit = 2;
    public const int SharesUnit = 3;

    public required Matrix4x4 Clip { get; init; }

    public required Vector3 Eye { get; init; }

    /// <summary>Towards the sun that casts the shadows.</summary>
    public required Vector3 Sun { get; init; }

    /// <summary>0 while there is none.</summary>
    public required float SunStrength { get; init; }

    public required BlockShape Block { get; init; }

    /// <summary>Highest and lowest point of the shadow map over the ground [m].</summary>
    public required Vector2 Heights { get; init; }

    public required uint Haze { get; init; }

    /// <summary>Where the haze begins and where nothing else is left [m].</summary>
    public required Vector2 HazeRange { get; init; }

    /// <summary>Half width of a soft shadow's edge [m]; 0 for hard ones.</summary>
    public required float Penumbra { get; init; }

    public bool IsCasting { get; init; }

    /// <summary>Takes the program into use and tells it.</summary>
    public void Use(ShaderProgram program)
    {
        program.Use();
        program.Set("uClip", Clip);
        program.Set("uEye", Eye);
        program.Set("uSun", Sun);
        program.Set("uSunStrength", SunStrength);
        program.Set("uRise", new Vector2((float)Block.Cell.RiseAcross, (float)Block.Cell.RiseAlong));
        program.Set("uCell", new Vector2((float)Block.Cell.Across, (float)Block.Cell.Along));
        program.Set("uHeights", Heights);
        program.SetColor("uHaze", Haze);
        program.Set("uHazeRange", HazeRange);
        program.Set("uPenumbra", Penumbra);
        program.Set("uCasting", IsCasting ? 1 : 0);
        program.Set("uShadow", ShadowUnit);
        program.Set("uTable", TableUnit);
        program.Set("uNoise", NoiseUnit);
        program.Set("uShares", SharesUnit);
    }
}
