using System.Numerics;
using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Where a shoot's axis runs, node by node, in the cell's frame (x across the row, y along it, z up): led by wires, and bent by
/// its own weight where nothing holds it. The path depends on the shoot's lengths and seed alone, so it can be drawn anew any day.
/// </summary>
public sealed class ShootPath(Scenario scenario)
{
    // A free shoot tilts by this much per metre of its own length and metre of free length beyond [rad m⁻²]. Assumed.
    private const float WeightBending = 3.5f;

    // The steepest that a hanging shoot turns: straight down.
    private const float HangingTilt = MathF.PI;

    private readonly Trellis _trellis = scenario.Trellis;

    /// <summary>Positions of the base and of every node [m]: one more than there are phytomers.</summary>
    public Vector3[] Nodes(Shoot shoot)
    {
        var lengths = shoot.Phytomers.Select(phytomer => (float)phytomer.InternodeLength).ToArray();
        var total = lengths.Sum();
        var points = new Vector3[lengths.Length + 1];
        var (side, lean) = Lean(shoot);
        points[0] = Base(shoot);
        var drift = 0.25f * (float)SeededValue.Normal(scenario.Seed, "shoot drift along the row", shoot.Id.Value);
        var tilt = lean;
        var beyond = total;
        for (var i = 0; i < lengths.Length; i++)
        {
            tilt = Tilt(points[i], side, tilt, lengths[i], beyond);
            var across = side * MathF.Sin(tilt);
            var direction = Vector3.Normalize(new Vector3(across, drift, MathF.Cos(tilt)));
            points[i + 1] = Hold(points[i] + (lengths[i] * direction), points[i]);
            beyond -= lengths[i];
        }

        return points;
    }

    // On spurs all shoots stand on the cordon; old canes left by hedge or minimal pruning bear them in a zone about it.
    private Vector3 Base(Shoot shoot)
    {
        var across = scenario.CanopyWork.BearingZoneWidth * (SeededValue.Uniform(scenario.Seed, "bearing wood across", shoot.Id.Value) - 0.5);
        var up = scenario.CanopyWork.BearingZoneHeight * (SeededValue.Uniform(scenario.Seed, "bearing wood height", shoot.Id.Value) - 0.5);
        return new Vector3((float)across, (float)shoot.PositionAlongRow, (float)(_trellis.CordonHeightOrDefault + up));
    }

    // Which alley a shoot leans to, and its tilt from the vertical at the base [rad].
    private (float Side, float Lean) Lean(Shoot shoot)
    {
        // Shoots are led to both sides in turn, so that neither is crowded.
        var side = shoot.Id.Value % 2 == 0 ? -1f : 1f;
        var spread = (float)SeededValue.Normal(scenario.Seed, "shoot lean", shoot.Id.Value);
        return _trellis.Form switch
        {
            TrellisForm.UprightHedge => (side, Math.Abs(0.18f * spread)),
            TrellisForm.HangingCurtain => (side, Math.Clamp(1.3f + (0.25f * spread), 0.6f, 2.2f)),
            _ => (side, Math.Clamp(1.35f + (0.12f * spread), 1.0f, 1.5f)),
        };
    }

    private float Tilt(Vector3 at, float side, float tilt, float length, float beyond)
    {
        switch (_trellis.Form)
        {
            case TrellisForm.UprightHedge when at.Z < _trellis.TopWireHeightOrDefault:
                // Catch wires: a shoot that reaches the outer wire is turned back upright.
                return MathF.Abs(at.X) < 0.5f * (float)_trellis.FoliageWidthOrDefault ? tilt : 0;
            case TrellisForm.Overhead when MathF.Abs(at.X) < 0.5f * (float)_trellis.FoliageWidthOrDefault:
                // The roof's wires carry the shoot: it lies flat on them.
                return at.Z < _trellis.TopWireHeightOrDefault + 0.05 ? tilt : 0.5f * MathF.PI;
            default:
                return MathF.Min(HangingTilt, tilt + (WeightBending * length * beyond * MathF.Max(0.2f, MathF.Sin(tilt))));
        }
    }

    // The curtain's wires keep hanging shoots within its width; the ground ends them all.
    private Vector3 Hold(Vector3 point, Vector3 before)
    {
        if (_trellis.Form == TrellisForm.HangingCurtain)
        {
            var half = 0.5f * (float)_trellis.FoliageWidthOrDefault;
            point.X = Math.Clamp(point.X, -half, half);
        }

        const float AboveGround = 0.1f;
        return point.Z < AboveGround ? before with { Z = AboveGround, Y = point.Y } : point;
    }
}
