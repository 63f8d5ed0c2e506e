using CanopySim.Files.Results;
using CanopySim.Fitting;
using CanopySim.Numerics;

namespace CanopySim.Files.Forecast;

/// <summary>Writes <c>forecast.json</c>: the ranges of a forecast by stage and by date, what moved it and what options do.</summary>
public static class ForecastJson
{
    public const string FileName = "forecast.json";

    public static string Text(ForecastReport report)
    {
        var forecast = report.Forecast;
        return new JsonFile()
            .Text("scenario", report.Scenario.Name)
            .Text("engine_version", SummaryJson.EngineVersion)
            .Date("as_of", forecast.AsOf)
            .Date("weather_to", forecast.WeatherTo)
            .Whole("members", forecast.Seasons.Count)
            .Number("target_sugar_brix", report.TargetSugar)
            .Object("bloom", json => Stage(json, forecast.Bloom))
            .Object("veraison", json => Stage(json, forecast.Veraison))
            .Object("target_sugar", json => Stage(json, forecast.TargetSugar))
            .List("target_sugar_by", report.Chances, (json, chance) => json
                .Date("date", chance.Day)
                .Number("chance", chance.Chance))
            .List("shoot_length_cm", report.ShootLength, Day)
            .List("leaf_area_m2_per_vine", report.LeafArea, Day)
            .List("sugar_brix", report.Sugar, (json, day) =>
            {
                Day(json, day);
                json.Number("chance", forecast.ChanceBy(day.Date));
            })
            .List("ripening_carbon_by_leaf_age", report.FeedingLeaves, (json, share) => json
                .Whole("from_d", share.FromD)
                .Whole("to_d", share.ToD)
                .Number("share", share.Mean)
                .Number("p10", share.P10)
                .Number("p90", share.P90))
            .Object("at_veraison", json =>
            {
                Tenths(json, "leaf_area_m2_per_vine", report.Of(season => season.YoungLeaf?.WholeArea));
                Tenths(json, "young_leaf_share", report.Of(season => season.YoungLeaf?.ShareOfArea));
            })
            .Object("at_ripeness", json =>
            {
                Tenths(json, "yield_kg_per_vine", report.Of(season => season.Summary.Harvest?.YieldKgPerVine));
                Tenths(json, "leaf_area_m2_per_kg_fruit", report.Of(season => season.Summary.Harvest?.LeafAreaM2PerKgFruit));
                Tenths(json, "ripening_capacity_g_per_kg_d", report.Of(season => season.Summary.RipeningCapacityGPerKgD));
            })
            .List("notes", forecast.Fit.Effects, (json, effect) => json
                .Date("date", effect.Observation.Date)
                .Text("quantity", NoteEffectWords.NameOf(effect.Observation.Quantity))
                .Number("noted", effect.Observation.Value)
                .Number("error", effect.Observation.StandardError)
                .Number("vines_before", effect.MeanBefore)
                .Number("spread_before", effect.SpreadBefore)
                .Number("vines_after", effect.MeanAfter)
                .Number("spread_after", effect.SpreadAfter)
                .Text("used", effect.IsExcluded ? "no: contradicts the vines" : "yes"))
            .List("options", forecast.Options, Option)
            .Finish();
    }

    private static void Stage(JsonFile json, StageRange range) => json
        .Date("p10", range.P10)
        .Date("p50", range.P50)
        .Date("p90", range.P90)
        .Number("chance", range.Chance);

    private static void Day(JsonFile json, FanDay day) => json
        .Date("date", day.Date)
        .Number("p10", day.P10)
        .Number("p25", day.P25)
        .Number("p50", day.P50)
        .Number("p75", day.P75)
        .Number("p90", day.P90);

    private static void Option(JsonFile json, OptionAhead option)
    {
        json.Text("option", option.Option.Name).Date("date", option.Option.Day).Whole("members", option.Pairs.Count);
        Tenths(json, "days_later", TenthsOf(option.DaysLater));
        Tenths(json, "yield_ratio", TenthsOf(option.Yield));
        Tenths(json, "ripening_capacity_ratio", TenthsOf(option.RipeningCapacity));
        json.Text("fault", option.Fault.Length > 0 ? option.Fault : null);
    }

    private static (double, double, double)? TenthsOf(IReadOnlyList<double> sorted) => sorted.Count == 0 ? null
        : (Quantile.Of(sorted, 0.1), Quantile.Of(sorted, 0.5), Quantile.Of(sorted, 0.9));

    private static void Tenths(JsonFile json, string name, (double P10, double P50, double P90)? range) => json.Object(name, inner => inner
        .Number("p10", range?.P10)
        .Number("p50", range?.P50)
        .Number("p90", range?.P90));
}
