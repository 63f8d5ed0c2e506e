using System.Numerics;
using CanopySim.Drawing.Views;
using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Drawing.Painting;

/// <summary>Wires and posts of a cell's rows.</summary>
internal static class TrellisShapes
{
    /// <summary>Wires from one end of the cell to the other.</summary>
    public static IEnumerable<DrawnStalk> Wires(Scenario scenario, float radius)
    {
        var block = BlockShape.Of(scenario);
        for (var row = 0; row < scenario.Rows.RowsInCell; row++)
        {
            foreach (var wire in TrellisParts.WiresOf(scenario.Trellis, row))
            {
                var x = (float)(scenario.Rows.AcrossOf(row) + wire.Across);
                yield return new DrawnStalk(At(0), At((float)block.Cell.Along), radius, radius);

                Vector3 At(float y) => new(x, y, block.GroundAt(x, y) + (float)wire.Height);
            }
        }
    }

    /// <summary>Posts and arms at the beginning of the cell, half way between two vines.</summary>
    public static IEnumerable<DrawnStalk> Posts(Scenario scenario, float postRadius, float armRadius)
    {
        var block = BlockShape.Of(scenario);
        for (var row = 0; row < scenario.Rows.RowsInCell; row++)
        {
            var middle = (float)scenario.Rows.AcrossOf(row);
            foreach (var bar in TrellisParts.BarsOf(scenario.Trellis, row))
            {
                var radius = bar.FromHeight == 0 ? postRadius : armRadius;
                yield return new DrawnStalk(At(bar.FromAcross, bar.FromHeight), At(bar.ToAcross, bar.ToHeight), radius,
                    radius);
            }

            Vector3 At(double across, double height) =>
                new(middle + (float)across, 0, block.GroundAt(middle + (float)across, 0) + (float)height);
        }
    }
}
