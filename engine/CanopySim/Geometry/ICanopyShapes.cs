using System.Numerics;
using CanopySim.Plants;

namespace CanopySim.Geometry;

/// <summary>Takes the organs of a canopy one after another, where they are [m]: as triangles for light, or in few numbers for pictures.</summary>
internal interface ICanopyShapes
{
    /// <summary>A vine begins, with its wood of many years.</summary>
    void Vine(Vine vine);

    /// <summary>A shoot of this year begins: its base and its nodes.</summary>
    void Shoot(Shoot shoot, Vector3[] points);

    /// <summary>A petiole or an internode of a lateral of the shoot.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other.</param>
    /// <param name="radius">Its radius.</param>
    /// <param name="index">A number of its own, by which a flat stand-in is turned.</param>
    void Stalk(Vector3 from, Vector3 to, float radius, int index);

    void Blade(Leaf leaf, in BladeFrame frame);

    void Cluster(Vector3 top, float length, float radius);
}
