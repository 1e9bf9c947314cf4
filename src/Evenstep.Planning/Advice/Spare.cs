using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Which owned items a kit does not need.</summary>
public static class Spare
{
    /// <summary>
    /// The owned items without which, one at a time, the kit keeps its largest step and its mean excess, and every demand
    /// that is met stays met. In ordinal order of ids.
    /// </summary>
    /// <param name="kit">What there is.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Item> Of(Kit kit, WorkBudget? budget = null)
    {
        var parts = new PartsOfKit(kit, budget);
        return [.. kit.Problem.Owned.Where(item => KeepsFigures(kit.Figures, parts.Without(item)) && KeepsDemands(item, kit))];
    }

    private static bool KeepsDemands(Item item, Kit kit)
    {
        var demands = kit.Problem.Demands;
        if (demands.MustFrame.IsEmpty && demands.ReticleLeastPower is null)
        {
            return true;
        }

        var without = kit.Without(item);
        return KeepsFramings(kit, without) && KeepsReticle(kit, without);
    }

    /// <summary>Taking something away never makes either figure better.</summary>
    private static bool KeepsFigures(LadderFigures kit, LadderFigures without) =>
        Tolerance.AtMost(without.LnLargestStep, kit.LnLargestStep) && Tolerance.AtMost(without.MeanExcess, kit.MeanExcess);

    private static bool KeepsFramings(Kit kit, Kit without) => kit.Problem.Demands.MustFrame.All(framing =>
        FramingRule.Frames(without, framing.WidthDeg, framing.TelescopeIndex) || !FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex));

    private static bool KeepsReticle(Kit kit, Kit without) =>
        kit.Problem.Demands.ReticleLeastPower is not { } least || ReticleRule.Serves(without, least) || !ReticleRule.Serves(kit, least);
}
