using System.Numerics;
using System.Runtime.InteropServices;

namespace CanopySim.Tests.RayTracing.Embree;

/// <summary>A ray as <c>embree_rays.cpp</c> reads it.</summary>
/// <param name="Origin">Where it starts [m].</param>
/// <param name="Direction">Unit vector.</param>
/// <param name="Limit">How far it goes [m].</param>
/// <param name="Except">Triangle that it does not hit; −1 for none.</param>
[StructLayout(LayoutKind.Sequential, Pack = 4)]
public readonly record struct GivenRay(Vector3 Origin, Vector3 Direction, float Limit, int Except);
