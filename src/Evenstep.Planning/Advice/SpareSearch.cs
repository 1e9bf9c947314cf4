using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The largest set of owned items that can be given away at once, by branch and bound over how many of those that are spare one
/// at a time must be kept after all: none, one, two, and so on. Where the kit without them falls short at some power or in some
/// field, one of the items that make a view there must be kept, so that few need to be tried.
/// </summary>
internal sealed class SpareSearch
{
    private readonly ImmutableArray<Item> owned;
    private readonly SpareTest test;
    private readonly WorkBudget budget;

    /// <summary>By index: may still be given away; must be kept; and the two together, or what is not spare alone.</summary>
    private readonly bool[] isOpen;
    private readonly bool[] isKept;
    private readonly bool[] isLeft;

    private decimal bestPrice;
    private bool[]? best;

    public SpareSearch(Kit kit, SpareTest test, WorkBudget budget)
    {
        (owned, this.test, this.budget) = (kit.Problem.Owned, test, budget);
        isOpen = [.. owned.Select((_, index) => test.IsAsGoodWithout(index))];
        isKept = [.. isOpen.Select(open => !open)];
        isLeft = [.. isOpen.Select(_ => true)];
    }

    /// <summary>Null if the budget ended first.</summary>
    public ImmutableArray<Item>? Run()
    {
        var most = isOpen.Count(open => open);
        for (var kept = 0; kept <= most && best is null; kept++)
        {
            Keep(kept, 0);
            if (budget.IsSpent)
            {
                return null;
            }
        }

        return best is null ? [] : [.. owned.Where((_, index) => !best[index])];
    }

    /// <summary>Tries to keep so many more of those still open, of which the prices are to add up to least.</summary>
    private void Keep(int more, decimal keptPrice)
    {
        if (budget.IsSpent || (best is not null && keptPrice > bestPrice))
        {
            return;
        }

        if (more == 0)
        {
            if (test.IsAsGood(isKept) && (best is null || keptPrice < bestPrice || IsFirst(isKept, best)))
            {
                (best, bestPrice) = ([.. isKept], keptPrice);
            }

            return;
        }

        if (!test.IsAsGood(isLeft))
        {
            return;
        }

        List<int> given = [];
        foreach (var index in Branches())
        {
            if (HasBetterAlike(index))
            {
                continue;
            }

            (isOpen[index], isKept[index]) = (false, true);
            Keep(more - 1, keptPrice + owned[index].Price);
            (isKept[index], isLeft[index]) = (false, false);
            given.Add(index);
        }

        foreach (var index in given)
        {
            (isOpen[index], isLeft[index]) = (true, true);
        }
    }

    /// <summary>Whether one that is still open is made like it, and better kept: of what is exchangeable not every choice is tried.</summary>
    private bool HasBetterAlike(int index)
    {
        for (var other = 0; other < owned.Length; other++)
        {
            var isBetter = owned[other].Price < owned[index].Price || (owned[other].Price == owned[index].Price && other > index);
            if (isOpen[other] && isBetter && owned[other].Optic.Equals(owned[index].Optic))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Of two sets kept, as many and as dear, the one that gives away what comes first in the list.</summary>
    private static bool IsFirst(bool[] kept, bool[] other)
    {
        var index = kept.AsSpan().CommonPrefixLength(other);
        return index < kept.Length && !kept[index];
    }

    /// <summary>Of which one must be kept.</summary>
    private int[] Branches()
    {
        for (var t = 0; t < test.ViewsOf.Length; t++)
        {
            if (test.LeastFieldDeg(t) > 0 && NeededFor(t, view => Tolerance.AtLeast(view.View.TrueFieldDeg / test.LeastFieldDeg(t), 1)) is { } wide)
            {
                return wide;
            }
        }

        foreach (var t in test.Telescopes)
        {
            if (PositionNotReached(t) is { } position && NeededFor(t, view => Tolerance.AtMost(Mismatch(view.Reach, position), test.MostMismatch)) is { } near)
            {
                return near;
            }
        }

        return Open(_ => true);
    }

    /// <summary>The items still open that make one of these views with what is left; null if some such view needs none of them.</summary>
    private int[]? NeededFor(int telescope, Func<KitView, bool> serves)
    {
        var needed = new bool[owned.Length];
        foreach (var view in test.ViewsOf[telescope])
        {
            if (view.IsLeft(isLeft) && serves(view.View))
            {
                if (view.IsLeft(isKept))
                {
                    return null;
                }

                Note(view.Eyepiece);
                Note(view.Barlow);
            }
        }

        return Open(index => needed[index]);

        void Note(int index)
        {
            if (index != SpareView.NotOwned)
            {
                needed[index] = true;
            }
        }
    }

    private int[] Open(Func<int, bool> counts) => [.. Enumerable.Range(0, owned.Length).Where(index => isOpen[index] && counts(index))];

    /// <summary>A position farther from every view that is kept than is as good; null if there is none.</summary>
    private double? PositionNotReached(int telescope)
    {
        var (length, most) = (test.LengthOf(telescope), test.MostMismatch);
        var reached = 0.0;
        var isFirst = true;
        foreach (var reach in test.ViewsOf[telescope].Where(view => view.IsLeft(isKept)).Select(view => view.View.Reach).OrderBy(reach => reach.From))
        {
            if (isFirst ? Tolerance.Above(reach.From, most) : Tolerance.Above(reach.From - reached, 2 * most))
            {
                return isFirst ? 0 : (reached + reach.From) / 2;
            }

            (reached, isFirst) = (Math.Max(reached, reach.To), false);
        }

        return isFirst || Tolerance.Above(length - reached, most) ? length : null;
    }

    private static double Mismatch(Reach reach, double position) => Math.Max(0, Math.Max(reach.From - position, position - reach.To));
}
