using CanopySim.Drawing.Leaves;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>The colors of the leaves in the picture, kept until what they show changes.</summary>
public sealed class LeafColors
{
    private (object Season, int Day, int Hour, LeafQuantity Quantity, RangeMode Range, bool IsFinished)? _key;

    /// <summary>Values of the leaves, in the order of the day's blades.</summary>
    public float[] Values { get; private set; } = [];

    public LeafColoring Coloring { get; private set; } = LeafColoring.Fixed(LeafQuantity.Age);

    /// <summary>Makes them anew where the state asks for others.</summary>
    public void Follow(SeasonInSight season, ViewState state)
    {
        var hour = QuantityText.ChangesByHour(state.Quantity) ? state.Hour : 0;
        var key = ((object)season, state.Day, hour, state.Quantity, state.Range, season.Recording.IsFinished);
        if (_key == key) return;
        _key = key;
        Values = state.Day < season.Facts.DayCount
            ? LeafValues.Of(season.Recording, state.Day, state.Hour, state.Quantity,
                state.Quantity == LeafQuantity.RipeningShare ? season.Shares : null)
            : [];
        Coloring = state.Range == RangeMode.Fitted ? LeafColoring.Fitted(state.Quantity, Values)
            : LeafColoring.Fixed(state.Quantity);
    }
}
