using CanopySim.Assessment;
using CanopySim.Results;

namespace CanopySim.Files.Results;

/// <summary>The assessment's objects of <c>summary.json</c>.</summary>
internal static class AssessmentJson
{
    public static void WriteScore(JsonFile json, CanopyScoreSummary score) => json
        .Whole("points", score.Points)
        .Whole("most_points", score.MostPoints)
        .List("items", score.Items, (inner, item) => inner.Text("item", item.Item).Whole("points", item.Points));

    public static void WriteLight(JsonFile json, FruitLightSummary light) => json
        .Number("par_mol_m2_d", light.ParMolM2D)
        .Number("share_of_incident", light.ShareOfIncident)
        .Number("sunlit_share", light.SunlitShare)
        .Number("morning_share", light.MorningShare)
        .Number("afternoon_share", 1 - light.MorningShare)
        .List("sides", light.Sides, (inner, side) => Side(inner, side.Side)
            .Whole("clusters", side.Clusters)
            .Number("par_mol_m2_d", side.ParMolM2D)
            .Number("share_of_incident", side.ShareOfIncident)
            .Number("sunlit_share", side.SunlitShare)
            .Number("morning_share", side.MorningShare));

    public static void WriteHeat(JsonFile json, FruitHeatSummary heat) => json
        .Number("highest_surface_degc", heat.HighestSurfaceDegC)
        .Date("highest_on", heat.HighestOn)
        .Text("highest_side", heat.HighestSide.Facing)
        .Number("highest_above_air_degc", heat.HighestAboveAirDegC)
        .Number("browning_degc", heat.BrowningDegC)
        .Number("necrosis_degc", heat.NecrosisDegC)
        .Number("hours_at_browning_max", heat.Sides.Max(side => side.HoursAtBrowning))
        .Number("hours_at_necrosis_max", heat.Sides.Max(side => side.HoursAtNecrosis))
        .List("sides", heat.Sides, (inner, side) => Side(inner, side.Side)
            .Number("highest_surface_degc", side.HighestSurfaceDegC)
            .Number("hours_at_browning", side.HoursAtBrowning)
            .Number("hours_at_necrosis", side.HoursAtNecrosis)
            .Whole("days_at_browning", side.DaysAtBrowning)
            .Whole("days_at_necrosis", side.DaysAtNecrosis));

    public static void WriteNextYear(JsonFile json, NextYearSummary year) => json
        .Number("fruitfulness", year.Fruitfulness)
        .Number("fruitfulness_sd", year.Spread)
        .Number("fruitfulness_least", year.Least)
        .Number("fruitfulness_most", year.Most)
        .Whole("shoots", year.Shoots)
        .Number("light_factor", year.LightFactor)
        .Number("temperature_factor", year.TemperatureFactor)
        .Number("noon_par_umol_m2_s", year.ParUmolM2S)
        .Date("from", year.From)
        .Date("to", year.To);

    private static JsonFile Side(JsonFile json, FruitSide side) => json
        .Whole("wall", side.Wall + 1)
        .Text("side", side.Name)
        .Text("facing", side.Facing)
        .Text("part_of_day", side.PartOfDay);
}
