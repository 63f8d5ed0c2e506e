using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Results;

namespace CanopySim.Recording;

/// <summary>
/// What a closed day leaves to whoever looks at it later. Leaves stand in the order of <see cref="DrawnCanopy.Blades"/>; all is what the
/// results files say of that day.
/// </summary>
public sealed record RecordedDay
{
    /// <summary>The day's row of <c>days.csv</c>.</summary>
    public required DayRow Row { get; init; }

    /// <summary>
    /// The canopy as light saw it; the same object as the day before where it was not placed anew. Empty on days without leaves.
    /// </summary>
    public required DrawnCanopy Canopy { get; init; }

    public required RecordedLeaves Leaves { get; init; }

    /// <summary>Hours with light, in order; none on days without leaves.</summary>
    public required RecordedHours Hours { get; init; }
}

/// <summary>What leaves are and did on a day, an entry each.</summary>
public sealed record RecordedLeaves
{
    public static RecordedLeaves None { get; } = new() { AgeDays = [], Area = [], Efficiency = [], AbsorbedParMoles = [], NetAssimilationGrams = [] };

    /// <summary>Days since unfolding; −1 while folded.</summary>
    public required short[] AgeDays { get; init; }

    /// <summary>One-sided area on the evening [m²]; a blade is drawn with the area at which light saw it.</summary>
    public required float[] Area { get; init; }

    /// <summary>Efficiency of its age [0 to 1].</summary>
    public required float[] Efficiency { get; init; }

    /// <summary>PAR absorbed [mol d⁻¹].</summary>
    public required float[] AbsorbedParMoles { get; init; }

    /// <summary>Net assimilation over 24 hours [g CO₂ d⁻¹].</summary>
    public required float[] NetAssimilationGrams { get; init; }

    public int Count => AgeDays.Length;
}

/// <summary>The hours of a day with light. What is of leaves is indexed [hour × leaves + leaf].</summary>
public sealed record RecordedHours
{
    public static RecordedHours None { get; } = new()
    {
        LeafCount = 0,
        Hours = [],
        SunDirections = [],
        IncidentPpfd = [],
        AirTemperature = [],
        AbsorbedPpfd = [],
        NetAssimilation = [],
        Temperature = [],
    };

    public required int LeafCount { get; init; }

    /// <summary>Hour h covers h:00 to h+1:00 local standard time.</summary>
    public required byte[] Hours { get; init; }

    /// <summary>Unit vector towards the sun in the frame of the cell; zero when it is down.</summary>
    public required Vector3[] SunDirections { get; init; }

    /// <summary>PAR on the horizontal [µmol m⁻² s⁻¹].</summary>
    public required float[] IncidentPpfd { get; init; }

    /// <summary>[°C]</summary>
    public required float[] AirTemperature { get; init; }

    /// <summary>PAR absorbed per area of blade, sunlit and shaded parts together [µmol m⁻² s⁻¹].</summary>
    public required float[] AbsorbedPpfd { get; init; }

    /// <summary>Net assimilation per area of blade [µmol m⁻² s⁻¹].</summary>
    public required float[] NetAssimilation { get; init; }

    /// <summary>Mean temperature of the blade [°C].</summary>
    public required float[] Temperature { get; init; }

    public int Count => Hours.Length;

    public int IndexOf(int hour, int leaf) => (hour * LeafCount) + leaf;
}
