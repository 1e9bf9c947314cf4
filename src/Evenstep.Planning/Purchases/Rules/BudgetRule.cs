namespace Evenstep.Planning.Purchases;

/// <summary>The sum of prices is at most the budget.</summary>
internal static class BudgetRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        if (!Affords(kit.Problem, kit.Purchases.Sum(item => item.ExactPrice)))
        {
            yield return new Breach.Budget(kit.TotalPrice, kit.Problem.Limits.Budget);
        }
    }

    /// <summary>Whether the item alone costs more than all may cost together.</summary>
    public static bool Excludes(ItemAlone alone) => !Affords(alone.Problem, alone.Item.ExactPrice);

    public static bool Affords(PurchaseProblem problem, Money price) => price <= Most(problem);

    /// <summary>What all purchases together may cost.</summary>
    public static Money Most(PurchaseProblem problem) => problem.Limits.ExactBudget;
}

public abstract partial record Breach
{
    public sealed record Budget(decimal TotalPrice, decimal Limit) : Breach;
}
