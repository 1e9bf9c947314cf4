using System.Runtime.InteropServices;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>Counts overlapping pairs of views in which a purchase takes part, the Barlows being settled.</summary>
internal sealed class SettledOverlaps
{
    private readonly PurchaseSpace space;
    private readonly Sights[] sights;
    private readonly Step leastStep;
    private readonly WorkBudget budget;
    private readonly List<Showing> views = [];
    private readonly List<Showing> others = [];

    /// <summary>Of what is owned, in each telescope: those of fixed power by power, then the zooms'.</summary>
    private readonly Showing[][] certain;
    private readonly double[][] lnPowers;
    private readonly Dictionary<int, int> ofOne = [];

    /// <param name="space">The problem.</param>
    /// <param name="sights">Alone and through what is owned, then through each Barlow settled.</param>
    public SettledOverlaps(PurchaseSpace space, Sights[] sights)
    {
        (this.space, this.sights, leastStep, budget) = (space, sights, space.Problem.LeastStep, space.Budget);
        var telescopes = space.Problem.Telescopes.Length;
        certain = new Showing[telescopes][];
        lnPowers = new double[telescopes][];
        for (var t = 0; t < telescopes; t++)
        {
            var fixedCount = 0;
            views.Clear();
            foreach (var one in sights)
            {
                views.AddRange(one.OfOwned(t));
            }

            certain[t] = [.. views.Where(view => !view.IsZoom).OrderBy(view => view.LnCutPower), .. views.Where(view => view.IsZoom)];
            fixedCount = views.Count(view => !view.IsZoom);
            lnPowers[t] = [.. certain[t][..fixedCount].Select(view => view.LnCutPower)];
            OfNothing += ThroughBarlows(t);
        }
    }

    public int OfNothing { get; }

    public int Of(Choice choice)
    {
        ref var count = ref CollectionsMarshal.GetValueRefOrAddDefault(ofOne, choice.Index, out var known);
        return known ? count : count = Counted(choice);
    }

    public int Of(Choice one, Choice other)
    {
        var count = 0;
        for (var t = 0; t < certain.Length; t++)
        {
            Collect(one, t, views);
            Collect(other, t, others);
            foreach (ref readonly var view in CollectionsMarshal.AsSpan(views))
            {
                count += Repeats(view, CollectionsMarshal.AsSpan(others));
            }
        }

        return count;
    }

    public IEnumerable<(int Telescope, Showing View)> ViewsOf(Choice choice)
    {
        for (var t = 0; t < certain.Length; t++)
        {
            List<Showing> all = [];
            Collect(choice, t, all);
            foreach (var view in all)
            {
                yield return (t, view);
            }
        }
    }

    private void Collect(Choice choice, int telescope, List<Showing> into)
    {
        into.Clear();
        foreach (var one in sights)
        {
            into.AddRange(one.Of(telescope, choice));
        }
    }

    private int Counted(Choice choice)
    {
        var count = 0;
        for (var t = 0; t < certain.Length; t++)
        {
            Collect(choice, t, views);
            var own = CollectionsMarshal.AsSpan(views);
            for (var i = 0; i < own.Length; i++)
            {
                count += Repeats(own[i], own[..i]) + Repeats(own[i], Near(own[i], t));
            }
        }

        return count;
    }

    /// <summary>Of the views of what is owned only those near in power can overlap one of fixed power, and only zooms a zoom.</summary>
    private ReadOnlySpan<Showing> Near(in Showing view, int telescope)
    {
        var powers = lnPowers[telescope];
        if (view.IsZoom)
        {
            return certain[telescope].AsSpan(powers.Length);
        }

        var distance = Overlap.MostDistance(view, leastStep);
        var first = FirstAbove(powers, view.LnCutPower - distance);
        return certain[telescope].AsSpan(first..FirstAbove(powers, view.LnCutPower + distance));
    }

    private static int FirstAbove(double[] sorted, double value)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = sorted[middle] > value ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    /// <summary>Pairs that owned oculars make through the Barlows settled, among themselves and with what is owned alone.</summary>
    private int ThroughBarlows(int telescope)
    {
        var count = 0;
        List<Showing> before = [.. sights[0].OfOwned(telescope)];
        foreach (var through in sights.AsSpan(1))
        {
            foreach (ref readonly var view in through.OfOwned(telescope))
            {
                count += Repeats(view, CollectionsMarshal.AsSpan(before));
                before.Add(view);
            }
        }

        return count;
    }

    private int Repeats(in Showing view, ReadOnlySpan<Showing> all)
    {
        budget.Spend(1 + all.Length);
        var count = 0;
        foreach (ref readonly var other in all)
        {
            count += Overlap.Between(view, other, leastStep) ? 1 : 0;
        }

        return count;
    }
}
