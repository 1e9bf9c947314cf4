using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>One purchase of a plan, explained.</summary>
/// <param name="Item">What to buy.</param>
/// <param name="Order">From 1: when to buy it, if the money comes bit by bit.</param>
/// <param name="WithoutIt">The kit's figures if this one item were not bought.</param>
/// <param name="Reasons">Why it is in the plan; at least one.</param>
public sealed record ExplainedPurchase(Item Item, int Order, LadderFigures WithoutIt, ImmutableArray<Remark> Reasons);

/// <summary>Says what each purchase of a plan is for, and in what order to buy.</summary>
public static class Explanation
{
    /// <summary>The purchases in the order to buy them in.</summary>
    public static ImmutableArray<ExplainedPurchase> Of(PurchaseProblem problem, Plan plan) => Of(Kit.Of(problem, plan.Purchases), plan.Wish);

    /// <summary>The same of the plan's kit.</summary>
    /// <param name="kit">With the plan's purchases.</param>
    /// <param name="wish">The plan's.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<ExplainedPurchase> Of(Kit kit, WideViewWish? wish, WorkBudget? budget = null) =>
    [
        .. BuyingOrder(kit, budget).Select((item, place) =>
        {
            budget?.Look();
            var without = kit.Without(item);
            return new ExplainedPurchase(item, place + 1, without.Figures, Reasons.For(item, kit, without, wish));
        }),
    ];

    /// <summary>First the item after which the largest step is least, then the next, and so on; ties go to the least mean
    /// excess, then the lower price, then the id.</summary>
    public static ImmutableArray<Item> BuyingOrder(PurchaseProblem problem, ImmutableArray<Item> purchases) =>
        BuyingOrder(Kit.Of(problem, purchases), budget: null);

    /// <summary>The same of a kit's purchases.</summary>
    /// <param name="kit">With all of them.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Item> BuyingOrder(Kit kit, WorkBudget? budget)
    {
        var order = ImmutableArray.CreateBuilder<Item>();
        var parts = new PartsOfKit(kit, budget);
        while (order.Count < kit.Purchases.Length)
        {
            var left = kit.Purchases.RemoveRange(order);
            var steps = left.Select(item => new NextStep(item, FiguresAfter(order, item)));
            order.Add(steps.Aggregate((best, next) => next.IsBetterThan(best) ? next : best).Item);

            // Of what is owned and bought once more the views of the one cannot be told from those of the other.
            LadderFigures FiguresAfter(IEnumerable<Item> bought, Item next) => left.Any(kit.Problem.Owned.Contains)
                ? Kit.Of(kit.Problem, bought.Append(next)).Figures
                : parts.Without([.. left.Remove(next)]);
        }

        return order.ToImmutable();
    }

    /// <summary>What might be bought next, and the kit's figures after it.</summary>
    private sealed record NextStep(Item Item, LadderFigures Figures)
    {
        public bool IsBetterThan(NextStep other) =>
            Differ(Figures.LnLargestStep, other.Figures.LnLargestStep) ? Figures.LnLargestStep < other.Figures.LnLargestStep
            : Differ(Figures.MeanExcess, other.Figures.MeanExcess) ? Figures.MeanExcess < other.Figures.MeanExcess
            : Item.ExactPrice != other.Item.ExactPrice ? Item.ExactPrice < other.Item.ExactPrice
            : string.CompareOrdinal(Item.Id, other.Item.Id) < 0;

        private static bool Differ(double a, double b) => Math.Abs(a - b) > Tolerance.Value;
    }
}
