using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Plants;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Geometry;

/// <summary>Blades of any size, in any place of any row: their area is the leaf's, and nothing is torn.</summary>
public class BladePropertyTests
{
    private static readonly Gen<Vector3> AnyDirection =
        Gen.Select(Gen.Double[-1, 1], Gen.Double[0, 2 * Math.PI]).Select((height, turn) =>
        {
            var around = Math.Sqrt(1 - (height * height));
            return new Vector3((float)(around * Math.Cos(turn)), (float)(around * Math.Sin(turn)), (float)height);
        });

    // Sizes evenly over their logarithm: a bud's blade of 1 cm² to one of 600 cm².
    private static readonly Gen<double> AnyArea = Gen.Double[-4, Math.Log10(0.06)].Select(power => Math.Pow(10, power));

    /// <summary>
    /// Single precision stays below 1e-5 of the area and, where a small blade stands metres from the origin, its
    /// corners' rounding.
    /// </summary>
    [Fact]
    public void The_area_is_that_of_the_leaf_wherever_the_blade_stands_and_however_it_turns() =>
        Gen.Select(AnyArea, AnyDirection, Gen.Double[0, 2 * Math.PI], Gen.Float[-12, 12].Array[3], Gen.Bool)
        .Sample((area, normal, turn, place, drawn) =>
        {
            var aside = Vector3.Normalize(Vector3.Cross(normal, MathF.Abs(normal.Z) < 0.9f ? Vector3.UnitZ : Vector3.UnitX));
            var tip = Vector3.Normalize(((float)Math.Cos(turn) * aside) + ((float)Math.Sin(turn) * Vector3.Cross(normal, aside)));
            var frame = new BladeFrame(new Vector3(place[0], place[1], place[2]), Vector3.Cross(tip, normal), tip, normal);
            var corners =
                Array.ConvertAll((drawn ? BladeMesh.Drawn : BladeMesh.ForLight).Corners, point =>
                    frame.CellFromBlade(point, (float)Math.Sqrt(area)));
            // Half a unit in the last place of a float at 12 m is 4.8e-7 m; fourteen triangles' edges add up to some
            // six roots of the area.
            Assert.Equal(area, AreaOf(corners), (1e-5 * area) + (6 * 4.8e-7 * Math.Sqrt(area)));
        }, iter: 5_000);

    /// <summary>
    /// A blade's frame is right-handed and of unit vectors for every leaf of every form, whatever the shoot's
    /// direction.
    /// </summary>
    [Fact]
    public void Frames_are_orthonormal() =>
        Gen.Select(ScenarioGen.Any, AnyDirection, Gen.Int[1, 60], Gen.Int[0, 5_000], Gen.Int[1, 2])
        .Sample((scenario, axis, rank, id, order) =>
        {
            var shoot = new Shoot(new ShootId(id % 97), new VineId(0), order, 0.5, 1);
            var frame = new LeafPlacement(scenario)
                .Place(new Leaf(new LeafId(id), shoot, rank, 0.015) { Area = 0.01 }, new Vector3(0, 0.5f, 1), axis);
            foreach (var vector in new[] { frame.Right, frame.Tip, frame.Normal })
                Assert.Equal(1, vector.Length(), 1e-5);
            Assert.Equal(0, Vector3.Dot(frame.Tip, frame.Normal), 1e-5);
            Assert.Equal(0, (Vector3.Cross(frame.Right, frame.Tip) - frame.Normal).Length(), 1e-5);
            // No blade hangs upside down, and a petiole is as long as it should be.
            Assert.True(frame.Normal.Z > 0);
            Assert.Equal(0.08, Vector3.Distance(frame.Base, new Vector3(0, 0.5f, 1)), 1e-5);
        }, iter: 3_000);

    private static double AreaOf(Vector3[] corners)
    {
        var area = 0.0;
        for (var i = 0; i < corners.Length; i += 3)
            area += 0.5 * Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]).Length();
        return area;
    }
}
