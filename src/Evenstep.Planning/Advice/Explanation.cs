using System.Collections.Immutable;
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
    public static ImmutableArray<ExplainedPurchase> Of(PurchaseProblem problem, Plan plan)
    {
        var kit = Kit.Of(problem, plan.Purchases);
        return
        [
            .. BuyingOrder(problem, plan.Purchases).Select((item, place) =>
            {
                var without = Kit.Of(problem, plan.Purchases.Remove(item));
                return new ExplainedPurchase(item, place + 1, without.Figures, Reasons.For(item, kit, without, plan.Wish));
            }),
        ];
    }

    /// <summary>First the item after which the largest step is least, then the next, and so on; ties go to the least mean
    /// excess, then the lower price, then the id.</summary>
    public static ImmutableArray<Item> BuyingOrder(PurchaseProblem problem, ImmutableArray<Item> purchases)
    {
        var order = ImmutableArray.CreateBuilder<Item>();
        while (order.Count < purchases.Length)
        {
            order.Add(purchases.Except(order).Aggregate((best, item) => IsBetterNext(item, best) ? item : best));
        }

        return order.ToImmutable();

        bool IsBetterNext(Item item, Item best)
        {
            var (a, b) = (FiguresWith(item), FiguresWith(best));
            return Differ(a.LnLargestStep, b.LnLargestStep) ? a.LnLargestStep < b.LnLargestStep
                : Differ(a.MeanExcess, b.MeanExcess) ? a.MeanExcess < b.MeanExcess
                : item.Price != best.Price ? item.Price < best.Price
                : string.CompareOrdinal(item.Id, best.Id) < 0;
        }

        LadderFigures FiguresWith(Item item) => Kit.Of(problem, order.Append(item)).Figures;

        static bool Differ(double a, double b) => Math.Abs(a - b) > Tolerance.Value;
    }
}
