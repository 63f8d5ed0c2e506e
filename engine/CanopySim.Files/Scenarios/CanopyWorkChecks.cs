using System.Globalization;
using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>Checks of planned work: each step by itself, and steps that contradict each other or the block.</summary>
internal sealed class CanopyWorkChecks(Scenario scenario, Func<string, InputPlace> placeOf)
{
    private readonly IReadOnlyList<FoliageWall> _walls = TrellisLayout.WallsOf(scenario.Trellis);

    public static void Check(Scenario scenario, Func<string, InputPlace> placeOf)
    {
        var checks = new CanopyWorkChecks(scenario, placeOf);
        var times = new WorkTimeChecks(scenario, placeOf);
        var work = scenario.CanopyWork;
        Each("shoot_thinning", work.ShootThinning, checks.ShootThinning);
        Each("tucking", work.Tucking, checks.Tucking);
        Each("topping", work.Topping, checks.Topping);
        Each("side_hedging", work.SideHedging, checks.SideHedging);
        Each("leaf_removal", work.LeafRemoval, checks.LeafRemoval);
        Each("lateral_removal", work.LateralRemoval, (step, key) => checks.Zone(step, key));
        Each("cluster_thinning", work.ClusterThinning, checks.ClusterThinning);
        Each("sprays", work.Sprays, (step, key) => checks.Rising(step.From, step.To, key));
        times.Check("soil.irrigation", scenario.Soil.Irrigation, needsShoots: false);
        for (var i = 0; i < scenario.Soil.Irrigation.Count; i++) checks.Irrigation(
            scenario.Soil.Irrigation[i].Amount, $"soil.irrigation.{i}.amount");
        if (work.ShootsLed == ShootLeading.WhenTucked && work.Tucking.Count == 0)
            checks.Fail("canopy_work.shoots_led", "when_tucked without tucking",
                "a step in canopy_work.tucking, or never");
        checks.Contradictions();

        void Each<T>(string name, IReadOnlyList<T> steps, Action<T, string> check)
            where T : WorkStep
        {
            times.Check($"canopy_work.{name}", steps, needsShoots: true);
            for (var i = 0; i < steps.Count; i++) check(
                steps[i], string.Create(CultureInfo.InvariantCulture, $"canopy_work.{name}.{i}"));
        }
    }

    private void ShootThinning(ShootThinning step, string key)
    {
        ExactlyOne(step.ShootsPerMeter is not null, step.ShootsPerVine is not null, "shoots_per_meter",
            "shoots_per_vine", key);
        var breaking = scenario.CanopyWork.ShootsPerMeter;
        if (step.ShootsPerMeter > breaking)
            Fail(key + ".shoots_per_meter", $"{Text(step.ShootsPerMeter.Value)} 1/m",
                $"at most canopy_work.shoots_per_meter, {Text(breaking)} 1/m: thinning adds no shoots");
        var onVine = VinePlanting.ShootsPerVine(scenario);
        if (step.ShootsPerVine > onVine)
            Fail(key + ".shoots_per_vine", Text(step.ShootsPerVine.Value),
                $"at most {onVine}, which canopy_work.shoots_per_meter gives a vine: thinning adds no shoots");
    }

    private void Tucking(Tucking step, string key)
    {
        if (scenario.CanopyWork.ShootsLed != ShootLeading.WhenTucked)
            Fail(key, $"a tucking, with shoots_led: {KeyNames.Choice(scenario.CanopyWork.ShootsLed)}",
                "canopy_work.shoots_led: when_tucked");
    }

    private void Topping(Topping step, string key)
    {
        ExactlyOne(step.Height is not null, step.Nodes is not null, "height", "nodes", key);
        if (step.Height is not double height) return;
        // Where some shoots stand and others hang, a cut is meant for those on its side of the cordon.
        var met = _walls.Where(wall => IsHanging(wall) ? height <= wall.CordonHeight : height >= wall.CordonHeight)
            .ToList();
        foreach (var wall in met.Count > 0 ? met : _walls)
        {
            // A cut through the fruit zone takes the crop.
            var end = wall.FruitZone.Height(IsHanging(wall) ? 0 : 1);
            if (IsHanging(wall) ? height <= end : height >= end) continue;
            var limit = end.ToString("0.##", CultureInfo.InvariantCulture);
            Fail(key + ".height", $"{Text(height)} m, within the fruit zone or beyond it", IsHanging(wall)
                ? $"at most {limit} m, where the fruit zone ends below"
                : $"at least {limit} m, where the fruit zone ends above");
        }

        static bool IsHanging(FoliageWall wall) => wall.Hangs || wall.IsFlat;
    }

    private void SideHedging(SideHedging step, string key)
    {
        if (_walls.Any(wall => wall.IsFlat))
            Fail(key, $"side hedging, with trellis.form {KeyNames.Choice(scenario.Trellis.Form)}: a roof has no sides",
                "topping by height, which cuts what hangs under a roof");
        if (step.Width >= scenario.Rows.Spacing)
            Fail(key + ".width", $"{Text(step.Width)} m, with rows {Text(scenario.Rows.Spacing)} m apart",
                "less than rows.spacing: cutters pass between the rows");
    }

    private void LeafRemoval(LeafRemoval step, string key)
    {
        Zone(step, key);
        if (step.Side is CanopySide.Morning or CanopySide.Afternoon
            && RowSides.IsRightInTheMorning(scenario.Rows.Azimuth) is null)
            Fail(
                key + ".side",
                $"{KeyNames.Choice(step.Side)}, with rows.azimuth {Text(scenario.Rows.Azimuth)} deg: the sides face "
                    + "north and south",
                "right, left or both");
    }

    private void ClusterThinning(ClusterThinning step, string key)
    {
        ExactlyOne(step.ClustersPerShoot is not null, step.Share is not null, "clusters_per_shoot", "share", key);
        if (step.Share >= 1) Fail(key + ".share", "1: the whole crop", "less than 1");
        var most = (int)Math.Ceiling(scenario.Fruit.ClustersPerShoot);
        if (step.ClustersPerShoot >= most)
            Fail(key + ".clusters_per_shoot", Text(step.ClustersPerShoot.Value),
                $"less than {most}: with fruit.clusters_per_shoot {Text(scenario.Fruit.ClustersPerShoot)} no shoot "
                    + "bears more");
    }

    private void Irrigation(double amount, string key)
    {
        if (amount > scenario.Soil.TranspirableWater)
            Fail(key, $"{Text(amount)} mm",
                $"at most soil.transpirable_water, {Text(scenario.Soil.TranspirableWater)} mm: the soil holds no more");
    }

    private void Zone(ZoneStep step, string key)
    {
        foreach (var wall in _walls)
        {
            var (from, to) = step.Within(wall);
            Rising(from, to, key);
        }
    }

    private void Rising(double? from, double? to, string key)
    {
        if (from >= to)
            Fail(key, $"a zone from {Text(from.Value)} m to {Text(to.Value)} m over the cordon", "from below to");
    }

    // Days tell the order: what a thinning leaves is all that a later one can keep.
    private void ThinningInOrder()
    {
        var steps = scenario.CanopyWork.ShootThinning;
        var row = scenario.Rows.VineSpacing * _walls.Count;
        for (var i = 0; i < steps.Count; i++)
            for (var j = 0; j < steps.Count; j++)
                if (steps[j].On < steps[i].On && Kept(steps[i]) > Kept(steps[j]) + 1e-9)
                    Fail(
                        string.Create(CultureInfo.InvariantCulture, $"canopy_work.shoot_thinning.{i}"),
                        string.Create(CultureInfo.InvariantCulture, $"{Words(steps[i])}, after canopy_work.shoot_thinning.{j} left {Words(steps[j])}"),
                        "no more than the earlier thinning leaves");

        double Kept(ShootThinning step) => step.ShootsPerVine ?? ((step.ShootsPerMeter ?? 0) * row);

        static string Words(ShootThinning step) =>
            step.ShootsPerVine is { } count ? $"{count} shoots a vine" : $"{Text(step.ShootsPerMeter ?? 0)} shoots a meter";
    }

    // Two steps of one time that do the same thing to the same part of the canopy: only one of them can be meant.
    private void Contradictions()
    {
        var (work, azimuth) = (scenario.CanopyWork, scenario.Rows.Azimuth);
        Twice("shoot_thinning", work.ShootThinning, (_, _) => true);
        ThinningInOrder();
        Twice("tucking", work.Tucking, (_, _) => true);
        Twice("topping", work.Topping, (one, other) => StepsOverlap.Of(one, other, scenario.Trellis));
        Twice("side_hedging", work.SideHedging, (_, _) => true);
        Twice("leaf_removal", work.LeafRemoval, (one, other) => StepsOverlap.Of(one, other, scenario.Trellis, azimuth));
        Twice("lateral_removal", work.LateralRemoval, (one, other) => StepsOverlap.Of(one, other, scenario.Trellis));
        Twice("cluster_thinning", work.ClusterThinning, (_, _) => true);
    }

    private void Twice<T>(string name, IReadOnlyList<T> steps, Func<T, T, bool> overlap)
        where T : WorkStep
    {
        for (var i = 0; i < steps.Count; i++)
            for (var j = 0; j < i; j++)
                if (steps[i].IsTimedAs(steps[j]) && overlap(steps[i], steps[j]))
                    Fail(
                        string.Create(CultureInfo.InvariantCulture, $"canopy_work.{name}.{i}"),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"the time of canopy_work.{name}.{j}, for the same part of the canopy"),
                        "another time, or one of them");
    }

    private void ExactlyOne(bool first, bool second, string firstKey, string secondKey, string key)
    {
        if (first == second) Fail(
            key, first ? $"both {firstKey} and {secondKey}" : $"neither {firstKey} nor {secondKey}",
            "exactly one of them");
    }

    private void Fail(string key, string found, string expected) =>
        throw new InputError(placeOf(key), found, expected, key);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
