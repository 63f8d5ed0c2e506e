namespace CanopySim.Drawing.Leaves;

/// <summary>What leaves can be colored by.</summary>
public enum LeafQuantity
{
    /// <summary>Days since unfolding [d].</summary>
    Age,

    /// <summary>Efficiency of its age [% of the leaf's own best].</summary>
    Efficiency,

    /// <summary>PAR absorbed in the hour [µmol m⁻² s⁻¹].</summary>
    LightNow,

    /// <summary>PAR absorbed in the day [mol m⁻² d⁻¹].</summary>
    LightOfDay,

    /// <summary>Temperature of the blade in the hour [°C].</summary>
    TemperatureNow,

    /// <summary>Net assimilation in the hour [µmol m⁻² s⁻¹].</summary>
    AssimilationNow,

    /// <summary>Net assimilation of the day, night included [g CO₂ m⁻² d⁻¹].</summary>
    CarbonOfDay,

    /// <summary>The leaf's share in what all leaves gained while the fruit ripened [%].</summary>
    RipeningShare,

    /// <summary>Which shoot it grew on.</summary>
    Shoot,
}
