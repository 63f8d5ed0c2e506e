using System.Globalization;

namespace CanopySim.Files.Scenarios;

/// <summary>What no key can be checked for alone: values that must fit each other.</summary>
internal static class ScenarioChecks
{
    private const int EarliestYear = 1850;

    private const int LatestYear = 2200;

    // Clocks follow the sun to about this many hours; a zone that was forgotten is mostly further off.
    private const double MostHoursFromSun = 4;

    public static void Check(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        CheckSite(scenario.Site, placeOf);
        CheckSeason(scenario, placeOf);
        TrellisChecks.Check(scenario, placeOf);
        CanopyWorkChecks.Check(scenario, placeOf);
        CheckGrowth(scenario, placeOf);
        CheckAgeCurve(scenario, placeOf);
        CheckOptics(scenario, placeOf);
        CheckCarbonAndFruit(scenario, placeOf);
    }

    private static void CheckSite(Site site, Func<string, InputPlace> placeOf)
    {
        const string Key = "site.time_zone";
        var time = SiteTime.TryOf(site.TimeZone)
            ?? throw new InputError(
                placeOf(Key), InputError.Quote(site.TimeZone), SiteTime.Expected, Key, SiteTime.Nearest(site.TimeZone));
        var (clock, sun) = (time.StandardOffsetHours(), site.Longitude / 15);
        var apart = Math.Abs(clock - sun);
        if (Math.Min(apart, 24 - apart) <= MostHoursFromSun) return;
        throw new InputError(
            placeOf(Key),
            $"{InputError.Quote(site.TimeZone)} at longitude {Text(site.Longitude)} deg",
            $"a zone near UTC{sun.ToString("+0;-0", CultureInfo.InvariantCulture)} hours, as the sun goes there",
            Key);
    }

    private static void CheckSeason(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var season = scenario.Season;
        if (season.Year is int year && year is < EarliestYear or > LatestYear)
            Fail("season.year", Text(season.Year.Value), $"a year from {EarliestYear} to {LatestYear}");
        if (season.Budbreak is DateOnly budbreak)
        {
            if (budbreak.Year is < EarliestYear or > LatestYear)
                Fail("season.budbreak", Text(budbreak), $"a day from {EarliestYear} to {LatestYear}");
            if (season.Year is int spring && budbreak.Year != spring)
                Fail("season.budbreak", $"{Text(budbreak)}, outside season.year {spring}", $"a day of {spring}");
        }

        if (season.Harvest == HarvestRule.Date && season.HarvestDate is null)
            Fail("season.harvest", "\"date\" without harvest_date", "a day in season.harvest_date");
        if (season.HarvestDate is DateOnly harvest)
        {
            // South of the equator the fruit of a spring is picked in the next calendar year.
            if (season.Budbreak is DateOnly start && (harvest <= start || harvest > start.AddDays(365)))
                Fail(
                    "season.harvest_date",
                    $"{Text(harvest)}, with budbreak on {Text(start)}",
                    "a day within a year after budbreak");
            var last = season.Year + (scenario.Site.IsSouthern ? 1 : 0);
            if (season.Year is int from && (harvest.Year < from || harvest.Year > last))
                Fail("season.harvest_date", $"{Text(harvest)}, outside the season of {from}", $"a day of that season");
        }

        if (scenario.Fruit.LoadingEnds <= season.TargetSugar)
            Fail(
                "season.target_sugar",
                $"{Text(season.TargetSugar)} Brix",
                $"less than fruit.loading_ends, {Text(scenario.Fruit.LoadingEnds)} Brix: fruit never gets sweeter");

        if (scenario.Carbon.InitialReserves > scenario.Carbon.ReserveCeiling)
            Fail(
                "carbon.initial_reserves",
                Text(scenario.Carbon.InitialReserves),
                $"at most carbon.reserve_ceiling, {Text(scenario.Carbon.ReserveCeiling)}");

        void Fail(string key, string found, string expected) =>
            throw new InputError(placeOf(key), found, expected, key);
    }

    private static void CheckGrowth(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var growth = scenario.Growth;
        Rising(
            "growth.optimum_temperature",
            growth.OptimumTemperature,
            "growth.base_temperature",
            growth.BaseTemperature,
            placeOf);
        Rising(
            "growth.decline_temperature",
            growth.DeclineTemperature,
            "growth.optimum_temperature",
            growth.OptimumTemperature,
            placeOf);
        Rising(
            "growth.ceiling_temperature",
            growth.CeilingTemperature,
            "growth.decline_temperature",
            growth.DeclineTemperature,
            placeOf);
        Rising(
            "leaf.heat_closure_end",
            scenario.Leaf.HeatClosureEnd,
            "leaf.heat_closure_start",
            scenario.Leaf.HeatClosureStart,
            placeOf);
    }

    private static void CheckAgeCurve(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        const string Key = "leaf_age.points";
        var points = scenario.LeafAge.Points;
        if (points.Count < 2) throw new InputError(placeOf(Key), $"{points.Count} points", "at least 2", Key);
        for (var i = 1; i < points.Count; i++)
        {
            if (points[i].Age > points[i - 1].Age) continue;
            throw new InputError(
                placeOf($"{Key}.{i}"),
                $"{Text(points[i].Age)} d after {Text(points[i - 1].Age)} d",
                "ages that rise",
                $"{Key}.{i}");
        }
    }

    private static void CheckOptics(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var optics = scenario.Optics;
        NoMoreThanAll("par", optics.LeafParReflectance, optics.LeafParTransmittance);
        NoMoreThanAll("nir", optics.LeafNirReflectance, optics.LeafNirTransmittance);

        void NoMoreThanAll(string band, double reflected, double transmitted)
        {
            if (reflected + transmitted <= 1) return;
            var key = $"optics.leaf_{band}_reflectance";
            throw new InputError(
                placeOf(key),
                $"{Text(reflected)}, with a transmittance of {Text(transmitted)}",
                "a sum of at most 1",
                key);
        }
    }

    private static void CheckCarbonAndFruit(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var carbon = scenario.Carbon;
        if (carbon.InitialReserves > carbon.ReserveCeiling)
        {
            throw new InputError(
                placeOf("carbon.initial_reserves"),
                Text(carbon.InitialReserves),
                $"at most carbon.reserve_ceiling, {Text(carbon.ReserveCeiling)}",
                "carbon.initial_reserves");
        }

        Rising(
            "fruit.loading_ends",
            scenario.Fruit.LoadingEnds,
            "fruit.sugar_at_veraison",
            scenario.Fruit.SugarAtVeraison,
            placeOf);
    }

    private static void Rising(
        string key, double value, string lowerKey, double lower, Func<string, InputPlace> placeOf)
    {
        if (value <= lower)
            throw new InputError(placeOf(key), Text(value), $"more than {lowerKey}, {Text(lower)}", key);
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
