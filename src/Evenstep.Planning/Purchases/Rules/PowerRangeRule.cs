using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// Every eyepiece or zoom bought gives a power near the range in some telescope, without a Barlow; every reticle eyepiece
/// bought can reach the power asked, alone or through a Barlow that is owned or for sale.
/// </summary>
internal static class PowerRangeRule
{
    public static bool Excludes(ItemAlone alone) => alone.Item.IsReticle
        ? alone.Problem.Demands.ReticleLeastPower is not { } asked || !ReticleRule.Serves(alone.Problem, alone.Item, alone.Owned.AllBarlows, asked)
        : alone.Shortfall is NotUsable.BelowRange or NotUsable.AboveRange;
}
