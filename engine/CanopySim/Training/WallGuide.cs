using System.Numerics;
using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// What the wires of a wall do to its shoots: where they start, which way they lean, and how wires turn them. In the
/// frame of the
/// row: x from its middle, z over the ground under its middle where the shoot starts.
/// </summary>
internal sealed class WallGuide
{
    // What comes down runs on so far over the ground, so that blades do not lie in it [m]. Assumed.
    private const float AboveGround = 0.1f;

    // A shoot outside a pair of catch wires is back between them after so much of its height [m]. Assumed.
    private const float LedBackOver = 0.1f;

    // A roof's shoot lies down once it is so far over the wires [m]. Assumed.
    private const float OverRoof = 0.05f;

    // Shoots of a bush carry each other by their tendrils up to so much over the head [m]. Assumed.
    private const float CarriedOverHead = 0.5f;

    // Place of a curtain's shoot from its middle, as a share of half its width: from this to 1. Assumed.
    private const float LeastReach = 0.2f;

    // A shoot keeps within its curtain by going no more than so much of its length across it, and of the rest no more
    // than so much along the row. Assumed.
    private const float SteepestAcross = 0.9f;
    private const float MostAlong = 0.5f;

    // Standard deviation of what a shoot goes along the row, over what it goes square to that. Assumed.
    private const float DriftSpread = 0.25f;

    // Standard deviation of a bush's shoots about their golden angles round the head [rad]. Assumed.
    private const double RoundHeadSpread = 0.15;

    // How shoots leave their base, from upright towards their side [rad]: on a roof nearly flat, from a high cordon
    // nearly level where they are led down and rising where not, from a bush's arms outward. Within a wall led up the
    // spread alone, to the shoot's side. Assumed.
    private static readonly LeanSpread OnRoof = new(1.35f, 0.12f, 1.0f, 1.5f);
    private static readonly LeanSpread LedDown = new(1.3f, 0.25f, 0.6f, 2.2f);
    private static readonly LeanSpread Free = new(1.0f, 0.3f, 0.3f, 1.7f);
    private static readonly LeanSpread OfBush = new(0.35f, 0.15f, 0.02f, 0.8f);
    private const float WithinWall = 0.18f;

    private readonly Scenario _scenario;
    private readonly FoliageWall _wall;
    private readonly GroundRise _rise;
    private readonly int _walls;
    private readonly float _lift;

    public WallGuide(Scenario scenario, FoliageWall wall)
    {
        (_scenario, _wall, _rise) = (scenario, wall, GroundRise.Of(scenario));
        _walls = TrellisLayout.CanopyMetersPerRowMeter(scenario.Trellis);
        _lift = (float)(_rise.Across * wall.CordonAcross);
    }

    private bool IsBush => _scenario.Trellis.Form == TrellisForm.Bush;

    /// <summary>
    /// Where a shoot starts. On spurs all stand on the cordon; old canes left by hedge or minimal pruning bear them in
    /// a zone about it.
    /// </summary>
    public Vector3 Base(Shoot shoot)
    {
        var (work, seed) = (_scenario.CanopyWork, _scenario.Seed);
        var across = work.BearingZoneWidth * (SeededValue.Uniform(seed, "bearing wood across", shoot.Id.Value) - 0.5);
        var up = work.BearingZoneHeight * (SeededValue.Uniform(seed, "bearing wood height", shoot.Id.Value) - 0.5);
        var start = new Vector3(
            (float)(_wall.CordonAcross + across), (float)shoot.PositionAlongRow,
            (float)(_wall.CordonHeight + up) + _lift);
        return IsBush ? start + BushHead.ArmEnd(BushHead.NearestArm(Azimuth(shoot))) : start;
    }

    /// <summary>How it leaves its base.</summary>
    public ShootCourse Start(Shoot shoot)
    {
        var seed = _scenario.Seed;
        // Shoots are led to both sides in turn, so that neither is crowded; those of a wall follow each other by as
        // many as there are walls.
        var side = _wall.OnlySide != 0 ? _wall.OnlySide : shoot.Id.Value / _walls % 2 == 0 ? -1f : 1f;
        var spread = (float)SeededValue.Normal(seed, "shoot lean", shoot.Id.Value);
        var drift = DriftSpread * (float)SeededValue.Normal(seed, "shoot drift along the row", shoot.Id.Value);
        if (IsBush)
        {
            var (sin, cos) = ((float, float))Math.SinCos(Azimuth(shoot));
            return new ShootCourse(new Vector2(cos, sin), OfBush.At(spread), 0);
        }

        return new ShootCourse(new Vector2(side, 0), Lean(side, spread), drift)
        {
            Reach = LeastReach
                + ((1 - LeastReach) * (float)SeededValue.Uniform(seed, "place in the curtain", shoot.Id.Value)),
        };
    }

    // From upright towards the shoot's side [rad].
    private float Lean(float side, float spread) => _wall switch
    {
        { IsFlat: true } => OnRoof.At(spread) - (side * MathF.Atan((float)_rise.Across)),
        { Hangs: true, IsHeld: true } => LedDown.At(spread),
        { Hangs: true } => Free.At(spread),
        _ => (side * (float)_wall.Tilt) + Math.Abs(WithinWall * spread),
    };

    private double Azimuth(Shoot shoot) =>
        (GoldenAngle.Radians * shoot.Id.Value)
        + (RoundHeadSpread * SeededValue.Normal(_scenario.Seed, "shoot round the head", shoot.Id.Value));

    /// <summary>
    /// The course that the wires, or the shoot's own weight, give the internode that starts at a point.
    /// </summary>
    /// <param name="course">So far.</param>
    /// <param name="at">Where the internode starts [m].</param>
    /// <param name="length">Of the internode [m].</param>
    /// <param name="beyond">Length of the shoot from there on [m].</param>
    /// <param name="isHeld">False where no wire holds this node of the shoot.</param>
    public ShootCourse Turn(ShootCourse course, Vector3 at, float length, float beyond, bool isHeld)
    {
        if (isHeld && IsBush && at.Z - _lift < _wall.CordonHeight + CarriedOverHead) return course;
        if (!isHeld || !_wall.IsHeld || _wall.Hangs) return course.Bent(length, beyond);
        if (_wall.IsFlat)
        {
            var reach = _wall.OnlySide != 0 ? (float)_wall.Width : 0.5f * (float)_wall.Width;
            if (MathF.Abs(at.X) >= reach) return course.Bent(length, beyond);
            // The roof's wires carry the shoot: it lies flat on them, as the ground lies.
            if (at.Z - ((float)_rise.Across * at.X) < _wall.TopHeight + OverRoof) return course;
            return course with { Tilt = (0.5f * MathF.PI) - (course.Heading.X * MathF.Atan((float)_rise.Across)) };
        }

        return at.Z - _lift < _wall.TopHeight ? Between(course, at) : course.Bent(length, beyond);
    }

    // Catch wires: a shoot that reaches the outer wire is turned back along its wall.
    private ShootCourse Between(ShootCourse course, Vector3 at)
    {
        var side = course.Heading.X;
        var off = OffMiddle(at);
        var half = 0.5f * (float)_wall.WidthAt(at.Z - _lift);
        var along = side * (float)_wall.Tilt;
        if (MathF.Abs(off) < half) return course.IsLedBack ? course with { Tilt = along } : course;
        if (_wall.CatchWires.Count == 0) return course with { Tilt = along, IsLedBack = true };
        var excess = MathF.Abs(off) - (0.5f * (float)_wall.WidthAt(at.Z - _lift + LedBackOver));
        var inward = MathF.Atan(Math.Clamp(excess / LedBackOver, 0, 1));
        return course with { Tilt = along - (side * MathF.Sign(off) * inward), IsLedBack = true };
    }

    // Distance from the middle of the wall, square to it, positive to the right [m].
    private float OffMiddle(Vector3 at)
    {
        var (sin, cos) = ((float)Math.Sin(_wall.Tilt), (float)Math.Cos(_wall.Tilt));
        return ((at.X - (float)_wall.CordonAcross) * cos) - ((at.Z - (float)_wall.CordonHeight - _lift) * sin);
    }

    /// <summary>
    /// The end of an internode, kept within a curtain and over the ground, and the course it really took.
    /// </summary>
    /// <param name="course">As it was turned.</param>
    /// <param name="from">Where the internode starts [m].</param>
    /// <param name="length">Of the internode [m].</param>
    /// <param name="along">Where the shoot starts along the row [m]: the ground's height is counted from there.</param>
    /// <param name="isHeld">False where no wire holds this node of the shoot.</param>
    public (Vector3 End, ShootCourse Course) Step(ShootCourse course, Vector3 from, float length, float along,
        bool isHeld)
    {
        var direction = course.Direction;
        if (isHeld && _wall.Hangs && _wall.IsHeld) (direction, course) = WithinCurtain(direction, course, from, length);
        var end = from + (length * direction);
        return (end.Z < Floor(end, along) ? OnGround(course, from, length, along) : end, course);
    }

    // A curtain's shoots are led down, each at its own place within the width, so that they fill it; internodes keep
    // their length.
    private (Vector3 Direction, ShootCourse Course) WithinCurtain(Vector3 direction, ShootCourse course, Vector3 from,
        float length)
    {
        var half = course.Reach * 0.5f * (float)_wall.Width;
        var off = from.X - (float)_wall.CordonAcross;
        var target = off + (length * direction.X);
        if (MathF.Abs(target) <= half || length < 1e-6f) return (direction, course);
        var across = Math.Clamp(((MathF.Sign(target) * half) - off) / length, -SteepestAcross, SteepestAcross);
        var rest = MathF.Sqrt(1 - (across * across));
        var along = Math.Clamp(direction.Y, -MostAlong * rest, MostAlong * rest);
        var down = -MathF.Sqrt((rest * rest) - (along * along));
        var heading = across < 0 ? -1f : across > 0 ? 1f : course.Heading.X;
        var led = course with { Heading = new Vector2(heading, 0), Tilt = MathF.Atan2(MathF.Abs(across), down) };
        return (new Vector3(across, along, down), led);
    }

    private float Floor(Vector3 point, float along) =>
        AboveGround + (float)((_rise.Across * point.X) + (_rise.Along * (point.Y - along)));

    // What comes down to the ground runs on along the row, up or down with it.
    private Vector3 OnGround(ShootCourse course, Vector3 from, float length, float along)
    {
        var forward = course.Drift < 0 ? -1 : 1;
        var (rise, gap) = (_rise.Along, (double)Floor(from, along) - from.Z);
        if (gap >= length) return from + new Vector3(0, 0, length);
        // Where the internode, a radius round its start, meets the line 0.1 m over the ground.
        var steep = 1 + (rise * rise);
        var root = Math.Sqrt(Math.Max(0, (length * length * steep) - (gap * gap)));
        var run = ((forward * root) - (gap * rise)) / steep;
        // On a steep cross slope an internode may leave for the ground uphill and find none along the row within its
        // length: it goes the straightest way towards it.
        var reached = Math.Sqrt((run * run) + ((gap + (rise * run)) * (gap + (rise * run))));
        var scale = root > 0 || reached == 0 ? 1 : length / reached;
        return from + new Vector3(0, (float)(scale * run), (float)(scale * (gap + (rise * run))));
    }

    // A normal spread about a middle, kept between a least and a most [rad].
    private readonly record struct LeanSpread(float Middle, float Spread, float Least, float Most)
    {
        public float At(float normal) => Math.Clamp(Middle + (Spread * normal), Least, Most);
    }
}
