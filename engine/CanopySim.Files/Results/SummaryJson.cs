using CanopySim.Results;

namespace CanopySim.Files.Results;

/// <summary>Writes <c>summary.json</c>: the season in numbers, with what was read and by which version.</summary>
public static class SummaryJson
{
    public const string FileName = "summary.json";

    /// <summary>The version of the model that is running.</summary>
    public static string EngineVersion => typeof(Scenario).Assembly.GetName().Version?.ToString(3) ?? "unknown";

    public static void Write(string path, SeasonSummary summary, InputHashes hashes) =>
        File.WriteAllText(path, Text(summary, hashes));

    public static string Text(SeasonSummary summary, InputHashes hashes)
    {
        var json = Head(summary.Scenario)
            .Seed("seed", summary.Seed)
            .Text("quality", summary.Quality);
        WriteHashes(json, hashes)
            .Texts("estimated_inputs", summary.EstimatedInputs)
            .Whole("filled_gaps", summary.FilledGaps)
            .Object("thermal_time", inner => inner
                .Number("base_degc", summary.ThermalTime.BaseDegC)
                .Text("method", summary.ThermalTime.Method))
            .Object("dates", inner => WriteDates(inner, summary.Dates))
            .Object("published_sums", inner => inner
                .Date("flowering", summary.PublishedSums.Flowering)
                .Date("veraison", summary.PublishedSums.Veraison))
            .Text("end_reason", summary.EndReason)
            .ObjectOrNull("canopy", summary.Canopy, WriteCanopy)
            .Number("nodes_at_bloom", summary.NodesAtBloom)
            .ObjectOrNull("canopy_score", summary.CanopyScore, AssessmentJson.WriteScore)
            .ObjectOrNull("harvest", summary.Harvest, WriteHarvest)
            .ObjectOrNull("fruit_light", summary.FruitLight, AssessmentJson.WriteLight)
            .ObjectOrNull("fruit_heat", summary.FruitHeat, AssessmentJson.WriteHeat)
            .ObjectOrNull("next_year", summary.NextYear, AssessmentJson.WriteNextYear)
            .Object("season", inner => WriteTotals(inner, summary.Season))
            .Number("ripening_capacity_g_per_kg_d", summary.RipeningCapacityGPerKgD)
            .List("ripening_carbon_by_leaf_age", summary.RipeningCarbonByLeafAge, (inner, share) => inner
                .Whole("from_d", share.FromD)
                .Whole("to_d", share.ToD)
                .Number("share", share.Share))
            .Texts("warnings", summary.Warnings)
            .Texts("cautions", summary.Cautions)
            .Object("checks", inner => WriteChecks(inner, summary.Checks))
            .Object("seconds", inner => inner
                .Number("total", summary.Seconds.Total)
                .Number("light", summary.Seconds.Light)
                .Number("light_geometry", summary.Seconds.LightGeometry)
                .Number("gas_exchange", summary.Seconds.GasExchange));
        return json.Finish();
    }

    /// <summary>
    /// The summary of a folder that holds something else than one season: it says what, and marks the folder as ours.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="scenario">Name of the scenario, or of the first.</param>
    /// <param name="contents">The command that wrote the folder: light, compare, forecast.</param>
    /// <param name="hashes">What was read; null where that is many scenarios.</param>
    public static void WriteBrief(string path, string scenario, string contents, InputHashes? hashes = null)
    {
        var json = Head(scenario).Text("contents", contents);
        if (hashes is not null) WriteHashes(json, hashes);
        File.WriteAllText(path, json.Finish());
    }

    private static JsonFile Head(string scenario) =>
        new JsonFile().Text("scenario", scenario).Text("engine_version", EngineVersion);

    private static JsonFile WriteHashes(JsonFile json, InputHashes hashes) => json.Object("input_sha256", inner => inner
        .Text("scenario", hashes.Scenario)
        .Texts("based_on", hashes.BasedOn)
        .Text("weather", hashes.Weather));

    private static void WriteDates(JsonFile json, StageDates dates) => json
        .Date("budbreak", dates.Budbreak)
        .Date("bloom", dates.Bloom)
        .Date("veraison", dates.Veraison)
        .Date("target_sugar", dates.TargetSugar)
        .Date("harvest", dates.Harvest)
        .Date("end", dates.End);

    private static void WriteCanopy(JsonFile json, CanopySummary canopy) => json
        .Number("shoots_per_vine", canopy.ShootsPerVine)
        .Number("shoots_per_m", canopy.ShootsPerM)
        .Number("canopy_m_per_row_m", canopy.CanopyMPerRowM)
        .Number("nodes_per_shoot", canopy.NodesPerShoot)
        .Number("shoot_length_cm", canopy.ShootLengthCm)
        .Number("primary_leaf_area_per_shoot_cm2", canopy.PrimaryLeafAreaPerShootCm2)
        .Number("lateral_leaf_area_per_shoot_cm2", canopy.LateralLeafAreaPerShootCm2)
        .Number("leaf_area_m2_per_vine", canopy.LeafAreaM2PerVine)
        .Number("leaf_area_m2_per_m", canopy.LeafAreaM2PerM)
        .Number("leaf_layer_number", canopy.LeafLayerNumber)
        .Number("gap_fraction", canopy.GapFraction)
        .Number("interior_leaf_fraction", canopy.InteriorLeafFraction)
        .Number("interior_cluster_fraction", canopy.InteriorClusterFraction)
        .Number("growing_tips_fraction", canopy.GrowingTipsFraction);

    private static void WriteHarvest(JsonFile json, HarvestSummary harvest) => json
        .Number("yield_kg_per_vine", harvest.YieldKgPerVine)
        .Number("yield_t_per_ha", harvest.YieldTPerHa)
        .Number("sugar_brix", harvest.SugarBrix)
        .Number("leaf_area_m2_per_kg_fruit", harvest.LeafAreaM2PerKgFruit)
        .Number("prunings_kg_per_vine", harvest.PruningsKgPerVine)
        .Number("yield_to_prunings", harvest.YieldToPrunings);

    private static void WriteTotals(JsonFile json, SeasonTotals totals) => json
        .Number("net_assimilation_kg_co2_per_vine", totals.NetAssimilationKgCo2PerVine)
        .Number("respiration_kg_co2_per_vine", totals.RespirationKgCo2PerVine)
        .Number("transpiration_l_per_vine", totals.TranspirationLPerVine)
        .Number("absorbed_par_mol_per_vine", totals.AbsorbedParMolPerVine)
        .Number("leaf_respiration_kg_co2_per_vine", totals.LeafRespirationKgCo2PerVine);

    private static void WriteChecks(JsonFile json, SeasonChecks checks) => json
        .Exact("light_closure_max", checks.LightClosureMax)
        .Exact("carbon_closure_max_relative", checks.CarbonClosureMaxRelative)
        .Whole("leaves_max", checks.LeavesMax)
        .Whole("triangles_max", checks.TrianglesMax)
        .Whole("sky_directions", checks.SkyDirections);
}
