using CanopySim.Training;
using CanopySim.Weather;
using CsCheck;

namespace CanopySim.Tests;

/// <summary>Any block that a scenario can describe: every length and angle within the range that its parameter allows.</summary>
internal static class ScenarioGen
{
    private static readonly Gen<Site> AnySite =
        Gen.Select(Gen.Double[-66, 66], Gen.Double[-180, 180], Gen.Double[0, 40], Gen.Double[0, 360]).Select((latitude, longitude, slope, aspect) =>
            new Site { Latitude = latitude, Longitude = longitude, Slope = slope, Aspect = aspect });

    private static readonly Gen<RowLayout> AnyRows =
        Gen.Select(Gen.Double[0.8, 6], Gen.Double[0.3, 6], Gen.Double[0, 360], Gen.Int[1, 3]).Select((spacing, vines, azimuth, inCell) =>
            new RowLayout { Spacing = spacing, VineSpacing = vines, Azimuth = azimuth, VinesInCell = inCell });

    // In an upright hedge the top wire stands over the cordon: ScenarioChecks demands it.
    private static readonly Gen<Trellis> AnyTrellis =
        Gen.Select(Gen.Int[0, 2], Gen.Double[0.3, 3], Gen.Double[0.5, 3.5], Gen.Double[0.1, 3], Gen.Bool).Select((form, cordon, top, width, own) => own
            ? new Trellis { Form = (TrellisForm)form }
            : new Trellis { Form = (TrellisForm)form, CordonHeight = cordon, TopWireHeight = form == 0 ? Math.Max(cordon, top) : top, FoliageWidth = width });

    public static readonly Gen<Scenario> Any =
        Gen.Select(AnySite, AnyRows, AnyTrellis, Gen.Double[2, 60], Gen.ULong).Select((site, rows, trellis, shoots, seed) => new Scenario
        {
            Name = "any block",
            Seed = seed,
            Site = site,
            Weather = new WeatherOptions { File = "none" },
            Rows = rows,
            Trellis = trellis,
            // At most some sixty shoots in the cell: what is shown does not hang on more.
            CanopyWork = new CanopyWork { ShootsPerMeter = Math.Clamp(60 / (rows.VineSpacing * rows.VinesInCell), 2, shoots) },
        });
}
