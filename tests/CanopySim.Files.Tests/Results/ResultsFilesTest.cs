using System.Text.Json;
using CanopySim.Files.Results;
using CanopySim.Files.Tests.Scenarios;
using CanopySim.Files.Text;
using CanopySim.Results;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Results;

public sealed class ResultsFilesTest : IDisposable
{
    private static readonly InputHashes Hashes = new("aa", ["bb"], "cc");

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    // Names and order as other programs read them.
    [Fact]
    public void DaysHaveTheirColumns()
    {
        var lines = Lines(path => DaysCsv.Write(path, [Day(null), Day(21.5)]));
        Assert.Equal(
            "date,stage,thermal_time_degc_d,nodes_per_shoot,shoot_length_cm,leaf_area_m2_per_vine,lateral_leaf_area_m2_per_vine,mean_leaf_age_d,mean_leaf_efficiency,incident_par_mol_m2,absorbed_par_mol_per_vine,fraction_par_absorbed,net_assimilation_g_co2_per_vine,respiration_g_co2_per_vine,reserves_g_per_vine,fruit_dry_mass_g_per_vine,sugar_brix,ripening_capacity_g_per_kg_d,transpiration_l_per_vine,soil_water_fraction,growing_tips_fraction,leaf_area_unsprayed_m2_per_vine",
            lines[0]);
        Assert.Equal("2014-07-01,bloom,1,2,3,4,5,,,6,7,8,9,10,11,12,,,13,0.333333,0.25,", lines[1]);
        Assert.Equal("2014-07-01,bloom,1,2,3,4,5,21.5,21.5,6,7,8,9,10,11,12,21.5,21.5,13,0.333333,0.25,21.5", lines[2]);
        Assert.Equal(3, lines.Length);
    }

    [Fact]
    public void LeafAgesHaveTheirColumns()
    {
        var lines = Lines(path => LeafAgesCsv.Write(path, [new LeafAgeRow(new DateOnly(2014, 7, 1), 10, 20, 0.5, 1.25, -0.1, 0.75)]));
        Assert.Equal("date,age_from_d,age_to_d,leaf_area_m2_per_vine,absorbed_par_mol_per_vine,net_assimilation_g_co2_per_vine,mean_efficiency", lines[0]);
        Assert.Equal("2014-07-01,10,20,0.5,1.25,-0.1,0.75", lines[1]);
    }

    [Fact]
    public void LeavesHaveTheirColumns()
    {
        var leaf = new LeafRow(new DateOnly(2014, 7, 1), 17, 0, 3, 2, 5, new DateOnly(2014, 6, 1), 30, 101.5, -0.25, 1.5, 1.25, 0.9, 2.5, 0.35);
        var lines = Lines(path => LeavesCsv.Write(path, [leaf]));
        Assert.Equal("date,leaf_id,vine,shoot,order,rank,unfolded_on,age_d,area_cm2,x_m,y_m,z_m,efficiency,absorbed_par_mol_d,net_assimilation_g_co2_d", lines[0]);
        Assert.Equal("2014-07-01,17,0,3,2,5,2014-06-01,30,101.5,-0.25,1.5,1.25,0.9,2.5,0.35", lines[1]);
    }

    [Fact]
    public void WorkHasItsColumns()
    {
        var lines = Lines(path => WorkCsv.Write(path, [new WorkDone(new DateOnly(2014, 7, 1), "leaf_removal", "half, morning side", 0, 2, 31, 0.25, 12.5)]));
        Assert.Equal("date,action,what,shoots,clusters,leaves,leaf_area_m2_per_vine,fruit_g_per_vine", lines[0]);
        Assert.Equal("2014-07-01,leaf_removal,\"half, morning side\",0,2,31,0.25,12.5", lines[1]);
    }

    [Fact]
    public void WarningsAndCautionsAreSentences()
    {
        var summary = Summary() with { Warnings = ["The first."], Cautions = ["Heed \"this\".", "And that."] };
        using var json = JsonDocument.Parse(SummaryJson.Text(summary, Hashes));
        Assert.Equal(["The first."], Texts("warnings"));
        Assert.Equal(["Heed \"this\".", "And that."], Texts("cautions"));

        IEnumerable<string?> Texts(string name) => json.RootElement.GetProperty(name).EnumerateArray().Select(text => text.GetString());
    }

    [Fact]
    public void ASummaryHasItsKeys()
    {
        using var json = JsonDocument.Parse(SummaryJson.Text(Summary(), Hashes));
        string[] expected =
        [
            "scenario", "engine_version", "seed", "quality", "input_sha256.scenario", "input_sha256.based_on", "input_sha256.weather", "estimated_inputs", "filled_gaps",
            "thermal_time.base_degc", "thermal_time.method", "dates.budbreak", "dates.bloom", "dates.veraison", "dates.target_sugar", "dates.harvest", "dates.end",
            "published_sums.flowering", "published_sums.veraison", "end_reason",
            "canopy.shoots_per_vine", "canopy.shoots_per_m", "canopy.canopy_m_per_row_m", "canopy.nodes_per_shoot", "canopy.shoot_length_cm", "canopy.primary_leaf_area_per_shoot_cm2",
            "canopy.lateral_leaf_area_per_shoot_cm2", "canopy.leaf_area_m2_per_vine", "canopy.leaf_area_m2_per_m", "canopy.leaf_layer_number", "canopy.gap_fraction",
            "canopy.interior_leaf_fraction", "canopy.interior_cluster_fraction", "canopy.growing_tips_fraction", "nodes_at_bloom", "canopy_score",
            "harvest.yield_kg_per_vine", "harvest.yield_t_per_ha", "harvest.sugar_brix", "harvest.leaf_area_m2_per_kg_fruit", "harvest.prunings_kg_per_vine", "harvest.yield_to_prunings", "fruit_light", "fruit_heat", "next_year",
            "season.net_assimilation_kg_co2_per_vine", "season.respiration_kg_co2_per_vine", "season.transpiration_l_per_vine", "season.absorbed_par_mol_per_vine", "season.leaf_respiration_kg_co2_per_vine",
            "ripening_capacity_g_per_kg_d", "ripening_carbon_by_leaf_age", "warnings", "cautions",
            "checks.light_closure_max", "checks.carbon_closure_max_relative", "checks.leaves_max", "checks.triangles_max", "checks.sky_directions",
            "seconds.total", "seconds.light", "seconds.light_geometry", "seconds.gas_exchange",
        ];
        Assert.Equal(expected, Flat(json.RootElement, ""));
        var root = json.RootElement;
        Assert.Equal(("2014-06-10", JsonValueKind.Null), (root.GetProperty("dates").GetProperty("bloom").GetString(), root.GetProperty("dates").GetProperty("veraison").ValueKind));
        Assert.Equal(1.2345678901234567e-16, root.GetProperty("checks").GetProperty("light_closure_max").GetDouble());
        Assert.Equal("0.123457", root.GetProperty("canopy").GetProperty("gap_fraction").GetRawText());
        Assert.Equal((60, 70, 0.25), (Share("from_d").GetInt32(), Share("to_d").GetInt32(), Share("share").GetDouble()));

        JsonElement Share(string name) => root.GetProperty("ripening_carbon_by_leaf_age")[0].GetProperty(name);
    }

    [Fact]
    public void WhatWasNotReachedIsNull()
    {
        var summary = Summary() with { Canopy = null, Harvest = null, NodesAtBloom = null, RipeningCapacityGPerKgD = null, RipeningCarbonByLeafAge = [] };
        using var json = JsonDocument.Parse(SummaryJson.Text(summary, Hashes));
        foreach (var name in new[] { "canopy", "harvest", "nodes_at_bloom", "ripening_capacity_g_per_kg_d" })
            Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty(name).ValueKind);
        Assert.Equal(0, json.RootElement.GetProperty("ripening_carbon_by_leaf_age").GetArrayLength());
    }

    // SHA-256 of "abc": FIPS 180-4 examples (NIST, "SHA256" example document).
    [Fact]
    public void HashesTheFilesThatWereRead()
    {
        var path = Path.Combine(_folder, "abc");
        File.WriteAllText(path, "abc");
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", InputHashes.OfFile(path));
        using var files = new TestScenario();
        files.Write("base.yaml", TestScenario.Least);
        var hashes = InputHashes.Of(files.Read("based_on: base.yaml\n"));
        Assert.Equal((InputHashes.OfFile(files.At("block.yaml")), InputHashes.OfFile(files.At("weather.csv"))), (hashes.Scenario, hashes.Weather));
        Assert.Equal([InputHashes.OfFile(files.At("base.yaml"))], hashes.BasedOn);
    }

    [Theory]
    [InlineData(0.0, "0")]
    [InlineData(1.0, "1")]
    [InlineData(1.0 / 3, "0.333333")]
    [InlineData(1234567.0, "1234570")]
    [InlineData(123456.5, "123456")]
    [InlineData(-2.5e-5, "-0.000025")]
    [InlineData(1.5e-9, "1.5E-09")]
    [InlineData(1e20, "1E+20")]
    public void NumbersHaveSixDigits(double value, string text) => Assert.Equal(text, NumberText.Rounded(value, "value"));

    [Fact]
    public void ZeroHasNoSign() => Assert.Equal(("0", "0"), (NumberText.Rounded(-0.0, "value"), NumberText.Exact(-0.0, "value")));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void NoResultIsNotANumber(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => NumberText.Rounded(value, "sugar_brix"));

    private static IEnumerable<string> Flat(JsonElement element, string path) => element.EnumerateObject().SelectMany(property =>
        property.Value.ValueKind == JsonValueKind.Object ? Flat(property.Value, $"{path}{property.Name}.") : [path + property.Name]);

    private string[] Lines(Action<string> write)
    {
        var path = Path.Combine(_folder, "table.csv");
        write(path);
        return File.ReadAllText(path).TrimEnd('\n').Split('\n');
    }

    private static DayRow Day(double? optional) => new()
    {
        Date = new DateOnly(2014, 7, 1),
        Stage = "bloom",
        ThermalTimeDegCD = 1,
        NodesPerShoot = 2,
        ShootLengthCm = 3,
        LeafAreaM2PerVine = 4,
        LateralLeafAreaM2PerVine = 5,
        MeanLeafAgeD = optional,
        MeanLeafEfficiency = optional,
        IncidentParMolM2 = 6,
        AbsorbedParMolPerVine = 7,
        FractionParAbsorbed = 8,
        NetAssimilationGCo2PerVine = 9,
        RespirationGCo2PerVine = 10,
        ReservesGPerVine = 11,
        FruitDryMassGPerVine = 12,
        SugarBrix = optional,
        RipeningCapacityGPerKgD = optional,
        TranspirationLPerVine = 13,
        SoilWaterFraction = 1.0 / 3,
        GrowingTipsFraction = 0.25,
        LeafAreaUnsprayedM2PerVine = optional,
    };

    private static SeasonSummary Summary() => new()
    {
        Scenario = "small block",
        Seed = 7,
        Quality = "standard",
        EstimatedInputs = ["global_radiation"],
        FilledGaps = 2,
        ThermalTime = new ThermalTimeBasis(6.5, "mean of hours"),
        Dates = new StageDates(new DateOnly(2014, 4, 10), new DateOnly(2014, 6, 10), null, null, null, new DateOnly(2014, 10, 30)),
        PublishedSums = new PublishedDates(new DateOnly(2014, 6, 12), null),
        EndReason = "leaf fall",
        Canopy = new CanopySummary
        {
            ShootsPerVine = 22,
            ShootsPerM = 15,
            CanopyMPerRowM = 1,
            NodesPerShoot = 20,
            ShootLengthCm = 120,
            PrimaryLeafAreaPerShootCm2 = 2000,
            LateralLeafAreaPerShootCm2 = 500,
            LeafAreaM2PerVine = 5,
            LeafAreaM2PerM = 3.5,
            LeafLayerNumber = 1.4,
            GapFraction = 0.123456789,
            InteriorLeafFraction = 0.2,
            InteriorClusterFraction = null,
            GrowingTipsFraction = 0.5,
        },
        NodesAtBloom = 17.5,
        Harvest = new HarvestSummary(3, 8, 22, 1.4, 0.5, 6),
        Season = new SeasonTotals(5, 2, 400, 3000, 1),
        RipeningCapacityGPerKgD = 3.2,
        RipeningCarbonByLeafAge = [new LeafAgeShare(60, 70, 0.25)],
        Checks = new SeasonChecks(1.2345678901234567e-16, 3e-12, 900, 7200, 145),
        Seconds = new StageSeconds(12.5, 8, 5, 3),
    };
}
