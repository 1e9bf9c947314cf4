using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// The sets of Barlows, the empty one included, that the limits allow and the budget affords. With the Barlows settled no
/// view depends on two choices any more.
/// </summary>
/// <param name="All">Fewer Barlows first.</param>
/// <param name="IsComplete">False if there are too many to look at: then these are only the first.</param>
internal sealed record BarlowSets(ImmutableArray<ImmutableArray<Choice>> All, bool IsComplete)
{
    /// <summary>Several Barlows make more sets than could ever be looked at; with at most one there are as many as Barlows.</summary>
    private const int MostOfSeveral = 2000;

    /// <param name="space">What is for sale.</param>
    /// <param name="useful">Barlows beyond this number, besides the demanded, are of no use to the question.</param>
    /// <param name="mostTotalPrice">What all purchases together may cost, besides the budget; null for no such bound.</param>
    public static BarlowSets Of(PurchaseSpace space, int useful, Money? mostTotalPrice = null)
    {
        ImmutableArray<Choice> demanded = [.. space.Choices.Where(choice => IsBarlow(choice) && choice.IsDemanded)];
        Choice[] others = [.. space.Choices.Where(choice => IsBarlow(choice) && !choice.IsDemanded)];
        var room = Math.Min(BarlowCountRule.Left(space.Problem, demanded.Length), PurchaseCountRule.Left(space.Problem, demanded.Length));
        if (room < 0)
        {
            return new BarlowSets([], IsComplete: true);
        }

        var money = Money.Min(BudgetRule.Most(space.Problem), mostTotalPrice ?? Money.MaxValue) - demanded.Sum(choice => choice.LeastPrice);
        return Listed(demanded, others, Math.Min(room, useful), money);
    }

    private static bool IsBarlow(Choice choice) => choice.Representative.IsBarlow;

    private static BarlowSets Listed(ImmutableArray<Choice> demanded, Choice[] others, int room, Money money)
    {
        List<ImmutableArray<Choice>> all = money < Money.Zero ? [] : [demanded];
        List<(ImmutableArray<Choice> Set, int Next, Money MoneyLeft)> last = [(demanded, 0, money)];
        for (var size = 1; size <= room; size++)
        {
            List<(ImmutableArray<Choice> Set, int Next, Money MoneyLeft)> larger = [];
            foreach (var (set, next, left) in last)
            {
                for (var i = next; i < others.Length; i++)
                {
                    if (others[i].LeastPrice <= left)
                    {
                        larger.Add((set.Add(others[i]), i + 1, left - others[i].LeastPrice));
                    }

                    if (size > 1 && all.Count + larger.Count > MostOfSeveral)
                    {
                        return new BarlowSets([.. all], IsComplete: false);
                    }
                }
            }

            all.AddRange(larger.Select(one => one.Set));
            last = larger;
        }

        return new BarlowSets([.. all], IsComplete: true);
    }
}
