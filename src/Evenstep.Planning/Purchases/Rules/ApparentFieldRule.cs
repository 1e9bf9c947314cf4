using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>Every eyepiece or zoom bought has at least the narrowest apparent field that the request puts up with.</summary>
internal static class ApparentFieldRule
{
    public static bool Excludes(ItemAlone alone) => alone.Shortfall == NotUsable.ApparentField;
}
