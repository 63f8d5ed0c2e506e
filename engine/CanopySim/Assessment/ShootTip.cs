using CanopySim.Growth;
using CanopySim.Plants;

namespace CanopySim.Assessment;

/// <summary>How a shoot's tip looks to someone in the row.</summary>
public enum TipState
{
    /// <summary>Young tendrils stand above the tip.</summary>
    GrowingFreely,

    /// <summary>The tip still adds leaves, but stands above its tendrils.</summary>
    Slowing,

    /// <summary>No further leaf comes: the tip stopped or was cut off.</summary>
    Stopped,
}

/// <summary>
/// Reads a tip as growers do (common practice, no source): tendrils that overtop it mean that the shoot grows freely. A
/// tendril runs out while its node's internode elongates, as far as carbon let that internode go, and overtops the tip
/// when it is longer than the axis above it; one whose internode is done has hardened and says nothing more.
/// </summary>
public static class ShootTip
{
    // A tendril's length over that of the internode below it, both full-grown: 15 to 20 cm over 5 to 8. Common
    // practice, no source.
    private const double TendrilPerInternode = 2.5;

    // The bud and the folded leaves that stand over the uppermost node [m]. Assumed.
    private const double TipAboveNode = 0.02;

    // A tendril is soft and reaches out until its internode has elongated for so much of its time. Assumed.
    private const double SoftDurations = 0.75;

    /// <summary>The state of a shoot's tip.</summary>
    public static TipState Of(Shoot shoot, GrowthParameters growth)
    {
        if (shoot.TipStopped) return TipState.Stopped;
        var above = TipAboveNode;
        for (var i = shoot.Phytomers.Count - 1; i >= 0; i--)
        {
            var phytomer = shoot.Phytomers[i];
            if (phytomer.ThermalAge > SoftDurations * growth.InternodeElongation) break;
            if (phytomer.HasTendril && TendrilLength(phytomer, growth) > above) return TipState.GrowingFreely;
            above += phytomer.InternodeLength;
        }

        return TipState.Slowing;
    }

    /// <summary>Share of a canopy's primary shoots whose tips grow freely [0 to 1]; 0 without shoots.</summary>
    public static double GrowingFreelyShare(Canopy canopy, GrowthParameters growth)
    {
        var (free, all) = (0, 0);
        foreach (var shoot in canopy.PrimaryShoots())
        {
            all++;
            if (Of(shoot, growth) == TipState.GrowingFreely) free++;
        }

        return all > 0 ? free / (double)all : 0;
    }

    // A tendril runs ahead of its internode: half way through elongation it is nearly full-grown.
    private static double TendrilLength(Phytomer phytomer, GrowthParameters growth) =>
        TendrilPerInternode * phytomer.InternodeLength
        * ExpansionCourse.Share(2 * phytomer.ThermalAge, growth.InternodeElongation)
        / Math.Max(1e-9, ExpansionCourse.Share(phytomer.ThermalAge, growth.InternodeElongation));
}
