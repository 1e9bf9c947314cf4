namespace Evenstep.Planning.Purchases;

/// <summary>Where a jump lies.</summary>
public enum JumpPlace
{
    BetweenViews,

    /// <summary>Between the lowest power of the range and the first view.</summary>
    LowEnd,

    /// <summary>Between the last view and the highest power of the range.</summary>
    HighEnd,
}

/// <summary>The stretch of powers between two neighbouring views, or between a view and an end of the range.</summary>
/// <param name="FromPower">The lower power, cut to the range.</param>
/// <param name="ToPower">The higher power, cut to the range.</param>
/// <param name="Distance">Between their positions.</param>
/// <param name="Place">Where it lies.</param>
public sealed record Jump(double FromPower, double ToPower, double Distance, JumpPlace Place)
{
    /// <summary>At an end no neighbour stands on the other side, so the jump counts twice.</summary>
    public bool AtEnd => Place != JumpPlace.BetweenViews;

    /// <summary>The ratio of the powers; squared at an end.</summary>
    public double Ratio => Math.Pow(ToPower / FromPower, AtEnd ? 2 : 1);

    /// <summary>The step as it counts: each zone of powers by its weight.</summary>
    public Step Weighed => AtEnd ? Step.OfMismatch(Distance) : new Step(Distance);

    /// <summary>Whether the step is as good as none.</summary>
    /// <param name="enough">The largest step that is.</param>
    public bool IsEnough(Step enough) => Weighed.AtMost(enough);
}
