using System.Globalization;

namespace CanopySim.Runner.Tests.Learning;

/// <summary>A row of a study's table.</summary>
/// <param name="Name">What it is, with its unit.</param>
/// <param name="Text">Its cell for an option of <c>compare.csv</c>.</param>
internal sealed record StudyFigure(string Name, Func<CsvRows, int, string> Text)
{
    private const string None = "–";
    private const string Carbon = "ripening_carbon_by_leaf_age";

    public static StudyFigure Ripe { get; } = new(
        "ripe (22 Brix)",
        (compared, option) => Cell(compared, "dates.target_sugar", option) is { Length: > 0 } date
            ? DateOnly.Parse(date, CultureInfo.InvariantCulture).ToString("d MMM", CultureInfo.InvariantCulture)
            : "not reached");

    public static StudyFigure Sugar { get; } = Number("sugar at the end [Brix]", "harvest.sugar_brix", 1);

    public static StudyFigure Yield { get; } = Number("yield [t/ha]", "harvest.yield_t_per_ha", 1);

    public static StudyFigure LeafToFruit { get; } =
        Number("leaf area per fruit [m²/kg]", "harvest.leaf_area_m2_per_kg_fruit", 2);

    public static StudyFigure Layers { get; } =
        Number("leaf layers in the fruit zone", "canopy.leaf_layer_number", 1);

    public static StudyFigure ClusterLight { get; } =
        Number("PAR on clusters from veraison [mol/m² a day]", "fruit_light.par_mol_m2_d", 1);

    public static StudyFigure MorningShare { get; } =
        Number("of it before noon [%]", "fruit_light.morning_share", 0, 100);

    public static StudyFigure BrightSide { get; } = OfSides("on the brighter side", sides => sides.Max());

    public static StudyFigure DarkSide { get; } = OfSides("on the darker side", sides => sides.Min());

    public static StudyFigure Browning { get; } =
        Number("warm enough for fruit to brown, worse side [h]", "fruit_heat.hours_at_browning_max", 1);

    public static StudyFigure Lateral { get; } =
        Number("leaf of laterals at veraison [cm² a shoot]", "canopy.lateral_leaf_area_per_shoot_cm2", 0);

    public static StudyFigure ShootLength { get; } =
        Number("shoot length at veraison [cm]", "canopy.shoot_length_cm", 0);

    public static StudyFigure LeafAlongCanopy { get; } =
        Number("leaf area at veraison [m² a meter]", "canopy.leaf_area_m2_per_m", 2);

    public static StudyFigure Fruitfulness { get; } =
        Number("fruitfulness of next year's buds [% of best]", "next_year.fruitfulness", 0, 100);

    public static StudyFigure Gain { get; } =
        Number("leaves' net gain of the season [kg CO₂ a vine]", "season.net_assimilation_kg_co2_per_vine", 2);

    /// <summary>Share of the ripening weeks' gain that came from leaves of an age.</summary>
    /// <param name="name">Those leaves in words.</param>
    /// <param name="from">Least age [d].</param>
    /// <param name="to">Age that they have not reached [d].</param>
    public static StudyFigure Aged(string name, int from, int to) => new(
        $"ripening carbon from leaves {name} [%]",
        (compared, option) => Shown(100 * AgeClasses(compared, option)
            .Where(age => age.FromDays >= from && age.FromDays < to).Sum(age => age.Share), 0));

    /// <param name="name">What it is.</param>
    /// <param name="key">Column of <c>compare.csv</c>.</param>
    /// <param name="decimals">Decimals that are shown.</param>
    /// <param name="factor">What the number is multiplied by.</param>
    private static StudyFigure Number(string name, string key, int decimals, double factor = 1) => new(
        name,
        (compared, option) => Cell(compared, key, option) is { Length: > 0 } text
            ? Shown(factor * double.Parse(text, CultureInfo.InvariantCulture), decimals)
            : None);

    private static StudyFigure OfSides(string name, Func<IEnumerable<double>, double> chosen) => new(
        $"PAR on clusters {name} [mol/m² a day]",
        (compared, option) => Shown(chosen(SideLight(compared, option)), 1));

    private static IEnumerable<double> SideLight(CsvRows compared, int option) => compared.Names
        .Where(name => name.StartsWith("fruit_light.sides.", StringComparison.Ordinal)
            && name.EndsWith(".par_mol_m2_d", StringComparison.Ordinal))
        .Select(name => Cell(compared, name, option)).Where(cell => cell.Length > 0)
        .Select(cell => double.Parse(cell, CultureInfo.InvariantCulture));

    private static IEnumerable<(double FromDays, double Share)> AgeClasses(CsvRows compared, int option)
    {
        foreach (var name in compared.Names.Where(name => name.StartsWith($"{Carbon}.", StringComparison.Ordinal)))
        {
            var share = Cell(compared, name, option);
            if (share.Length == 0) continue;
            // ripening_carbon_by_leaf_age.60_to_70_d.share, or from_160_d for the oldest.
            var from = name.Split('.')[1].Split('_').First(part => char.IsAsciiDigit(part[0]));
            yield return (
                double.Parse(from, CultureInfo.InvariantCulture), double.Parse(share, CultureInfo.InvariantCulture));
        }
    }

    private static string Cell(CsvRows compared, string key, int option) => compared.Column(key).ElementAt(option);

    private static string Shown(double value, int decimals) =>
        value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
}
