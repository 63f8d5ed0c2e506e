using System.Numerics;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>A program of two shaders, whose uniforms are set by name.</summary>
internal sealed class ShaderProgram : IDisposable
{
    private readonly GL _gl;
    private readonly uint _program;
    private readonly Dictionary<string, int> _places = [];

    /// <param name="gl">The functions of OpenGL.</param>
    /// <param name="vertexName">Name of the vertex shader's file in the assembly.</param>
    /// <param name="fragmentName">Name of the fragment shader's; null for the same.</param>
    /// <exception cref="DrawingException">The driver does not take them.</exception>
    public ShaderProgram(GL gl, string vertexName, string? fragmentName = null)
    {
        _gl = gl;
        var common = Text("common.glsl");
        var vertex = Compile(ShaderType.VertexShader, vertexName + ".vert", common);
        var fragment = Compile(ShaderType.FragmentShader, (fragmentName ?? vertexName) + ".frag", common);
        _program = gl.CreateProgram();
        gl.AttachShader(_program, vertex);
        gl.AttachShader(_program, fragment);
        gl.LinkProgram(_program);
        gl.DeleteShader(vertex);
        gl.DeleteShader(fragment);
        if (gl.GetProgram(_program, ProgramPropertyARB.LinkStatus) == 0)
            throw new DrawingException(
                $"The driver does not link the shaders {vertexName} and {fragmentName ?? vertexName}: "
                + gl.GetProgramInfoLog(_program));
    }

    public void Use() => _gl.UseProgram(_program);

    public void Set(string name, int value) => _gl.Uniform1(Place(name), value);

    public void Set(string name, float value) => _gl.Uniform1(Place(name), value);

    public void Set(string name, Vector2 value) => _gl.Uniform2(Place(name), value.X, value.Y);

    public void Set(string name, Vector3 value) => _gl.Uniform3(Place(name), value.X, value.Y, value.Z);

    public void Set(string name, Vector4 value) => _gl.Uniform4(Place(name), value.X, value.Y, value.Z, value.W);

    /// <summary>A color 0xRRGGBB.</summary>
    public void SetColor(string name, uint rgb) => Set(name, ColorVector.Of(rgb));

    public unsafe void Set(string name, in Matrix4x4 value)
    {
        // Rows of System.Numerics, which multiplies from the left, are the columns that OpenGL reads.
        fixed (Matrix4x4* first = &value) _gl.UniformMatrix4(Place(name), 1, false, (float*)first);
    }

    public unsafe void Set(string name, ReadOnlySpan<Vector3> values)
    {
        fixed (Vector3* first = values) _gl.Uniform3(Place(name), (uint)values.Length, (float*)first);
    }

    public void Dispose() => _gl.DeleteProgram(_program);

    private int Place(string name)
    {
        if (!_places.TryGetValue(name, out var place)) _places[name] = place = _gl.GetUniformLocation(_program, name);
        return place;
    }

    private uint Compile(ShaderType type, string file, string common)
    {
        var shader = _gl.CreateShader(type);
        _gl.ShaderSource(shader, $"#version 330 core\n{common}\n{Text(file)}");
        _gl.CompileShader(shader);
        if (_gl.GetShader(shader, ShaderParameterName.CompileStatus) == 0)
            throw new DrawingException(
                $"The driver does not compile the shader {file}: {_gl.GetShaderInfoLog(shader)}");
        return shader;
    }

    private static string Text(string file)
    {
        using var stream = typeof(ShaderProgram).Assembly.GetManifestResourceStream($"CanopySim.Drawing.Shaders.{file}")
            ?? throw new InvalidOperationException($"The shader {file} is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>Colors as shaders take them.</summary>
internal static class ColorVector
{
    /// <summary>0xRRGGBB as red, green and blue, 0 to 1.</summary>
    public static Vector3 Of(uint rgb) => new Vector3((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb) / 255;
}
