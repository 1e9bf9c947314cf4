namespace Evenstep.Planning.Purchases;

/// <summary>At most so many items are bought.</summary>
internal static class PurchaseCountRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        if (Left(kit.Problem, kit.Purchases.Length) < 0)
        {
            yield return new Breach.MaxPurchases(kit.Purchases.Length, kit.Problem.Limits.MaxPurchases);
        }
    }

    /// <summary>How many more may be bought once so many are; negative if those are too many.</summary>
    public static int Left(PurchaseProblem problem, int bought) => problem.Limits.MaxPurchases - bought;
}

public abstract partial record Breach
{
    public sealed record MaxPurchases(int Count, int Limit) : Breach;
}
