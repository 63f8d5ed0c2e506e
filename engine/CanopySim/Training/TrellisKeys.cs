namespace CanopySim.Training;

/// <summary>Which of a trellis's own measures a form has a use for.</summary>
public static class TrellisKeys
{
    /// <summary>Names of the properties that are given though the form has no use for them.</summary>
    public static IEnumerable<string> GivenInVain(Trellis trellis)
    {
        var form = trellis.Form;
        var isWalled = HasWalls(form);
        if (trellis.CordonHeight is not null && form == TrellisForm.Bush) yield return nameof(Trellis.CordonHeight);
        if (trellis.LowerCordonHeight is not null && form != TrellisForm.UpAndDown)
            yield return nameof(Trellis.LowerCordonHeight);
        if (trellis.HeadHeight is not null && form != TrellisForm.Bush) yield return nameof(Trellis.HeadHeight);
        if (trellis.TopWireHeight is not null && !isWalled && form != TrellisForm.Overhead)
            yield return nameof(Trellis.TopWireHeight);
        if (trellis.FoliageWidth is not null && form is (TrellisForm.HighWire or TrellisForm.Bush))
            yield return nameof(Trellis.FoliageWidth);
        if (trellis.CordonDistance is not null && !IsDividedAcross(form)) yield return nameof(Trellis.CordonDistance);
        if (trellis.WallTilt is not null && form is not (TrellisForm.OpenU or TrellisForm.SlantedV))
            yield return nameof(Trellis.WallTilt);
        if (trellis.RoofArms != RoofArms.Both && form != TrellisForm.Overhead) yield return nameof(Trellis.RoofArms);
        if (trellis.CatchWires.Count > 0 && !isWalled) yield return nameof(Trellis.CatchWires);
    }

    /// <summary>The trellis without what its form has no use for.</summary>
    public static Trellis Used(Trellis trellis)
    {
        var vain = GivenInVain(trellis).ToHashSet();
        return trellis with
        {
            CordonHeight = Kept(trellis.CordonHeight, nameof(Trellis.CordonHeight)),
            LowerCordonHeight = Kept(trellis.LowerCordonHeight, nameof(Trellis.LowerCordonHeight)),
            HeadHeight = Kept(trellis.HeadHeight, nameof(Trellis.HeadHeight)),
            TopWireHeight = Kept(trellis.TopWireHeight, nameof(Trellis.TopWireHeight)),
            FoliageWidth = Kept(trellis.FoliageWidth, nameof(Trellis.FoliageWidth)),
            CordonDistance = Kept(trellis.CordonDistance, nameof(Trellis.CordonDistance)),
            WallTilt = Kept(trellis.WallTilt, nameof(Trellis.WallTilt)),
            RoofArms = vain.Contains(nameof(Trellis.RoofArms)) ? RoofArms.Both : trellis.RoofArms,
            CatchWires = vain.Contains(nameof(Trellis.CatchWires)) ? [] : trellis.CatchWires,
        };

        double? Kept(double? value, string name) => vain.Contains(name) ? null : value;
    }

    /// <summary>True for forms that lead shoots up between wires.</summary>
    public static bool HasWalls(TrellisForm form) =>
        form is TrellisForm.UprightHedge or TrellisForm.OpenU or TrellisForm.SlantedV or TrellisForm.UpAndDown;

    /// <summary>True for forms with two cordons beside each other.</summary>
    public static bool IsDividedAcross(TrellisForm form) =>
        form is TrellisForm.TwinCurtain or TrellisForm.OpenU or TrellisForm.SlantedV;
}
