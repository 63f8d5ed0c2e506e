using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Tests.Light;

/// <summary>
/// Small scenes of everything that is awkward to project, each a function of its number: blades folded, over the cell's edges or
/// through the ground, closed bodies, triangles on top of each other, triangles without area, slopes, suns down to 1°. Worked out
/// in plain double precision, so that they are the same bits on every processor.
/// </summary>
internal static class OddScenes
{
    private const ulong Seed = 2024;

    /// <param name="number">Which; 0 is empty and 1 a single leaf.</param>
    /// <param name="coplanar">With triangles that lie in each other's plane and overlap.</param>
    /// <param name="throughGround">With a blade that is partly under the ground.</param>
    public static Scene Of(int number, bool coplanar = true, bool throughGround = true)
    {
        var sloping = Value(number, "sloping") < 0.35 ? 0.8 : 0;
        var cell = new Cell(
            0.3 + (0.5 * Value(number, "across")),
            0.3 + (0.5 * Value(number, "along")),
            sloping * (Value(number, "rise across") - 0.5),
            sloping * (Value(number, "rise along") - 0.5));
        var scenes = new RandomScenes(cell);
        var leaves = number switch { 0 => 0, 1 => 1, _ => 1 + (int)(20 * Value(number, "leaves")) };
        for (var leaf = 0; leaf < leaves; leaf++)
        {
            var frame = new Frame(number, leaf, "leaf");
            AddBlade(scenes, frame.Place(cell), frame, 0.06 + (0.1 * frame.Value("size")), 0.7 * frame.Value("fold"), SliverOf(number, leaf));
        }

        if (number < 2) return scenes.Build();
        if (Value(number, "spindle") < 0.6) AddBody(scenes, SurfaceKind.Cluster, cell, number, 0, [(0, 0), (0.3, 1), (0.65, 0.75), (1, 0)], 6, 0.15, 0.04);
        if (Value(number, "tube") < 0.6) AddBody(scenes, SurfaceKind.Wood, cell, number, 1, [(0, 0), (0, 1), (1, 1), (1, 0)], 3 + (number % 4), 0.5, 0.01);
        if (Value(number, "edge") < 0.3) AddBody(scenes, SurfaceKind.Wood, cell, number, 2, [(0, 0), (0, 1), (1, 1), (1, 0)], 4, 0.3, 0.03);
        if (Value(number, "degenerate") < 0.4) AddDegenerate(scenes, cell, number);
        if (coplanar && Value(number, "coplanar") < 0.4) AddCoplanar(scenes, cell, number);
        if (throughGround && Value(number, "under") < 0.3)
        {
            var frame = new Frame(number, 0, "under");
            AddBlade(scenes, frame.Place(cell, atGround: true), frame, 0.15, 0.3, sliver: false);
        }

        return scenes.Build();
    }

    /// <summary>
    /// A sun for a scene: one in four stands 1 to 5° high, one in ten is straight above. On a slope it is turned to where it
    /// rises 1° over the ground.
    /// </summary>
    public static Vector3 Sun(int number, in Cell cell, int turn = 0)
    {
        double Own(string purpose) => SeededValue.Uniform(Seed, purpose, number, turn);
        if (number % 10 == 7) return Vector3.UnitZ;
        var height = number % 4 == 0 ? 1 + (4 * Own("low sun")) : 5 + (85 * Own("sun"));
        var azimuth = 360 * Own("sun azimuth");
        var sun = SkyRings.Direction(90 - height, azimuth);
        return Rise(sun, cell) >= 0.0174 ? sun : SkyRings.Direction(90 - height, azimuth + 180);
    }

    /// <summary>Cosine of the sun's angle to the slope's vector (−riseAcross, −riseAlong, 1), times its length.</summary>
    public static double Rise(Vector3 direction, in Cell cell) =>
        direction.Z - (cell.RiseAcross * direction.X) - (cell.RiseAlong * direction.Y);

    private static bool SliverOf(int number, int leaf) => leaf == 0 && number % 3 == 0;

    private static double Value(int number, string purpose) => SeededValue.Uniform(Seed, purpose, number);

    // Two flat halves of three triangles, and one leaf in some scenes has a sliver of a thousandth of a millimetre at its side.
    private static void AddBlade(RandomScenes scenes, Point3 center, Frame frame, double size, double fold, bool sliver)
    {
        var surface = scenes.AddSurface(SurfaceKind.Blade);
        for (var half = -1; half <= 1; half += 2)
        {
            Point3 At(double along, double aside) =>
                center + (size * (((along - 0.5) * frame.Along) + (half * aside * frame.Aside) + (fold * aside * frame.Up)));
            Point3[] rim = [At(0, 0.05), At(0.25, 0.5), At(0.7, 0.42), At(1, 0)];
            for (var i = 0; i + 1 < rim.Length; i++) Add(scenes, surface, At(0, 0), rim[half > 0 ? i : i + 1], rim[half > 0 ? i + 1 : i]);
        }

        var tip = center + (0.5 * size * frame.Along);
        if (sliver) Add(scenes, surface, tip, center, tip + (1e-6 * frame.Aside));
    }

    // A profile of (place along the axis, radius) turned about it, closed where the radius is 0; outer side outward.
    private static void AddBody(
        RandomScenes scenes, SurfaceKind kind, in Cell cell, int number, int index, (double Along, double Radius)[] profile, int sides, double length, double radius)
    {
        var frame = new Frame(number, index, "body");
        var (surface, foot) = (scenes.AddSurface(kind), frame.Place(cell));
        Point3 At((double Along, double Radius) ring, int side)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (side % sides) / sides);
            return foot + (length * ring.Along * frame.Along) + (radius * ring.Radius * ((cosine * frame.Aside) + (sine * frame.Up)));
        }

        for (var ring = 0; ring + 1 < profile.Length; ring++)
        {
            for (var side = 0; side < sides; side++)
            {
                var (a, b, c, d) = (At(profile[ring], side), At(profile[ring], side + 1), At(profile[ring + 1], side + 1), At(profile[ring + 1], side));
                if (profile[ring].Radius > 0) Add(scenes, surface, a, b, c);
                if (profile[ring + 1].Radius > 0) Add(scenes, surface, a, c, d);
            }
        }
    }

    // Corners in one point, two in one point, all on a line, and a needle.
    private static void AddDegenerate(RandomScenes scenes, in Cell cell, int number)
    {
        var frame = new Frame(number, 0, "degenerate");
        var (surface, place) = (scenes.AddSurface(SurfaceKind.Blade), frame.Place(cell));
        Add(scenes, surface, place, place, place);
        Add(scenes, surface, place, place + (0.1 * frame.Along), place);
        Add(scenes, surface, place, place + (0.1 * frame.Along), place + (0.2 * frame.Along));
        Add(scenes, surface, place, place + (0.3 * frame.Along), place + (0.3 * frame.Along) + (1e-4 * frame.Aside));
    }

    // A blade that overlaps itself, and two blades in one horizontal plane.
    private static void AddCoplanar(RandomScenes scenes, in Cell cell, int number)
    {
        var frame = new Frame(number, 0, "coplanar");
        var (surface, place) = (scenes.AddSurface(SurfaceKind.Blade), frame.Place(cell));
        Add(scenes, surface, place, place + (0.1 * frame.Along), place + (0.1 * frame.Aside));
        Add(scenes, surface, place, place + (0.08 * frame.Along), place + (0.12 * frame.Aside));
        var corner = new Vector3((float)place.X, (float)place.Y, (float)(place.Z + 0.2));
        for (var copy = 0; copy < 2; copy++)
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner + new Vector3(0.05f * copy, 0, 0), new Vector3(0.1f, 0, 0), new Vector3(0.02f, 0.1f, 0));
    }

    private static void Add(RandomScenes scenes, int surface, Point3 a, Point3 b, Point3 c) => scenes.AddTriangle(surface, Single(a), Single(b), Single(c));

    private static Vector3 Single(Point3 point) => new((float)point.X, (float)point.Y, (float)point.Z);

    // Three axes, uniform in direction.
    private sealed class Frame
    {
        private readonly (int Number, int Index, string What) _of;

        public Frame(int number, int index, string what)
        {
            _of = (number, index, what);
            var height = (2 * Value("height")) - 1;
            var (sine, cosine) = Math.SinCos(2 * Math.PI * Value("turn"));
            var radius = Math.Sqrt(1 - (height * height));
            Along = new Point3(radius * cosine, radius * sine, height);
            Aside = Point3.Cross(Along, Math.Abs(height) < 0.7 ? new Point3(0, 0, 1) : new Point3(1, 0, 0)).Normalized();
            Up = Point3.Cross(Along, Aside);
        }

        public Point3 Along { get; }

        public Point3 Aside { get; }

        public Point3 Up { get; }

        public double Value(string purpose) => SeededValue.Uniform(Seed, _of.What + purpose, _of.Number, _of.Index);

        // A fifth of a cell over its edges on all sides; high enough that nothing reaches the ground, or just at it.
        public Point3 Place(in Cell cell, bool atGround = false)
        {
            var (x, y) = (cell.Across * ((1.4 * Value("x")) - 0.2), cell.Along * ((1.4 * Value("y")) - 0.2));
            var height = atGround ? 0.02 : 0.55 + (0.5 * Value("z"));
            return new Point3(x, y, height + (cell.RiseAcross * x) + (cell.RiseAlong * y));
        }
    }
}
