using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What is to blame that no set of purchases is allowed: wishes that nothing could meet, or the limits.</summary>
/// <param name="Impossible">Demands that cannot be met whatever the limits, each by itself.</param>
/// <param name="Together">Those of the demands that conflict together that could be met, were it not for limits or for each other.</param>
/// <param name="Most">What could be had without limits.</param>
/// <param name="AreOne">Whether there is but one cause, so that what removes it makes a set possible.</param>
/// <param name="AreLimits">Whether limits are to blame for all of it.</param>
public sealed record ConflictCauses(
    ImmutableArray<Demand> Impossible, ImmutableArray<Demand> Together, WithoutLimits Most, bool AreOne, bool AreLimits)
{
    /// <summary>Why an item is no candidate that other limits would change.</summary>
    private static readonly ImmutableArray<Excluded> ByLimits = [Excluded.OverBudget, Excluded.TooHeavy, Excluded.OverlapsOwned];

    /// <param name="problem">What was planned.</param>
    /// <param name="conflicts">Why nothing is allowed.</param>
    public static ConflictCauses Of(PurchaseProblem problem, Conflicts conflicts)
    {
        var most = WithoutLimits.Of(problem);
        ImmutableArray<Demand> impossible =
        [
            .. problem.Demands.MustFrame.Select((framing, index) => new Demand.MustFrame(framing, index)).Where(demand => !most.MayMeet(demand.Framing)),
            .. problem.Demands.ReticleLeastPower is { } least && !most.MayReach(least) ? new Demand[] { new Demand.Reticle(least) } : [],
        ];
        var together = conflicts.Together.RemoveRange(impossible);
        return new ConflictCauses(
            impossible,
            together,
            most,
            AreOne: impossible.IsEmpty && conflicts.NoCandidates.IsEmpty,
            AreLimits: impossible.IsEmpty && conflicts.NoCandidates.All(one => ByLimits.Contains(one.Reason) && !problem.Owned.Contains(one.Item)));
    }
}
