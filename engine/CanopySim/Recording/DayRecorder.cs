using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Photosynthesis;
using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Recording;

/// <summary>Makes a <see cref="RecordedDay"/> of each closed day and hands it on; nothing of it goes back into the season.</summary>
internal sealed class DayRecorder(Scenario scenario, Action<RecordedDay> hand)
{
    private readonly CanopyScene _scene = new(scenario);

    private PlacedCanopy? _placed;
    private DrawnCanopy _drawn = new([], [], []);

    /// <summary>Where leaves of the day leave their hours.</summary>
    public LeafHours Hours { get; } = new();

    /// <summary>Told of each placing, before leaves fall or grow again.</summary>
    public void NotePlaced(PlacedCanopy placed, Canopy canopy)
    {
        if (ReferenceEquals(placed, _placed)) return;
        (_placed, _drawn) = (placed, _scene.Draw(canopy));
    }

    public void Add(DayRow row, WeatherDay weather, LightOfDay? light, IReadOnlyList<LeafDay> leaves)
    {
        var has = light is not null && leaves.Count == _drawn.Blades.Count;
        hand(new RecordedDay
        {
            Row = row,
            Canopy = light is null ? new DrawnCanopy([], [], []) : _drawn,
            Leaves = has ? LeavesOf(leaves) : RecordedLeaves.None,
            Hours = has ? HoursOf(weather, light!, leaves) : RecordedHours.None,
        });
    }

    private static RecordedLeaves LeavesOf(IReadOnlyList<LeafDay> leaves)
    {
        var of = new RecordedLeaves
        {
            AgeDays = new short[leaves.Count],
            Area = new float[leaves.Count],
            Efficiency = new float[leaves.Count],
            AbsorbedParMoles = new float[leaves.Count],
            NetAssimilationGrams = new float[leaves.Count],
        };
        for (var i = 0; i < leaves.Count; i++)
        {
            of.AgeDays[i] = leaves[i].Leaf.HasUnfolded ? (short)leaves[i].Leaf.AgeDays : (short)-1;
            of.Area[i] = (float)leaves[i].Area;
            of.Efficiency[i] = (float)leaves[i].Efficiency;
            of.AbsorbedParMoles[i] = (float)leaves[i].AbsorbedParMoles;
            of.NetAssimilationGrams[i] = (float)leaves[i].NetAssimilationGrams;
        }

        return of;
    }

    private RecordedHours HoursOf(WeatherDay weather, LightOfDay light, IReadOnlyList<LeafDay> leaves)
    {
        var count = light.Hours.Count;
        var absorbed = new float[count * leaves.Count];
        for (var hour = 0; hour < count; hour++)
        {
            for (var leaf = 0; leaf < leaves.Count; leaf++)
            {
                var watts = light.Solution.AbsorbedPar[light.Solution.IndexOf(hour, leaves[leaf].Surface)];
                absorbed[(hour * leaves.Count) + leaf] = (float)(watts / leaves[leaf].Area * UnitConversion.MicromolesPerJouleOfDaylightPar);
            }
        }

        return new RecordedHours
        {
            LeafCount = leaves.Count,
            Hours = [.. light.Hours.Select(hour => (byte)hour)],
            SunDirections = [.. light.Incident.Select(incident => incident.SunDirection ?? default)],
            IncidentPpfd = [.. light.Incident.Select(PpfdOf)],
            AirTemperature = [.. light.Hours.Select(hour => (float)weather.Hours[hour].AirTemperatureCelsius)],
            AbsorbedPpfd = absorbed,
            NetAssimilation = Hours.NetAssimilation.AsSpan(0, absorbed.Length).ToArray(),
            Temperature = Hours.Temperature.AsSpan(0, absorbed.Length).ToArray(),
        };
    }

    private static float PpfdOf(IncidentLight incident)
    {
        var direct = incident.SunDirection is { } sun ? incident.DirectNormalPar * Math.Max(0, sun.Z) : 0;
        return (float)((direct + incident.DiffuseHorizontalPar) * UnitConversion.MicromolesPerJouleOfDaylightPar);
    }
}
