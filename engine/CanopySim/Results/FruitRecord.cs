using CanopySim.Assessment;
using CanopySim.Fruit;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Training;

namespace CanopySim.Results;

/// <summary>Writes down light and heat of the fruit from set on.</summary>
internal sealed class FruitRecord(Scenario scenario)
{
    private readonly BerryGrowth _berries = new(scenario.Fruit);
    private readonly List<FruitLightRow> _light = [];
    private readonly List<FruitHeatRow> _heat = [];
    private readonly FruitWeek _week = new();

    private PlacedCanopy? _placed;
    private FruitClusters? _clusters;

    public IReadOnlyList<FruitLightRow> Light => _light;

    public IReadOnlyList<FruitHeatRow> Heat => _heat;

    public IReadOnlyList<FruitLightHourRow> Hours() => _week.Finish();

    /// <summary>Adds a day with light.</summary>
    public void Add(DayFacts day, LightOfDay light)
    {
        if (day.Stages.Bloom is not { } bloom || !day.Canopy.Vines.Any(vine => vine.Crop.Berries > 0)) return;
        if (_clusters is null || _placed != light.Canopy)
        {
            _placed = light.Canopy;
            _clusters = FruitClusters.Of(light.Canopy.Scene, TrellisLayout.RowsOf(scenario), scenario.Rows.Azimuth);
        }

        var radius = day.Canopy.Vines.Where(vine => vine.Crop.Berries > 0).Average(vine => FruitHours.BerryRadius(vine.Crop, scenario.Fruit, _berries));
        var hours = FruitHours.Read(_clusters, light, day.Weather, scenario, radius);
        for (var side = 0; side < _clusters.Sides.Count; side++)
        {
            _light.Add(LightOf(day.Weather.Date, hours, side));
            _heat.Add(HeatOf(day, hours, side));
        }

        _week.Add(day.Weather, hours, bloom);
    }

    private static FruitLightRow LightOf(DateOnly date, FruitHours hours, int side)
    {
        var (par, incident, morning, sunlit, lit) = (0.0, 0.0, 0.0, 0.0, 0);
        for (var hour = 0; hour < hours.IncidentPpfd.Count; hour++)
        {
            if (!hours.IsLit[hour]) continue;
            var of = hours.At(side, hour);
            par += of.Ppfd;
            incident += hours.IncidentPpfd[hour];
            if (hours.IsMorning[hour]) morning += of.Ppfd;
            sunlit += of.SunlitShare;
            lit++;
        }

        const double MolesOfHour = UnitConversion.SecondsPerHour * 1e-6;
        return new FruitLightRow(
            date, hours.Clusters.Sides[side], hours.Clusters.CountOfSide[side], par * MolesOfHour, incident * MolesOfHour,
            incident > 0 ? par / incident : null, lit > 0 ? sunlit / lit : 0, par > 0 ? morning / par : null);
    }

    private static FruitHeatRow HeatOf(DayFacts day, FruitHours hours, int side)
    {
        var (highest, above, browning, necrosis) = (double.MinValue, double.MinValue, 0.0, 0.0);
        for (var hour = 0; hour < hours.IncidentPpfd.Count; hour++)
        {
            var of = hours.At(side, hour);
            highest = Math.Max(highest, of.HighestTemperature);
            above = Math.Max(above, of.HighestTemperature - day.Weather.Hours[hour].AirTemperatureCelsius);
            browning += of.BrowningShare;
            necrosis += of.NecrosisShare;
        }

        return new FruitHeatRow(
            day.Weather.Date, hours.Clusters.Sides[side], day.Weather.MaximumTemperatureCelsius, highest, above, browning, necrosis);
    }

    /// <summary>From veraison on; null before it and without fruit.</summary>
    public FruitLightSummary? LightSummary(DateOnly? veraison)
    {
        var rows = _light.Where(row => veraison is { } from && row.Date >= from).ToList();
        if (rows.Count == 0) return null;
        var all = SideOf(rows);
        return new FruitLightSummary
        {
            ParMolM2D = all.ParMolM2D,
            ShareOfIncident = all.ShareOfIncident,
            SunlitShare = all.SunlitShare,
            MorningShare = all.MorningShare,
            Sides = [.. rows.GroupBy(row => row.Side).OrderBy(side => (side.Key.Wall, side.Key.IsRight)).Select(side => SideOf([.. side]))],
        };
    }

    public FruitHeatSummary? HeatSummary()
    {
        if (_heat.Count == 0) return null;
        var highest = _heat.MaxBy(row => row.HighestSurfaceDegC)!;
        return new FruitHeatSummary
        {
            HighestSurfaceDegC = highest.HighestSurfaceDegC,
            HighestOn = highest.Date,
            HighestSide = highest.Side,
            HighestAboveAirDegC = _heat.Max(row => row.HighestAboveAirDegC),
            BrowningDegC = scenario.FruitHeat.BrowningTemperature,
            NecrosisDegC = scenario.FruitHeat.NecrosisTemperature,
            Sides =
            [
                .. _heat.GroupBy(row => row.Side).OrderBy(side => (side.Key.Wall, side.Key.IsRight)).Select(side => new FruitSideHeat(
                    side.Key, side.Max(row => row.HighestSurfaceDegC), side.Sum(row => row.HoursAtBrowning), side.Sum(row => row.HoursAtNecrosis),
                    side.Count(row => row.HoursAtBrowning > 0), side.Count(row => row.HoursAtNecrosis > 0))),
            ],
        };
    }

    // Sides weigh by their clusters.
    private static FruitSideLight SideOf(List<FruitLightRow> rows)
    {
        double clusters = rows.Sum(row => row.Clusters);
        var par = rows.Sum(row => row.Clusters * row.ParMolM2) / clusters;
        var incident = rows.Sum(row => row.Clusters * row.IncidentParMolM2) / clusters;
        var morning = rows.Sum(row => row.Clusters * row.ParMolM2 * (row.MorningShare ?? 0)) / clusters;
        return new FruitSideLight(
            rows[0].Side, rows[^1].Clusters, par, incident > 0 ? par / incident : null,
            rows.Sum(row => row.Clusters * row.SunlitShare) / clusters, par > 0 ? morning / par : null);
    }
}
