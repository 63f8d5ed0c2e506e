using CanopySim.Numerics;
using CanopySim.Photosynthesis;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>Limits and monotony of the leaf solution.</summary>
public class LeafSolverTests
{
    private static readonly LeafParameters Leaf = new();

    private static readonly LeafEnvironment Summer = new(25, 1.9, 100, 1.5, 420);

    private static readonly LeafState Sunlit = new(1000, 40, 1, 1, 0.12, 1);

    [Fact]
    public void SunlitLeafInSummerIsInTheFieldsRange()
    {
        var gas = LeafSolver.Solve(Summer, Sunlit, Leaf);

        // Net rates of vine leaves in the field 10 to 20; gs above 0.15 without stress (Flexas & Medrano 2002, from memory);
        // well-watered leaves within 4 K of the air (Jones, from memory).
        Assert.InRange(gas.NetAssimilation, 10, 20);
        Assert.InRange(gas.StomatalConductanceToWater, 0.15, 0.5);
        Assert.InRange(gas.LeafTemperatureCelsius - 25, -4, 4);
        Assert.InRange(gas.IntercellularCo2, 250, 350);
    }

    [Theory]
    [InlineData(-5)]
    [InlineData(10)]
    [InlineData(30)]
    public void AtNightALeafOnlyRespires(double air)
    {
        var environment = Summer with { AirTemperatureCelsius = air, VaporPressure = 0.6 * SaturationVaporPressure.At(air) };
        var gas = LeafSolver.Solve(environment, Sunlit with { AbsorbedPpfd = 0, AbsorbedNir = 0 }, Leaf);
        Assert.Equal(-gas.DayRespiration, gas.NetAssimilation);
        Assert.Equal(0, gas.GrossAssimilation);
        Assert.Equal(Leaf.StomatalFloor, gas.StomatalConductanceToWater, 1e-15);
        Assert.Equal(LeafRespiration.At(gas.LeafTemperatureCelsius, Leaf), gas.DayRespiration, 1e-5);
        Assert.True(gas.LeafTemperatureCelsius < air);
        Assert.True(gas.IntercellularCo2 > environment.Co2);
    }

    [Fact]
    public void DewFallsOnALeafUnderTheDewPoint()
    {
        var environment = new LeafEnvironment(12, 0.99 * SaturationVaporPressure.At(12), 100, 0.3, 420);
        var gas = LeafSolver.Solve(environment, Sunlit with { AbsorbedPpfd = 0, AbsorbedNir = 0 }, Leaf);
        Assert.True(gas.LeafTemperatureCelsius < SaturationVaporPressure.DewPoint(environment.VaporPressure));
        Assert.True(gas.Transpiration < 0);
    }

    [Theory]
    [InlineData(0.2, 1)]
    [InlineData(1, 1)]
    [InlineData(1.5, 0.3)]
    public void MoreLightNeverLowersGrossAssimilationInMildAir(double capacity, double stress)
    {
        // Light without its heat: PAR photons rise, near infrared falls by as much energy.
        var before = -1.0;
        for (var light = 0; light <= 2200; light += 25)
        {
            var heatGiven = light / UnitConversion.MicromolesPerJouleOfDaylightPar;
            var leaf = Sunlit with { AbsorbedPpfd = light, AbsorbedNir = 490 - heatGiven, CapacityFactor = capacity, WaterStressFactor = stress };
            var gross = LeafSolver.Solve(Summer, leaf, Leaf).GrossAssimilation;
            Assert.True(gross >= before - 1e-4, $"{light}: {gross} after {before}");
            before = gross;
        }
    }

    [Fact]
    public void LeavesBeyond45DegreesAssimilateNextToNothing()
    {
        var seen = 0;
        for (var air = 30.0; air <= 50; air += 0.5)
        {
            var gas = LeafSolver.Solve(new(air, 2.5, 100, 1, 420), Sunlit, Leaf);
            if (gas.LeafTemperatureCelsius >= 45)
            {
                seen++;
                Assert.InRange(gas.GrossAssimilation, 0, 1);
            }

            if (gas.LeafTemperatureCelsius > 46)
            {
                Assert.Equal(-gas.DayRespiration, gas.NetAssimilation, 1e-9);
                Assert.Equal(Leaf.StomatalFloor, gas.StomatalConductanceToWater, 1e-12);
            }
        }

        Assert.True(seen >= 5);
    }

    [Fact]
    public void StressLowersConductanceAndWarmsTheLeaf()
    {
        var before = LeafSolver.Solve(Summer, Sunlit, Leaf);
        for (var stress = 0.9; stress > -0.01; stress -= 0.1)
        {
            var gas = LeafSolver.Solve(Summer, Sunlit with { WaterStressFactor = Math.Max(0, stress) }, Leaf);
            Assert.True(gas.StomatalConductanceToWater < before.StomatalConductanceToWater);
            Assert.True(gas.Transpiration < before.Transpiration);
            Assert.True(gas.NetAssimilation < before.NetAssimilation);
            Assert.True(gas.LeafTemperatureCelsius > before.LeafTemperatureCelsius);
            before = gas;
        }
    }

    [Fact]
    public void AnHoursSolverAndTheSingleCallAgreeBitByBit()
    {
        var hour = new LeafSolver(Summer, Leaf);
        Assert.Equal(LeafSolver.Solve(Summer, Sunlit, Leaf), hour.Solve(Sunlit));
        Assert.Equal(LeafSolver.Solve(Summer with { WindSpeed = 0.4 }, Sunlit, Leaf), hour.Solve(Sunlit, 0.4));
    }

    [Fact]
    public void ASolutionAllocatesNothing()
    {
        var hour = new LeafSolver(Summer, Leaf);
        var sum = hour.Solve(Sunlit).NetAssimilation;
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var index = 0; index < 200; index++)
        {
            sum += hour.Solve(Sunlit with { AbsorbedPpfd = 10 * index }, 0.1 + (0.02 * index)).NetAssimilation;
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(double.IsFinite(sum));
    }

    [Fact]
    public void AFloorOfZeroIsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LeafSolver.Solve(Summer, Sunlit, Leaf with { StomatalFloor = 0 }));
}
