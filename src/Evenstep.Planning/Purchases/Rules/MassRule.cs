namespace Evenstep.Planning.Purchases;

/// <summary>No item bought is known to be heavier than the most allowed for one item.</summary>
internal static class MassRule
{
    public static bool Excludes(ItemAlone alone) => alone.Item.MassGrams > alone.Problem.Limits.MaxItemMassGrams;
}
