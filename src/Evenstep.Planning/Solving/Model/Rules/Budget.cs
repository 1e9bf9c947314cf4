using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>The sum of prices is at most the budget.</summary>
internal static class Budget
{
    public static void Keep(Master master) =>
        master.Cp.Add(master.Sum(item => item.Cents) <= Math.Min(BudgetRule.Most(master.Problem).Cents, master.Settled.Question.MostCents));
}
