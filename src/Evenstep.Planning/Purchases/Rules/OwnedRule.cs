namespace Evenstep.Planning.Purchases;

/// <summary>Nothing is bought that is owned already.</summary>
internal static class OwnedRule
{
    public static bool Excludes(ItemAlone alone) => alone.IsOwned;
}
