using System.Collections.Immutable;
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
    public static ImmutableArray<Item> Of(Kit kit) => [.. kit.Problem.Owned.Where(item => CanBeSpared(item, kit))];

    private static bool CanBeSpared(Item item, Kit kit)
    {
        var without = kit.Without(item);
        return KeepsFigures(kit.Figures, without.Figures) && KeepsFramings(kit, without) && KeepsReticle(kit, without);
    }

    /// <summary>Taking something away never makes either figure better.</summary>
    private static bool KeepsFigures(LadderFigures kit, LadderFigures without) =>
        Tolerance.AtMost(without.LnLargestStep, kit.LnLargestStep) && Tolerance.AtMost(without.MeanExcess, kit.MeanExcess);

    private static bool KeepsFramings(Kit kit, Kit without) => kit.Problem.Demands.MustFrame.All(framing =>
        FramingRule.Frames(without, framing.WidthDeg, framing.TelescopeIndex) || !FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex));

    private static bool KeepsReticle(Kit kit, Kit without) =>
        kit.Problem.Demands.ReticleLeastPower is not { } least || ReticleRule.Serves(without, least) || !ReticleRule.Serves(kit, least);
}
