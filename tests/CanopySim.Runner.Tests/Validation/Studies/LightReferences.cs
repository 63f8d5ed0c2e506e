namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Light, sun, sky and leaves are held to their references by tests of their own: this names them.</summary>
internal sealed class LightReferences : Study
{
    private const string Tests = "tests/CanopySim.Tests";

    private static readonly (string What, string Table, string Test)[] References =
    [
        ("position of the sun, by an ephemeris", "Sky/solar_astropy_reference.csv", "Sky/SolarPositionTests.cs"),
        ("radiance of the all-weather sky, its coefficients", "Sky/perez1993_allweather_coeffs.csv", "Sky/SkyRadianceTests.cs"),
        ("radiance of the standard skies, their integrals", "Sky/cie_sky_integrals.csv", "Sky/SkyRadianceTests.cs"),
        ("sky patches", "Sky/tregenza145.csv", "Sky/SkyDirectionsTests.cs"),
        ("clear sky", "Sky/clearsky.csv", "Sky/ClearSkyTests.cs"),
        ("radiation outside the atmosphere, day length", "Sky/fao56_Ra_N.csv", "Sky/ExtraterrestrialRadiationTests.cs"),
        ("direct and diffuse light", "Weather/diffuse_fraction.csv", "Weather/RadiationTests.cs"),
        ("hours of radiation from a day's", "Weather/hourly_from_daily.csv", "Weather/RadiationTests.cs"),
        ("canopies of random leaves: absorption and scattering", "Light/rt_homogeneous_mc.csv", "Light/HomogeneousCanopyTests.cs"),
        ("gaps, sunlit leaf area and sky light in random leaves", "Light/gap_and_sunlit.csv", "Light/LayerOfBladesTests.cs"),
        ("porous and opaque hedges in the sun", "Light/hedgerow_interception.csv", "Light/PorousHedgeTests.cs"),
        ("opaque hedges under the sky", "Light/hedgerow_diffuse.csv", "Light/PorousHedgeTests.cs"),
        ("projection of leaf area by inclination", "Light/G_function.csv", "Light/ProjectionTests.cs"),
        ("projection, ellipsoidal leaves", "Light/campbell_K.csv", "Light/ProjectionTests.cs"),
        ("reflection of horizontal leaves", "Light/goudriaan_reflection.csv", "Light/HorizontalBladesTests.cs"),
        ("gap fraction of random leaves", "", "Light/GapFractionTests.cs"),
        ("shadow of an opaque hedge", "", "Light/HedgeShadowTests.cs"),
        ("view factors of plates", "Light/view_factors.csv", "Light/ViewFactorTests.cs"),
        ("raster against an independent ray tracer", "", "Light/RasterAgainstRaysTests.cs"),
        ("scattering against traced paths", "", "Light/ScatteringMonteCarloTests.cs"),
        ("closure of the light budget", "", "Light/LightBudgetTests.cs"),
        ("biochemistry of a leaf", "Photosynthesis/fvcb_grid.csv", "Photosynthesis/FarquharModelTests.cs"),
        ("answers to temperature", "Photosynthesis/temperature_functions.csv", "Photosynthesis/TemperatureResponseTests.cs"),
        ("conductance with assimilation", "Photosynthesis/medlyn_coupled.csv", "Photosynthesis/MedlynConductanceTests.cs"),
        ("leaf in heat, conductance coupled", "", "Photosynthesis/LeafHeatTests.cs"),
        ("energy balance of a leaf", "Photosynthesis/leaf_energy_balance.csv", "Photosynthesis/LeafEnergyBalanceTests.cs"),
        ("reference evapotranspiration, worked examples", "", "Water/ReferenceEvapotranspirationTests.cs"),
        ("sugar by volume", "", "Fruit/SugarConcentrationTests.cs"),
        ("degree days, worked examples", "", "Phenology/DegreeDaysTests.cs"),
    ];

    public override string Title => "Light, sun, sky and leaf";

    public override string Done =>
        $"These are held to tables and closed forms by tests of their own, in `{Tests}`, which say their sources and tolerances; they fail by themselves.";

    public override IReadOnlyList<SeasonCase> Seasons => [];

    public override StudyResult Judge(ValidationSeasons seasons) => new()
    {
        Tables = [new ToldTable("Where they stand", ["what", "table", "test"], [.. References.Select(Row)])],
    };

    private static IReadOnlyList<string> Row((string What, string Table, string Test) reference) =>
        [reference.What, reference.Table.Length > 0 ? Existing(reference.Table) : "closed form or witness", Existing(reference.Test)];

    // A name that has gone would be a promise without a test.
    private static string Existing(string name) => File.Exists(Path.Combine(RunnerProcess.Repository, Tests, name))
        ? $"`{name}`"
        : throw new FileNotFoundException($"the validation page names {Tests}/{name}, which is not there");
}
