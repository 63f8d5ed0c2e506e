using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using CanopySim.Drawing.Pictures;
using CanopySim.Files.Batch;
using CanopySim.Files.Charts;
using CanopySim.Files.Results;
using Xunit;

namespace CanopySim.Runner.Tests;

public sealed class SeasonTests(SeasonRuns runs) : IClassFixture<SeasonRuns>
{
    private const string Dates = "budbreak bloom veraison target_sugar harvest end";

    private const string Canopy =
        "shoots_per_vine shoots_per_m canopy_m_per_row_m nodes_per_shoot shoot_length_cm primary_leaf_area_per_shoot_cm2 "
        + "lateral_leaf_area_per_shoot_cm2 leaf_area_m2_per_vine leaf_area_m2_per_m leaf_layer_number gap_fraction "
        + "interior_leaf_fraction interior_cluster_fraction growing_tips_fraction";

    private const string Harvest =
        "yield_kg_per_vine yield_t_per_ha sugar_brix leaf_area_m2_per_kg_fruit prunings_kg_per_vine yield_to_prunings";

    // Names that other programs read: they may grow, but these stay.
    [Theory]
    [InlineData("days.csv", "date,stage,thermal_time_degc_d,nodes_per_shoot,shoot_length_cm,leaf_area_m2_per_vine,lateral_leaf_area_m2_per_vine,mean_leaf_age_d,mean_leaf_efficiency,incident_par_mol_m2,absorbed_par_mol_per_vine,fraction_par_absorbed,net_assimilation_g_co2_per_vine,respiration_g_co2_per_vine,reserves_g_per_vine,fruit_dry_mass_g_per_vine,sugar_brix,ripening_capacity_g_per_kg_d,transpiration_l_per_vine,soil_water_fraction,growing_tips_fraction,leaf_area_unsprayed_m2_per_vine")]
    [InlineData("leaf_ages.csv", "date,age_from_d,age_to_d,leaf_area_m2_per_vine,absorbed_par_mol_per_vine,net_assimilation_g_co2_per_vine,mean_efficiency")]
    [InlineData("leaves.csv", "date,leaf_id,vine,shoot,order,rank,unfolded_on,age_d,area_cm2,x_m,y_m,z_m,efficiency,absorbed_par_mol_d,net_assimilation_g_co2_d")]
    [InlineData("fruit_light.csv", "date,wall,side,facing,part_of_day,clusters,par_mol_m2_d,incident_par_mol_m2_d,share_of_incident,sunlit_share,morning_share")]
    [InlineData("fruit_light_hours.csv", "from,to,hour,wall,side,facing,part_of_day,par_umol_m2_s,incident_par_umol_m2_s,sunlit_share,air_degc,surface_degc")]
    [InlineData("fruit_heat.csv", "date,wall,side,facing,part_of_day,highest_air_degc,highest_surface_degc,highest_above_air_degc,hours_at_browning,hours_at_necrosis")]
    public void Tables_have_the_promised_header_and_full_rows(string name, string header)
    {
        var table = CsvRows.Read(Path.Combine(runs.OneThread, name));
        Assert.Equal(header, table.Header);
        Assert.NotEmpty(table.Rows);
        Assert.All(table.Rows, row => Assert.Equal(header.Count(letter => letter == ',') + 1, row.Length));
    }

    [Theory]
    [InlineData("days.csv")]
    [InlineData("leaf_ages.csv")]
    [InlineData("leaves.csv")]
    public void Tables_are_the_same_to_the_byte_for_one_thread_and_two(string name)
    {
        Assert.Equal(Bytes(runs.OneThread, name), Bytes(runs.TwoThreads, name));
        Assert.NotEqual(Bytes(runs.OneThread, name), Bytes(runs.OtherSeed, name));
    }

    // A batch's table has its columns before the first season is grown: what a season says must be among them.
    [Fact]
    public void Every_number_of_a_summary_has_a_column_in_a_batch()
    {
        using var folder = new TemporaryFolder();
        var plan = PlanFile.Read(folder.Write("plan.yaml", $"name: one\nscenarios: [{RunnerProcess.FirstSeason}]\n"));
        var columns = new SeasonsTable(plan).Schema.Columns.Select(column => column.Name).ToHashSet();
        var cells = FlatSummary.Of(File.ReadAllText(Path.Combine(runs.OneThread, "summary.json"))).Where(cell => cell.Value.Length > 0)
            .Select(cell => cell.Key).Where(name => !name.StartsWith("seconds.", StringComparison.Ordinal)).ToList();
        Assert.True(cells.Count > 60, $"{cells.Count} numbers");
        Assert.All(cells, name => Assert.Contains(name, columns));
    }

    /// <summary>Every file, charts and report too; the summary but for the seconds that it took.</summary>
    [Fact]
    public void Results_are_the_same_for_one_thread_and_two()
    {
        var names = Names(runs.OneThread);
        Assert.Equal(names, Names(runs.TwoThreads));
        Assert.Contains("summary.json", names);
        foreach (var name in names)
        {
            if (name == "summary.json") Assert.Equal(WithoutSeconds(runs.OneThread), WithoutSeconds(runs.TwoThreads));
            else Assert.True(Bytes(runs.OneThread, name).AsSpan().SequenceEqual(Bytes(runs.TwoThreads, name)), $"{name} differs");
        }

        static string[] Names(string folder) =>
            [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file)).Order(StringComparer.Ordinal)];

        static string WithoutSeconds(string folder)
        {
            var summary = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "summary.json")))!.AsObject();
            Assert.True(summary.Remove("seconds"));
            return summary.ToJsonString();
        }
    }

    [Fact]
    public void Another_seed_grows_other_vines_in_the_same_weather()
    {
        var (one, other) = (CsvRows.Read(Path.Combine(runs.OneThread, "days.csv")), CsvRows.Read(Path.Combine(runs.OtherSeed, "days.csv")));
        var days = other.Rows.Count;
        Assert.Equal(one.Column("date").Take(days), other.Column("date"));
        Assert.Equal(one.Column("incident_par_mol_m2").Take(days), other.Column("incident_par_mol_m2"));
        Assert.NotEqual(one.Column("leaf_area_m2_per_vine").Take(days), other.Column("leaf_area_m2_per_vine"));
    }

    [Fact]
    public void Days_follow_each_other_to_the_last_and_leaves_are_listed_on_the_days_asked()
    {
        var days = CsvRows.Read(Path.Combine(runs.OneThread, "days.csv")).Column("date").Select(day => DateOnly.Parse(day)).ToList();
        Assert.Equal(SeasonRuns.LastDay, days[^1].ToString("yyyy-MM-dd"));
        Assert.All(days.Zip(days.Skip(1)), pair => Assert.Equal(pair.First.AddDays(1), pair.Second));
        var leaves = CsvRows.Read(Path.Combine(runs.OneThread, "leaves.csv"));
        Assert.Equal([SeasonRuns.LeavesOn, SeasonRuns.LastDay], leaves.Column("date").Distinct());
    }

    // days.csv has blades that have not unfolded besides, so that it may say more, never less.
    [Fact]
    public void Unfolded_leaves_add_up_to_their_classes_of_age()
    {
        var days = CsvRows.Read(Path.Combine(runs.OneThread, "days.csv"));
        var leaves = CsvRows.Read(Path.Combine(runs.OneThread, "leaves.csv"));
        var ages = CsvRows.Read(Path.Combine(runs.OneThread, "leaf_ages.csv"));
        foreach (var date in new[] { SeasonRuns.LeavesOn, SeasonRuns.LastDay })
        {
            var area = Sum(leaves, date, "area_cm2") / 1e4 / leaves.Column("vine").Distinct().Count();
            // Cells carry six digits.
            Assert.Equal(area, Sum(ages, date, "leaf_area_m2_per_vine"), 1e-4 * area);
            Assert.InRange(Sum(days, date, "leaf_area_m2_per_vine"), area * (1 - 1e-4), double.MaxValue);
        }
    }

    [Fact]
    public void The_summary_has_every_promised_key()
    {
        var summary = Summary(runs.OneThread);
        JsonShape.AssertHas(
            summary,
            ("text", "scenario engine_version quality end_reason"),
            ("whole", "seed"),
            ("object", "input_sha256 thermal_time dates canopy harvest season checks seconds"),
            ("list", "estimated_inputs ripening_carbon_by_leaf_age"),
            ("number", "nodes_at_bloom ripening_capacity_g_per_kg_d"));
        JsonShape.AssertHas(summary.GetProperty("thermal_time"), ("number", "base_degc"), ("text", "method"));
        JsonShape.AssertHas(summary.GetProperty("dates"), ("date?", Dates));
        JsonShape.AssertHas(summary.GetProperty("dates"), ("date", "budbreak bloom veraison end"));
        JsonShape.AssertHas(summary.GetProperty("canopy"), ("number", Canopy));
        JsonShape.AssertHas(summary.GetProperty("harvest"), ("number", Harvest));
        JsonShape.AssertHas(summary.GetProperty("canopy_score"), ("whole", "points most_points"), ("list", "items"));
        JsonShape.AssertHas(
            summary.GetProperty("fruit_light"),
            ("number", "par_mol_m2_d share_of_incident sunlit_share morning_share afternoon_share"), ("list", "sides"));
        JsonShape.AssertHas(
            summary.GetProperty("fruit_heat"),
            ("number", "highest_surface_degc highest_above_air_degc browning_degc necrosis_degc hours_at_browning_max hours_at_necrosis_max"),
            ("date", "highest_on"), ("text", "highest_side"), ("list", "sides"));
        JsonShape.AssertHas(
            summary.GetProperty("next_year"),
            ("number", "fruitfulness fruitfulness_sd fruitfulness_least fruitfulness_most light_factor temperature_factor noon_par_umol_m2_s"),
            ("whole", "shoots"), ("date", "from to"));
        JsonShape.AssertHas(
            summary.GetProperty("season"),
            ("number", "net_assimilation_kg_co2_per_vine respiration_kg_co2_per_vine transpiration_l_per_vine absorbed_par_mol_per_vine leaf_respiration_kg_co2_per_vine"));
        JsonShape.AssertHas(
            summary.GetProperty("checks"),
            ("number", "light_closure_max carbon_closure_max_relative"),
            ("whole", "leaves_max triangles_max sky_directions"));
        JsonShape.AssertHas(summary.GetProperty("seconds"), ("number", "total light light_geometry gas_exchange"));
        var shares = summary.GetProperty("ripening_carbon_by_leaf_age").EnumerateArray().ToList();
        Assert.All(shares, share => JsonShape.AssertHas(share, ("whole", "from_d to_d"), ("number", "share")));
        Assert.Equal(1, shares.Sum(share => share.GetProperty("share").GetDouble()), 1e-5);
    }

    [Fact]
    public void The_summary_says_what_was_run_and_closes_its_balances()
    {
        var summary = Summary(runs.OneThread);
        Assert.Equal("draft", summary.GetProperty("quality").GetString());
        Assert.Equal(1, summary.GetProperty("seed").GetInt32());
        Assert.Equal(2, Summary(runs.OtherSeed).GetProperty("seed").GetInt32());
        Assert.Equal(SeasonRuns.LastDay, summary.GetProperty("dates").GetProperty("end").GetString());
        Assert.Equal("until", summary.GetProperty("end_reason").GetString());
        var hashes = summary.GetProperty("input_sha256");
        Assert.Equal(Sha256(RunnerProcess.FirstSeason), hashes.GetProperty("scenario").GetString());
        Assert.Equal(Sha256(Path.Combine(Path.GetDirectoryName(RunnerProcess.FirstSeason)!, "weather.csv")), hashes.GetProperty("weather").GetString());
        Assert.InRange(summary.GetProperty("checks").GetProperty("light_closure_max").GetDouble(), 0, 1e-3);
        Assert.InRange(summary.GetProperty("checks").GetProperty("carbon_closure_max_relative").GetDouble(), 0, 1e-9);
    }

    // Not reached is null, never a guess.
    [Fact]
    public void What_a_season_did_not_reach_is_null()
    {
        var spring = Summary(runs.OtherSeed);
        foreach (var stage in new[] { "veraison", "target_sugar", "harvest" })
            Assert.Equal(JsonValueKind.Null, spring.GetProperty("dates").GetProperty(stage).ValueKind);
        Assert.Equal(JsonValueKind.Null, spring.GetProperty("canopy").ValueKind);
        Assert.Equal(0, spring.GetProperty("ripening_carbon_by_leaf_age").GetArrayLength());
    }

    [Fact]
    public void The_report_stands_alone_and_every_chart_is_a_picture()
    {
        var report = File.ReadAllText(Path.Combine(runs.OneThread, "report.html"));
        Assert.StartsWith("<!doctype html>", report, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("First season", report, StringComparison.Ordinal);
        Assert.DoesNotMatch("(src|href)=\"(https?:)?//", report);
        var charts = Directory.GetFiles(Path.Combine(runs.OneThread, "charts"));
        var pictures = charts.Where(file => file.EndsWith(".png", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(pictures);
        // Views of the canopy are pixels and have no other form; charts are drawn in lines as well.
        string[] stems = [CanopyPictures.Front, CanopyPictures.Along, CanopyPictures.Above, PortraitPictures.Stem];
        var views = pictures.Where(picture => stems.Contains(Path.GetFileNameWithoutExtension(picture))).ToList();
        Assert.Equal(3 + PictureMachine.Count(1), views.Count);
        Assert.Equal((2 * pictures.Count) - views.Count, charts.Length);
        foreach (var picture in pictures)
        {
            Assert.True(File.ReadAllBytes(picture).AsSpan(1).StartsWith("PNG"u8), picture);
            if (views.Contains(picture)) continue;
            Assert.Contains("<svg", File.ReadAllText(Path.ChangeExtension(picture, ".svg")), StringComparison.Ordinal);
        }
    }

    private static byte[] Bytes(string folder, string name) => File.ReadAllBytes(Path.Combine(folder, name));

    private static double Sum(CsvRows table, string date, string column) =>
        table.Column("date").Zip(table.Numbers(column)).Where(row => row.First == date).Sum(row => row.Second);

    private static string Sha256(string path) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)));

    private static JsonElement Summary(string folder) =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "summary.json"))).RootElement;
}
