using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>One purchase of a plan, explained.</summary>
/// <param name="Item">What to buy.</param>
/// <param name="Order">From 1: when to buy it, if the money comes bit by bit.</param>
/// <param name="WithoutIt">The kit's figures if this one item were not bought, over the telescopes that count.</param>
/// <param name="Reasons">Why it is in the plan; at least one.</param>
public sealed record ExplainedPurchase(Item Item, int Order, LadderFigures WithoutIt, ImmutableArray<Remark> Reasons);

/// <summary>Says what each purchase of a plan is for.</summary>
public static class Explanation
{
    /// <summary>The purchases in the order to buy them in.</summary>
    public static ImmutableArray<ExplainedPurchase> Of(PurchaseProblem problem, Plan plan) => Of(Kit.Of(problem, plan.Purchases), plan);

    /// <summary>The same of the plan's kit.</summary>
    /// <param name="kit">With the plan's purchases.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<ExplainedPurchase> Of(Kit kit, Plan plan, WorkBudget? budget = null)
    {
        var telescopes = plan.Candidacy.Telescopes;
        return
        [
            .. BuyingOrder.Of(kit, telescopes, budget).Select((item, index) =>
            {
                budget?.Look();
                var without = kit.Without(item);
                return new ExplainedPurchase(item, index + 1, without.FiguresIn(telescopes), Reasons.For(item, kit, without, plan));
            }),
        ];
    }
}
