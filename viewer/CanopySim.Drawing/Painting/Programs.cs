using CanopySim.Drawing.Gl;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>The shaders of the scene.</summary>
internal sealed class Programs(GL gl) : IDisposable
{
    public ShaderProgram Leaf { get; } = new(gl, "leaf");

    public ShaderProgram LeafDepth { get; } = new(gl, "leaf", "depth");

    public ShaderProgram LeafIdentity { get; } = new(gl, "leaf", "identity");

    public ShaderProgram LeafPlain { get; } = new(gl, "leaf", "plain");

    public ShaderProgram Stalk { get; } = new(gl, "stalk");

    public ShaderProgram StalkDepth { get; } = new(gl, "stalk", "depth");

    public ShaderProgram Solid { get; } = new(gl, "solid");

    public ShaderProgram SolidDepth { get; } = new(gl, "solid", "depth");

    public ShaderProgram Cluster { get; } = new(gl, "cluster");

    public ShaderProgram ClusterDepth { get; } = new(gl, "cluster", "depth");

    public ShaderProgram Ground { get; } = new(gl, "ground");

    public ShaderProgram Mark { get; } = new(gl, "mark", "plain");

    public void Dispose()
    {
        foreach (var program in new[] { Leaf, LeafDepth, LeafIdentity, LeafPlain, Stalk, StalkDepth, Solid, SolidDepth,
            Cluster, ClusterDepth, Ground, Mark })
            program.Dispose();
    }
}
