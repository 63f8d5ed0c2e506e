using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Growth;

/// <summary>Carbon that a vine's main axes and laterals could use today [g CH₂O].</summary>
public readonly record struct GrowthDemand(double MainAxes, double Laterals);

/// <summary>
/// Blades and internodes expand. First the day's potential by warmth and water is laid down on every organ and priced; then,
/// when carbon has been shared, each organ takes its part. What a day fails to give is lost: this alone makes short
/// internodes and small leaves where shoots are many.
/// </summary>
public sealed class OrganExpansion(GrowthParameters growth, CarbonParameters carbon)
{
    /// <summary>Lays down the potential growth of the day and returns its price.</summary>
    public GrowthDemand Prepare(Vine vine, GrowthConditions day)
    {
        var (main, laterals) = (0.0, 0.0);
        foreach (var shoot in vine.AllShoots())
        {
            var demand = 0.0;
            foreach (var phytomer in shoot.Phytomers) demand += Prepare(phytomer, day);
            if (shoot.Order == 1) main += demand;
            else laterals += demand;
        }

        return new GrowthDemand(main, laterals);
    }

    /// <summary>Grows every organ by the share of its potential that carbon allows; returns the dry mass made [g].</summary>
    public OrganGrowth Grow(Vine vine, double mainShare, double lateralShare, DateOnly date)
    {
        var (leafMass, stemMass) = (0.0, 0.0);
        foreach (var shoot in vine.AllShoots())
        {
            var share = shoot.Order == 1 ? mainShare : lateralShare;
            foreach (var phytomer in shoot.Phytomers)
            {
                var elongation = share * phytomer.PotentialIncrement;
                phytomer.InternodeLength += elongation;
                phytomer.PotentialIncrement = 0;
                var axisMass = elongation * 100 * carbon.ElongatingStemMass;
                shoot.StemDryMass += axisMass;
                stemMass += axisMass;
                if (phytomer.Leaf is not { } leaf) continue;
                var area = share * leaf.PotentialIncrement;
                leaf.Area += area;
                leaf.PotentialIncrement = 0;
                leafMass += area * carbon.LeafMassPerArea;
                Unfold(shoot, phytomer, leaf, date);
            }
        }

        return new OrganGrowth(leafMass, stemMass);
    }

    private double Prepare(Phytomer phytomer, GrowthConditions day)
    {
        // ThermalAge already counts today: ShootDevelopment comes first.
        var before = Math.Max(0, phytomer.ThermalAge - day.ThermalUnits);
        phytomer.PotentialIncrement = day.ExpansionWater * phytomer.PotentialInternode
            * ExpansionCourse.Increment(before, phytomer.ThermalAge, growth.InternodeElongation);
        var demand = phytomer.PotentialIncrement * 100 * carbon.ElongatingStemMass * carbon.StemCost;
        if (phytomer.Leaf is not { } leaf) return demand;
        leaf.ThermalAge = phytomer.ThermalAge;
        leaf.PotentialIncrement = day.ExpansionWater * leaf.PotentialArea * ExpansionCourse.Increment(before, phytomer.ThermalAge, growth.BladeExpansion);
        return demand + (leaf.PotentialIncrement * carbon.LeafMassPerArea * carbon.LeafCost);
    }

    private void Unfold(Shoot shoot, Phytomer phytomer, Leaf leaf, DateOnly date)
    {
        if (leaf.HasUnfolded && shoot.UnfoldedNodes >= phytomer.Rank) return;
        var longEnough = leaf.MidribLength >= Leaf.UnfoldedMidrib;
        // A starved blade opens small: it unfolds when it would be 3 cm long had it lacked nothing.
        var opened = leaf.PotentialArea * ExpansionCourse.Share(leaf.ThermalAge, growth.BladeExpansion) >= Leaf.UnfoldedArea;
        if (longEnough || opened) leaf.UnfoldedOn ??= date;
        // A blade too small ever to reach 3 cm counts when its expansion is over.
        if (longEnough || leaf.ThermalAge >= growth.BladeExpansion) shoot.UnfoldedNodes = Math.Max(shoot.UnfoldedNodes, phytomer.Rank);
    }
}

/// <summary>Dry mass that a vine's leaves and axes gained in a day [g].</summary>
public readonly record struct OrganGrowth(double LeafDryMass, double StemDryMass);
