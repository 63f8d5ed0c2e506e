namespace CanopySim.Water;

/// <summary>The soil's store of transpirable water [mm of ground]: rain and irrigation in; transpiration, evaporation and what runs through out.</summary>
public sealed class SoilWater(SoilParameters soil)
{
    /// <summary>Water in the store [mm].</summary>
    public double Stored { get; private set; } = soil.TranspirableWater * soil.InitialShare;

    /// <summary>Share of transpirable soil water left [0 to 1].</summary>
    public double Fraction => Stored / soil.TranspirableWater;

    /// <summary>Water given so far [mm].</summary>
    public double Irrigated { get; private set; }

    /// <summary>Gives water [mm]; returns what the store could not hold and lost to the depth [mm].</summary>
    public double Irrigate(double amount)
    {
        var drained = Math.Max(0, Stored + amount - soil.TranspirableWater);
        Stored += amount - drained;
        Irrigated += amount;
        return drained;
    }

    /// <summary>Closes a day: rain [mm] and transpiration [mm] of ground area.</summary>
    public void CloseDay(double rain, double transpiration)
    {
        // Evaporation beside the vines dries with the store: half dry soil gives half. Assumed.
        var evaporation = soil.GroundEvaporation * Fraction;
        Stored = Math.Clamp(Stored + rain - transpiration - evaporation, 0, soil.TranspirableWater);
        if (Fraction >= soil.IrrigateBelow) return;
        Stored = Math.Min(soil.TranspirableWater, Stored + soil.IrrigationAmount);
        Irrigated += soil.IrrigationAmount;
    }
}
