using CanopySim.Files.Recording;

namespace CanopySim.Drawing.Leaves;

/// <summary>
/// Values of a quantity for every blade of a day, in the order of its canopy's blades; NaN where there is none.
/// </summary>
public static class LeafValues
{
    /// <param name="recording">The season.</param>
    /// <param name="day">Number of the day.</param>
    /// <param name="hour">Hour of the day, for what changes by hour: 13 is 13:00 to 14:00 local standard time.</param>
    /// <param name="quantity">Which.</param>
    /// <param name="shares">Shares in the ripening, where they are asked for; null: not known yet.</param>
    public static float[] Of(SeasonRecording recording, int day, int hour, LeafQuantity quantity,
        RipeningShares? shares = null)
    {
        var (blades, leaves) = (recording.Canopy(day).Blades, recording.Leaves(day));
        var values = new float[blades.Count];
        if (quantity == LeafQuantity.Shoot)
        {
            for (var i = 0; i < values.Length; i++) values[i] = blades[i].Shoot;
            return values;
        }

        Array.Fill(values, float.NaN);
        if (leaves.Count == 0) return values;
        switch (quantity)
        {
            case LeafQuantity.Age:
                for (var i = 0; i < values.Length; i++) values[i] = Math.Max((short)0, leaves.AgeDays[i]);
                break;
            case LeafQuantity.Efficiency:
                for (var i = 0; i < values.Length; i++) values[i] = 100 * leaves.Efficiency[i];
                break;
            case LeafQuantity.LightOfDay:
                for (var i = 0; i < values.Length; i++) values[i] = leaves.AbsorbedParMoles[i] / leaves.Area[i];
                break;
            case LeafQuantity.CarbonOfDay:
                for (var i = 0; i < values.Length; i++) values[i] = leaves.NetAssimilationGrams[i] / leaves.Area[i];
                break;
            case LeafQuantity.RipeningShare:
                for (var i = 0; i < values.Length; i++) values[i] = shares is null ? float.NaN : 100
                    * shares.Of(blades[i].LeafId);
                break;
            default:
                FillFromHour(values, recording, day, hour, quantity);
                break;
        }

        return values;
    }

    private static void FillFromHour(float[] values, SeasonRecording recording, int day, int hour,
        LeafQuantity quantity)
    {
        var hours = recording.Hours(day);
        var number = Array.IndexOf(hours.Hours, (byte)hour);
        if (number < 0)
        {
            if (DarkHours.IsDark(recording, day, hour)) FillFromDark(values, recording, day, hour, quantity);
            return;
        }

        var from = quantity switch
        {
            LeafQuantity.LightNow => hours.AbsorbedPpfd,
            LeafQuantity.TemperatureNow => hours.Temperature,
            LeafQuantity.AssimilationNow => hours.NetAssimilation,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "no quantity of an hour"),
        };
        from.AsSpan(hours.IndexOf(number, 0), values.Length).CopyTo(values);
    }

    private static void FillFromDark(
        float[] values, SeasonRecording recording, int day, int hour, LeafQuantity quantity)
    {
        switch (quantity)
        {
            case LeafQuantity.LightNow:
                Array.Clear(values);
                break;
            case LeafQuantity.TemperatureNow:
                Array.Fill(values, DarkHours.Temperature(recording, day, hour));
                break;
            default:
                DarkHours.Assimilation(recording, day, hour).CopyTo(values, 0);
                break;
        }
    }
}
