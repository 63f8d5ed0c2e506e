namespace CanopySim.Protection;

/// <summary>How strongly the temperatures of the last days favor powdery mildew.</summary>
public enum MildewPressure
{
    Low,
    Moderate,
    High,
}

/// <summary>A day of the temperature index.</summary>
/// <param name="Date">The day.</param>
/// <param name="FavorableHours">Longest run of hours of that day between 21 and 29.4 °C [h].</param>
/// <param name="IsHot">True where it reached 35 °C.</param>
/// <param name="HasBegun">True from the third of three favorable days in a row.</param>
/// <param name="Points">The index on the evening of that day [0 to 100].</param>
public readonly record struct MildewDay(DateOnly Date, int FavorableHours, bool IsHot, bool HasBegun, int Points)
{
    // Where the published classes leave room between them, a step of ten lies in the lower one.
    private const int MostOfLow = 30;
    private const int MostOfModerate = 60;

    public bool IsFavorable => FavorableHours >= MildewIndex.HoursNeeded;

    public MildewPressure Pressure => Points switch
    {
        <= MostOfLow => MildewPressure.Low,
        <= MostOfModerate => MildewPressure.Moderate,
        _ => MildewPressure.High,
    };
}
