using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The order to buy a kit's purchases in when the money comes bit by bit: first the item after which the largest step is least,
/// then the next, and so on; ties go to the least mean excess, then the lower price, then the id. A Barlow waits until there is
/// something to look at through it.
/// </summary>
public static class BuyingOrder
{
    /// <param name="kit">With all of them.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Item> Of(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget = null)
    {
        var order = ImmutableArray.CreateBuilder<Item>();
        var parts = new PartsOfKit(kit, budget);
        while (order.Count < kit.Purchases.Length)
        {
            var left = kit.Purchases.RemoveRange(order);
            var ready = left.RemoveAll(item => Waits(item, order, kit));
            var steps = (ready.IsEmpty ? left : ready).Select(item => new NextStep(item, FiguresAfter(order, item)));
            order.Add(steps.Aggregate((best, next) => next.IsBetterThan(best) ? next : best).Item);

            // Of what is owned and bought once more the views of the one cannot be told from those of the other.
            LadderFigures FiguresAfter(IEnumerable<Item> bought, Item next) => left.Any(kit.Problem.Owned.Contains)
                ? Kit.Of(kit.Problem, bought.Append(next)).FiguresIn(telescopes)
                : parts.Without(telescopes, left.Remove(next));
        }

        return order.ToImmutable();
    }

    /// <summary>Whether it is a Barlow that gives no usable view, and no reticle more power, with what is there by then.</summary>
    private static bool Waits(Item item, IReadOnlyCollection<Item> bought, Kit kit)
    {
        if (!item.IsBarlow)
        {
            return false;
        }

        bool IsThere(Item eyepiece) => kit.Problem.Owned.Contains(eyepiece) || bought.Contains(eyepiece);

        return !kit.Ladders.Any(ladder => ladder.Usable.Any(view => item.Equals(view.Barlow) && IsThere(view.Eyepiece)))
            && !kit.Items.Any(reticle => reticle.IsReticle && IsThere(reticle) && RaisesPower(item, reticle, kit.Problem.Telescopes));
    }

    private static bool RaisesPower(Item barlow, Item reticle, ImmutableArray<TelescopeInUse> telescopes) =>
        Reticle.HighestPower(reticle, [barlow], telescopes) > Reticle.HighestPower(reticle, [], telescopes);

    /// <summary>What might be bought next, and the kit's figures after it.</summary>
    private sealed record NextStep(Item Item, LadderFigures Figures)
    {
        public bool IsBetterThan(NextStep other) =>
            Differ(Figures.LargestStep.Ln, other.Figures.LargestStep.Ln) ? Figures.LargestStep.Ln < other.Figures.LargestStep.Ln
            : Differ(Figures.MeanExcess, other.Figures.MeanExcess) ? Figures.MeanExcess < other.Figures.MeanExcess
            : Item.ExactPrice != other.Item.ExactPrice ? Item.ExactPrice < other.Item.ExactPrice
            : string.CompareOrdinal(Item.Id, other.Item.Id) < 0;

        private static bool Differ(double a, double b) => Math.Abs(a - b) > Tolerance.Value;
    }
}
