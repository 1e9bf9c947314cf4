using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="BudgetRule"/>, and what the question allows to be spent.</summary>
internal static class Budget
{
    public static void Keep(Master master) =>
        master.Cp.Add(Measure.Price.In(master) <= Money.Min(BudgetRule.Most(master.Problem), master.Settled.Question.MostTotalPrice).Hundredths);
}
