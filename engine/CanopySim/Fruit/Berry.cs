namespace CanopySim.Fruit;

/// <summary>
/// Fresh mass of a berry and its sugar. From veraison water follows sugar in a straight line, from half the final mass at the
/// sugar of veraison to the final mass where loading ends: the second phase about doubles the berry (Coombe &amp; McCarthy 2000,
/// via a trade page). A berry whose structure was starved is smaller in the same proportion throughout.
/// </summary>
public static class Berry
{
    private const double FreshShareAtVeraison = 0.5;

    /// <summary>Sugar of a full berry at veraison [g].</summary>
    public static double SugarAtVeraison(FruitParameters fruit) =>
        fruit.SugarAtVeraison / 100 * FreshShareAtVeraison * fruit.BerryFreshMass;

    /// <summary>Fresh mass [g] of a berry that holds a sugar [g], with its structure at a share of the full one.</summary>
    public static double FreshMass(double sugar, double sizeShare, FruitParameters fruit)
    {
        if (sizeShare <= 0) return 0;
        var fromSugar = SugarAtVeraison(fruit);
        var toSugar = fruit.LoadingEnds / 100 * fruit.BerryFreshMass;
        var progress = Math.Clamp(((sugar / sizeShare) - fromSugar) / (toSugar - fromSugar), 0, 1);
        return sizeShare * fruit.BerryFreshMass * (FreshShareAtVeraison + ((1 - FreshShareAtVeraison) * progress));
    }

    /// <summary>Sugar concentration [Brix, taken as g sugar per 100 g of berry].</summary>
    public static double Brix(double sugar, double sizeShare, FruitParameters fruit)
    {
        var fresh = FreshMass(sugar, sizeShare, fruit);
        return fresh > 0 ? 100 * sugar / fresh : 0;
    }
}
