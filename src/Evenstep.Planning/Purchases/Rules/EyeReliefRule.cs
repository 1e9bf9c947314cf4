using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// Every eyepiece or zoom bought has, in some telescope where its power without a Barlow is near the range, the eye relief
/// that the observer needs there.
/// </summary>
internal static class EyeReliefRule
{
    public static bool Excludes(ItemAlone alone) => alone.Shortfall == NotUsable.EyeRelief;
}
