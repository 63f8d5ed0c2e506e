using CanopySim.Drawing;
using CanopySim.Drawing.Gl;
using Silk.NET.OpenGL;

namespace CanopySim.Viewer.Tests.Gl;

public class EglContextTest
{
    [Fact]
    public void A_missing_library_is_named_with_what_to_install()
    {
        var error = Assert.Throws<DrawingException>(() => EglContext.Create("libEGL-not-there.so.1"));
        Assert.Contains("libEGL-not-there.so.1", error.Message);
        Assert.Contains("apt-get install libegl1 libegl-mesa0 libgl1-mesa-dri", error.Message);
    }

    [Fact]
    public void Elsewhere_than_on_Linux_the_window_is_named()
    {
        var error = Assert.Throws<DrawingException>(() => EglContext.Create(isLinux: false));
        Assert.Contains("on Linux alone", error.Message);
        Assert.Contains("'canopysim-view'", error.Message);
    }

    [Fact]
    public void It_is_a_core_context_of_3_3_or_newer()
    {
        using var context = RecordedBlock.Context();
        var version = (10 * context.Gl.GetInteger(GetPName.MajorVersion)) + context.Gl.GetInteger(GetPName.MinorVersion);
        Assert.True(version >= 33, $"OpenGL {version / 10.0}");
        GlErrors.Check(context.Gl, "asking");
    }

    [Fact]
    public void An_error_of_the_driver_is_told_with_what_was_being_done()
    {
        using var context = RecordedBlock.Context();
        context.Gl.Enable((EnableCap)1);
        var error = Assert.Throws<DrawingException>(() => GlErrors.Check(context.Gl, "trying"));
        Assert.Contains("InvalidEnum", error.Message);
        Assert.Contains("trying", error.Message);
    }
}
