using CanopySim.Assessment;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class SunlitBerryTests
{
    private const double Radius = 0.0062;
    private const double Cluster = 0.07;

    private static readonly BerryAir Summer = new(30, 101, 1);

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void Without_light_fruit_is_as_warm_as_the_air(double compactness) =>
        Assert.Equal(30, SunlitBerry.HottestSpot(new BerrySun(0, 0, Radius, Cluster), Summer, compactness));

    // 30 W m⁻² absorbed of diffuse light in the shade of leaves.
    [Fact]
    public void In_shade_it_is_near_the_air() =>
        Assert.InRange(SunlitBerry.HottestSpot(new BerrySun(0, 30, Radius, Cluster), Summer, 0.5) - 30, 0.1, 2);

    // Up to 12 °C above the air: Oxford Companion to Wine 2006. A clear afternoon: direct sun of 850 W m⁻², of which
    // fruit keeps 0.45 × 0.85 and 0.55 × 0.60, and 60 W m⁻² of other light; wind of 0.5 to 1 m s⁻¹ among the leaves.
    [Theory]
    [InlineData(1)]
    [InlineData(0.5)]
    public void The_hot_spot_is_as_published(double wind)
    {
        var sun = new BerrySun(850 * ((0.45 * 0.85) + (0.55 * 0.60)), 60, Radius, Cluster);
        Assert.InRange(SunlitBerry.HottestSpot(sun, Summer with { Wind = wind }, 0.5) - 30, 8, 15);
        Assert.True(SunlitBerry.HottestSpot(sun, Summer with { Wind = wind }, 0) - 30 < 12);
    }

    [Fact]
    public void Wind_cools_and_closed_clusters_are_warmer()
    {
        var sun = new BerrySun(600, 60, Radius, Cluster);
        double[] winds = [0.1, 0.3, 1, 3];
        var spots = winds.Select(wind => SunlitBerry.HottestSpot(sun, Summer with { Wind = wind }, 0.5)).ToList();
        Assert.Equal(spots.OrderDescending(), spots);
        Assert.True(SunlitBerry.HottestSpot(sun, Summer, 1) > SunlitBerry.HottestSpot(sun, Summer, 0));

        // Calm air has a limit: free convection, and longwave.
        Assert.InRange(SunlitBerry.HottestSpot(sun, Summer with { Wind = 0 }, 1) - 30, 15, 30);
    }

    // A berry that conducted without limit would be as warm all over: a quarter of the beam over h alone, half of it in
    // a closed cluster. One that did not conduct at all would be beam / h at the spot; what is left out of the series
    // is then under 4 %, and with a berry's conduction as good as nothing.
    [Theory]
    [InlineData(false, 0.25)]
    [InlineData(true, 0.5)]
    public void Conduction_has_its_limits(bool isClosed, double mean)
    {
        var sun = new BerrySun(600, 0, Radius, Cluster);
        Assert.Equal(600 * mean / 25, SunlitBerry.Spot(sun, 25, 1e6, isClosed), 1e-3);
        Assert.Equal(600 / 25.0, SunlitBerry.Spot(sun, 25, 1e-9, isClosed), 0.04 * 600 / 25);
    }

    // The same sphere on a grid of shells and rings, by over-relaxation: no series in it.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_series_agrees_with_a_grid(bool isClosed)
    {
        const int Shells = 24, Rings = 36;
        const double Conductivity = 0.5, Transfer = 25, Beam = 600;
        var (dr, turn) = (Radius / Shells, Math.PI / Rings);
        var excess = new double[Shells, Rings];
        for (var sweep = 0; sweep < 6000; sweep++)
        {
            for (var shell = 0; shell < Shells; shell++)
            {
                for (var ring = 0; ring < Rings; ring++)
                {
                    // Heat through the four faces of a ring, each 2π × area.
                    var (inner, outer) = (shell * dr, (shell + 1) * dr);
                    var band = Math.Cos(ring * turn) - Math.Cos((ring + 1) * turn);
                    var (sum, all) = (0.0, 0.0);
                    void Through(double conductance, double neighbor)
                    {
                        sum += conductance * neighbor;
                        all += conductance;
                    }

                    if (shell > 0) Through(Conductivity * inner * inner * band / dr, excess[shell - 1, ring]);
                    if (shell < Shells - 1) Through(Conductivity * outer * outer * band / dr, excess[shell + 1, ring]);
                    else
                    {
                        var cosine = Math.Cos((ring + 0.5) * turn);
                        var lit = isClosed ? Math.Abs(cosine) : Math.Max(0, cosine);
                        var through = 1 / ((1 / Transfer) + (0.5 * dr / Conductivity));
                        Through(through * outer * outer * band, Beam * lit / Transfer);
                    }

                    if (ring > 0) Through(Conductivity * dr * Math.Sin(ring * turn) / turn, excess[shell, ring - 1]);
                    if (ring < Rings - 1)
                        Through(Conductivity * dr * Math.Sin((ring + 1) * turn) / turn, excess[shell, ring + 1]);
                    excess[shell, ring] += 1.8 * ((sum / all) - excess[shell, ring]);
                }
            }
        }

        // From the middle of the outermost ring out to its surface.
        var inside = excess[Shells - 1, 0];
        var surface = ((Conductivity / (0.5 * dr) * inside) + Beam) / ((Conductivity / (0.5 * dr)) + Transfer);
        Assert.Equal(surface,
            SunlitBerry.Spot(new BerrySun(Beam, 0, Radius, Cluster), Transfer, Conductivity, isClosed), 0.01 * surface);
    }
}
