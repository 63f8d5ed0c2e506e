using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>What is drawn, pass by pass: the scene, the chosen leaf, the shadows.</summary>
public sealed partial class CanopyPainter
{
    private void DrawScene(BlockShape block, Camera camera, int width, int height, bool isStill)
    {
        var clip = camera.ClipFromCell(width, height);
        var uniforms = Uniforms(block, camera, clip, isStill);
        FindCopies(block, camera, clip, height, isStill ? 0 : 1);
        _shadow.BindTexture();
        BindTable();
        _leaves.Bind();
        _ground.BindNoise();
        DrawLeaves(uniforms, _programs.Leaf, isStill);
        DrawStalks(uniforms, _programs.Stalk, height);
        DrawWood(uniforms, _programs.Solid);
        DrawClusters(uniforms, _programs.Cluster, isStill);
        uniforms.Use(_programs.Ground);
        _programs.Ground.SetColor("uEarth", Theme.Earth);
        _programs.Ground.SetColor("uAlley", Theme.Alley);
        _programs.Ground.Set("uRowSpacing", block.RowSpacing);
        _programs.Ground.Set("uDarkUnderRow", _leaves.Count > 0 ? 0.12f : 0.03f);
        _ground.Draw(_programs.Ground, camera.Eye, uniforms.HazeRange.Y);
        DrawSelected(uniforms);
        if (!ShowsSunPath) return;
        uniforms.Use(_programs.Mark);
        _marks.Draw(_programs.Mark, block, camera, _path, _sun, Theme, height);
    }

    private void FindCopies(BlockShape block, Camera camera, in Matrix4x4 clip, int height, int plainest)
    {
        var reach = Math.Max(HazeTo, HazeToDistances * camera.Distance);
        _copies.Find(block, camera, clip, _box.Low, _box.High, height, reach, plainest);
        _gl.Enable(EnableCap.DepthTest);
    }

    private void DrawLeaves(SceneUniforms uniforms, ShaderProgram program, bool isStill = false)
    {
        uniforms.Use(program);
        program.SetColor("uNoValue", LeafColoring.NoValueRgb);
        program.Set("uShaded", IsShaded ? 1 : 0);
        program.Set("uSelected", SelectedLeaf);
        for (var level = 0; level < _copies.Levels.Count; level++)
        {
            var isNear = isStill && level == 0;
            program.Set("uVeins", isNear ? 1 : 0);
            // On a blade of few pixels nobody sees a shadow's soft edge.
            program.Set("uPenumbra", isNear ? uniforms.Penumbra : 0);
            foreach (var copies in Chunks(_copies.Levels[level])) _leaves.Draw(program, copies.Span, level);
        }
    }

    private void DrawStalks(SceneUniforms uniforms, ShaderProgram program, int height)
    {
        uniforms.Use(program);
        program.Set("uLeastRadius", 0f);
        program.SetColor("uColor", Colors.Mix(Theme.GreenShoot, Theme.RipeShoot, _ripeness));
        for (var level = 0; level < 3; level++)
        {
            foreach (var copies in Chunks(_copies.Levels[level])) _stalks.Draw(program, copies.Span, level == 0 ? 0
                : Thin);
        }

        // Half of a bit less than a pixel, in clip units.
        program.Set("uLeastRadius", uniforms.IsCasting ? 0 : 0.45f / height * 0.61f);
        program.SetColor("uColor", Theme.Wire);
        foreach (var copies in Chunks(_copies.All)) _wires.Draw(program, copies.Span);
        program.SetColor("uColor", Theme.Post);
        foreach (var copies in Chunks(_copies.Posts)) _posts.Draw(program, copies.Span);
    }

    private void DrawWood(SceneUniforms uniforms, ShaderProgram program)
    {
        uniforms.Use(program);
        program.SetColor("uColor", Theme.Wood);
        foreach (var copies in Chunks(_copies.All)) _wood.Draw(program, copies.Span);
    }

    private void DrawClusters(SceneUniforms uniforms, ShaderProgram program, bool isStill = false)
    {
        uniforms.Use(program);
        program.SetColor("uColor", Colors.Mix(Theme.GreenFruit, Theme.RipeFruit, _ripeness));
        for (var level = 0; level < 4; level++)
        {
            var isNear = level == 0 && isStill;
            program.Set("uBerries", isNear ? 1 : 0);
            foreach (var copies in Chunks(_copies.Levels[level])) _clusters.Draw(program, copies.Span, isNear);
        }
    }

    private void DrawSelected(SceneUniforms uniforms)
    {
        if (SelectedLeaf < 0 || SelectedLeaf >= _leaves.Count) return;
        ReadOnlySpan<Vector3> here = [Vector3.Zero];
        var program = _programs.LeafPlain;
        uniforms.Use(program);
        var accent = ColorVector.Of(Theme.Accent);
        program.Set("uColor", new Vector4(accent, 1));
        _gl.Enable(EnableCap.PolygonOffsetFill);
        _gl.PolygonOffset(2, 8);
        _leaves.DrawOne(program, here, SelectedLeaf, 1.14f);
        _gl.Disable(EnableCap.PolygonOffsetFill);

        // Seen through what hides it, faintly.
        _gl.Enable(EnableCap.Blend);
        _gl.BlendFunc(BlendingFactor.SrcAlpha, BlendingFactor.OneMinusSrcAlpha);
        _gl.DepthFunc(DepthFunction.Greater);
        _gl.DepthMask(false);
        program.Set("uColor", new Vector4(accent, 0.45f));
        _leaves.DrawOne(program, here, SelectedLeaf, 1);
        _gl.DepthMask(true);
        _gl.DepthFunc(DepthFunction.Less);
        _gl.Disable(EnableCap.Blend);
    }

    private void DrawShadows(BlockShape block)
    {
        (_isShadowOld, _shadowSun) = (false, _sun);
        ShadowsDrawn++;
        _shadow.Begin(block);
        if (_sun is not { } sun || SunStrength(block, sun) <= 0) return;
        var uniforms = new SceneUniforms
        {
            Clip = Matrix4x4.Identity,
            Eye = default,
            Sun = sun,
            SunStrength = 1,
            Block = block,
            Heights = Heights(block),
            Haze = 0,
            HazeRange = new Vector2(0, 1),
            Penumbra = 0,
            IsCasting = true,
        };
        _gl.Enable(EnableCap.DepthTest);
        var copies = ShadowMap.Copies(block, sun, _box.Low, _box.High);
        foreach (var some in Chunks(copies))
        {
            uniforms.Use(_programs.LeafDepth);
            _leaves.Draw(_programs.LeafDepth, some.Span, 1);
            uniforms.Use(_programs.StalkDepth);
            _stalks.Draw(_programs.StalkDepth, some.Span, Thin);
            uniforms.Use(_programs.SolidDepth);
            _wood.Draw(_programs.SolidDepth, some.Span);
            uniforms.Use(_programs.ClusterDepth);
            _clusters.Draw(_programs.ClusterDepth, some.Span, isNear: false);
        }
    }
}
