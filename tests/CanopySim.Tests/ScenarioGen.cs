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
        Gen.Select(Gen.Double[0.8, 6], Gen.Double[0.3, 6], Gen.Double[0, 360], Gen.Int[1, 3], Gen.Int[1, 2]).Select((spacing, vines, azimuth, inCell, rows) =>
            new RowLayout { Spacing = spacing, VineSpacing = vines, Azimuth = azimuth, VinesInCell = inCell, RowsInCell = rows });

    // Where shoots are led up the top wire stands over the cordon: TrellisChecks demands it.
    private static readonly Gen<Trellis> AnyTrellis =
        Gen.Select(Gen.Enum<TrellisForm>(), Gen.Double[0.3, 3], Gen.Double[0.5, 3.5], Gen.Double[0.1, 3], Gen.Double[0, 1], Gen.Bool).Select(
            (form, cordon, top, width, share, own) => own
            ? new Trellis { Form = form }
            : TrellisKeys.Used(new Trellis
            {
                Form = form,
                CordonHeight = cordon,
                LowerCordonHeight = 0.3 + (share * (cordon - 0.3)),
                HeadHeight = 0.1 + (1.1 * share),
                TopWireHeight = TrellisKeys.HasWalls(form) ? Math.Max(cordon, top) : top,
                FoliageWidth = width,
                CordonDistance = 3 * share,
                WallTilt = 70 * share,
                RoofArms = (RoofArms)(int)(3.99 * share),
            }));

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
            CanopyWork = new CanopyWork { ShootsPerMeter = Math.Clamp(60 / (rows.VineSpacing * rows.VineCount * 2), 2, shoots) },
        });
}
