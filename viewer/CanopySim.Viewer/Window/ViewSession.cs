using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using Silk.NET.OpenGL;

namespace CanopySim.Viewer.Window;

/// <summary>
/// The canopy's picture under the screen, in any framebuffer: of a window, or off-screen in tests. While a hand moves
/// the picture, or a season plays, it is drawn quickly, and finely once it rests.
/// </summary>
public sealed class ViewSession : IDisposable
{
    // So long a picture must rest before it is drawn finely [s].
    private const double RestBeforeStill = 0.2;

    private readonly GL _gl;
    private readonly ScreenModel _screen;
    private readonly CanopyPainter _painter;
    private readonly PictureLayer _picture;
    private readonly OverlayLayer _overlay;
    private Camera? _camera;
    private int _canopy = -2;
    private bool _isPictureOld = true;
    private bool _isStill;
    private double _rested;
    private bool _isScreenOld = true;

    /// <param name="context">Current on this thread.</param>
    /// <param name="screen">What lies over the picture.</param>
    public ViewSession(IGlContext context, ScreenModel screen)
    {
        (_gl, _screen) = (context.Gl, screen);
        _painter = new CanopyPainter(context);
        (_picture, _overlay) = (new PictureLayer(_gl), new OverlayLayer(_gl));
    }

    /// <summary>Frames in which the picture was drawn quickly and finely.</summary>
    public (int Quick, int Fine) Drawn { get; private set; }

    /// <summary>Whether anything must be drawn.</summary>
    public bool NeedsFrame => _isPictureOld || _isScreenOld;

    /// <summary>When to come back although nothing was done [s]; null: not before something is done.</summary>
    public double? SecondsToNextFrame
    {
        get
        {
            if (NeedsFrame) return 0;
            double? toStill = _isStill ? null : Math.Max(0, RestBeforeStill - _rested);
            return (_screen.SecondsToNextFrame, toStill) switch
            {
                (double screen, double still) => Math.Min(screen, still),
                var (screen, still) => screen ?? still,
            };
        }
    }

    /// <summary>Handles what happened, time among it.</summary>
    /// <param name="seconds">Time that went by since the last call.</param>
    public void Advance(double seconds)
    {
        _screen.Enqueue(new Tick(seconds));
        _rested += seconds;
        for (var outcome = _screen.Handle(); ; outcome = _screen.Handle())
        {
            _isScreenOld |= outcome.Paint;
            Follow(outcome.Picture);
            var asked = false;
            foreach (var request in outcome.Requests) asked |= Answer(request);
            if (!asked) break;
        }

        if (!_isStill && !_isPictureOld && _rested >= RestBeforeStill) _isPictureOld = true;
    }

    /// <summary>Draws what has changed, and puts all of it into a framebuffer.</summary>
    /// <param name="framebuffer">Which; 0 is a window's.</param>
    public void Draw(uint framebuffer)
    {
        var area = _screen.PictureArea;
        var (width, height) = ((int)Math.Max(1, area.Width), (int)Math.Max(1, area.Height));
        if (_isPictureOld)
        {
            _isStill = _rested >= RestBeforeStill;
            var target = _picture.Fit(width, height);
            _painter.Draw(_camera!, width, height, _isStill ? Fineness.Still : Fineness.Moving, target);
            Drawn = _isStill ? (Drawn.Quick, Drawn.Fine + 1) : (Drawn.Quick + 1, Drawn.Fine);
            _isPictureOld = false;
        }

        if (_isScreenOld)
        {
            _overlay.Paint(_screen.Size.Width, _screen.Size.Height, _screen.Draw);
            _isScreenOld = false;
        }

        _picture.CopyTo(framebuffer, (int)area.Left, _screen.Size.Height - (int)area.Top - height);
        _overlay.Lay(_screen.Size.Width, _screen.Size.Height);
        GlErrors.Check(_gl, "laying the screen over the canopy");
    }

    public void Dispose()
    {
        _painter.Dispose();
        _picture.Dispose();
        _overlay.Dispose();
    }

    private void Follow(PictureChange change)
    {
        if (change == PictureChange.None) return;
        var (recording, state) = (_screen.Recording, _screen.State);
        var has = state.Day < recording.DayCount;
        if (change.HasFlag(PictureChange.Season) || _camera is null)
        {
            _painter.SetBlock(recording.Scenario);
            _camera ??= new Camera(BlockShape.Of(recording.Scenario));
            _canopy = -2;
        }

        if (change.HasFlag(PictureChange.Theme)) _painter.Theme = state.Theme == ScreenTheme.Dark ? SceneTheme.Dark
            : SceneTheme.Light;
        const PictureChange Leaves = PictureChange.Season | PictureChange.Day;
        if (has && (change & Leaves) != 0) ShowCanopy();
        if (has && (change & (Leaves | PictureChange.Hour)) != 0) ShowSun();
        if (has && (change & (Leaves | PictureChange.Hour | PictureChange.Colors)) != 0) ShowColors();
        if ((change & (Leaves | PictureChange.Leaf)) != 0)
            _painter.SelectedLeaf = has && state.LeafId is { } leaf ? _screen.Leaves.IndexOf(state.Day, leaf) : -1;
        Redraw();
    }

    private void ShowCanopy()
    {
        var (recording, day) = (_screen.Recording, _screen.State.Day);
        var number = recording.CanopyNumber(day);
        if (number == _canopy) return;
        _canopy = number;
        _painter.SetCanopy(recording.Canopy(day), Ripeness.Of(recording, day));
    }

    private void ShowSun()
    {
        var (recording, state) = (_screen.Recording, _screen.State);
        var date = recording.Row(state.Day).Date;
        var offset = recording.Head.UtcOffsetHours;
        _painter.SetSun(SunNow(), SunPath.Of(recording.Scenario, offset, date));
    }

    // In the middle of the hour, as light has it; null while it is down.
    private Vector3? SunNow()
    {
        var (recording, state) = (_screen.Recording, _screen.State);
        if (state.Day >= recording.DayCount) return null;
        var sun = SunPath.At(recording.Scenario, recording.Head.UtcOffsetHours, recording.Row(state.Day).Date,
            state.Hour + 0.5);
        return sun.Z > 0 ? sun : null;
    }

    private void ShowColors()
    {
        var values = _screen.Values;
        if (values.Length != _screen.Recording.Canopy(_screen.State.Day).Blades.Count) return;
        _painter.SetShares(_screen.Coloring.SharesOf(values), _screen.Coloring.Table());
    }

    private void Redraw() => (_isPictureOld, _rested) = (true, 0);

    // Whether the answer is an event that must be handled at once.
    private bool Answer(PictureRequest request)
    {
        var camera = _camera!;
        switch (request)
        {
            case OrbitView orbit:
                camera.Orbit(orbit.Right, orbit.Down);
                Redraw();
                return false;
            case PanView pan:
                camera.Pan(pan.Right, pan.Down, (int)Math.Max(1, _screen.PictureArea.Height));
                Redraw();
                return false;
            case ZoomView zoom:
                camera.Zoom(MathF.Log(zoom.Factor) / MathF.Log(ZoomPerStep));
                Redraw();
                return false;
            case LookFrom look:
                camera.Show(look.View, SunNow());
                Redraw();
                return false;
            case WholeVine:
                camera.Show(ViewPoint.Along);
                Redraw();
                return false;
            case PickLeaf pick:
                var area = _screen.PictureArea;
                var blade = _painter.LeafAt((int)(pick.X - area.Left), (int)(pick.Y - area.Top));
                var day = _screen.State.Day;
                int? leaf = blade >= 0 ? _screen.Recording.Canopy(day).Blades[blade].LeafId : null;
                _screen.Enqueue(new LeafPicked(leaf));
                return true;
            default:
                throw new ArgumentException($"no such request: {request}");
        }
    }

    // A camera's step of a wheel brings it nearer by this factor.
    private const float ZoomPerStep = 1 / 0.88f;
}
