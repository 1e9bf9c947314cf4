namespace Evenstep.Planning.Purchases;

/// <summary>No item bought costs more than the most allowed for one item.</summary>
internal static class ItemPriceRule
{
    public static bool Excludes(ItemAlone alone) => !Affords(alone.Problem, alone.Item.ExactPrice);

    public static bool Affords(PurchaseProblem problem, Money price) => !(price > problem.Limits.ExactMaxPricePerItem);
}
