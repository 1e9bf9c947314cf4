namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>At most so many items are bought.</summary>
internal static class PurchaseCount
{
    public static void Keep(PurchaseModel model) =>
        model.Cp.Add(model.Sum(_ => 1) <= model.Problem.Limits.MaxPurchases);
}
