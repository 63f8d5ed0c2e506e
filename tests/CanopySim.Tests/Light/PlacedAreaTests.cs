using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Plants;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>How far a canopy has grown away from a geometry, and when light makes its geometry anew.</summary>
public class PlacedAreaTests
{
    private const double LeastBlade = 1e-4;

    [Fact]
    public void Nothing_changed_is_nothing()
    {
        var (grown, area, _) = Placed();
        Assert.Equal(0, area.ShareChanged(grown.Canopy), 1e-12);
    }

    [Fact]
    public void Growth_counts_by_its_area()
    {
        var (grown, area, total) = Placed();
        var leaf = grown.Canopy.Leaves().First();
        leaf.Area += 0.03 * total;
        Assert.Equal(0.03, area.ShareChanged(grown.Canopy), 1e-9);

        // What one leaf gains another loses: both have changed.
        grown.Canopy.Leaves().Last().Area -= 0.001 * total;
        Assert.Equal(0.031, area.ShareChanged(grown.Canopy), 1e-9);
    }

    [Fact]
    public void Fallen_leaves_count_by_what_they_had()
    {
        var (grown, area, total) = Placed();
        var phytomers = grown.Canopy.PrimaryShoots().SelectMany(shoot => shoot.Phytomers).Where(phytomer => phytomer.Leaf is not null).Take(5).ToList();
        var lost = phytomers.Sum(phytomer => phytomer.Leaf!.Area);
        foreach (var phytomer in phytomers) phytomer.Leaf = null;
        Assert.Equal(lost / total, area.ShareChanged(grown.Canopy), 1e-9);
        foreach (var phytomer in grown.Canopy.Vines.SelectMany(vine => vine.Shoots).SelectMany(shoot => shoot.Phytomers))
        {
            phytomer.Leaf = null;
            phytomer.Lateral = null;
        }

        Assert.Equal(1, area.ShareChanged(grown.Canopy), 1e-9);
    }

    [Fact]
    public void New_leaves_count_by_their_area()
    {
        var (grown, area, total) = Placed();
        var before = grown.Canopy.Leaves().ToDictionary(leaf => leaf.Id, leaf => leaf.Area);
        grown.Grow(6);
        var changed = grown.Canopy.Leaves().Sum(leaf => Math.Abs(leaf.Area - before.GetValueOrDefault(leaf.Id)));
        Assert.Contains(grown.Canopy.Leaves(), leaf => !before.ContainsKey(leaf.Id) && leaf.Area > 0);
        Assert.Equal(changed / total, area.ShareChanged(grown.Canopy), 1e-9);
    }

    [Fact]
    public void A_bare_vine_has_always_changed()
    {
        var scenario = GrownCanopy.Scenario();
        var grown = new GrownCanopy(scenario);
        foreach (var leaf in grown.Canopy.Leaves()) leaf.Area = 0;
        Assert.Equal(1, new PlacedArea(new CanopyScene(scenario).Place(grown.Canopy, SceneDetail.ForLight), grown.Canopy).ShareChanged(grown.Canopy));
    }

    /// <summary>Draft and standard bear as much drift as they say, fine none; work and frost none at any quality.</summary>
    [Theory]
    [InlineData(Quality.Draft, 0.055, false)]
    [InlineData(Quality.Draft, 0.065, true)]
    [InlineData(Quality.Standard, 0.018, false)]
    [InlineData(Quality.Standard, 0.022, true)]
    [InlineData(Quality.Fine, 0.0005, true)]
    [InlineData(Quality.Fine, 0, false)]
    public void Geometry_is_made_anew_when_enough_leaf_has_grown(Quality quality, double growth, bool anew)
    {
        var (grown, _, total) = Placed(days: 15);
        var light = new CanopyLight(GrownCanopy.Scenario(), quality, 0, 2);
        var first = light.Place(grown.Canopy, changed: false);
        Assert.Same(first, light.Place(grown.Canopy, changed: false));
        grown.Canopy.Leaves().First().Area += growth * Counted(quality, total);
        var second = light.Place(grown.Canopy, changed: false);
        Assert.Equal(anew, !ReferenceEquals(first, second));

        // Drift counts from the geometry that stands, and what changed the canopy asks for a new one.
        Assert.Same(second, light.Place(grown.Canopy, changed: false));
        var third = light.Place(grown.Canopy, changed: true);
        Assert.NotSame(second, third);
        Assert.Same(third, light.Place(grown.Canopy, changed: false));
    }

    [Fact]
    public void Small_steps_add_up_to_a_new_geometry()
    {
        var (grown, _, total) = Placed(days: 15);
        var light = new CanopyLight(GrownCanopy.Scenario(), Quality.Draft, 0, 2);
        var first = light.Place(grown.Canopy, changed: false);
        var (kept, step) = (0, 0.009 * Counted(Quality.Draft, total));
        for (; ReferenceEquals(first, light.Place(grown.Canopy, changed: false)); kept++) grown.Canopy.Leaves().First().Area += step;

        // Six steps make 5.4 %, seven 6.3 %.
        Assert.Equal(7, kept);
    }

    [Fact]
    public void A_young_canopy_counts_as_the_least_area()
    {
        var (grown, area, total) = Placed();
        grown.Canopy.Leaves().First().Area += 0.03 * total;
        Assert.Equal(0.03, area.ShareChanged(grown.Canopy, 0.5 * total), 1e-9);
        Assert.Equal(0.01, area.ShareChanged(grown.Canopy, 3 * total), 1e-9);
    }

    private static double Counted(Quality quality, double total) =>
        Math.Max(total, LightQuality.For(quality).LeastLeafAreaIndex * CanopyScene.CellOf(GrownCanopy.Scenario()).GroundArea);

    // Blades too small to be placed would count as new from the first.
    private static (GrownCanopy Grown, PlacedArea Area, double Total) Placed(int days = 30)
    {
        var scenario = GrownCanopy.Scenario();
        var grown = new GrownCanopy(scenario).Grow(days);
        foreach (var leaf in grown.Canopy.Leaves().Where(leaf => leaf.Area < LeastBlade)) leaf.Area = 0;
        var placed = new CanopyScene(scenario).Place(grown.Canopy, SceneDetail.ForLight);
        return (grown, new PlacedArea(placed, grown.Canopy), grown.Canopy.Leaves().Sum(leaf => leaf.Area));
    }
}
