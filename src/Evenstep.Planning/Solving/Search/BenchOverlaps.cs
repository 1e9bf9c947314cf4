using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What repeats what on a bench.</summary>
internal sealed partial class Bench
{
    /// <summary>The overlaps that an ocular brings about with what is shown, and with itself.</summary>
    public int OverlapsOf(int place) => overlapsAlone.Value[place];

    /// <summary>The overlaps between a chosen ocular and others: counted for all of them at once, unless few are asked for.</summary>
    public OverlapsOfOne OverlapsWith(int chosen, int asked) =>
        new(this, chosen, overlapsWith[chosen] ?? (asked < OcularCount / FewAsked ? null : CountOverlapsWith(chosen)));

    /// <summary>The overlaps between two oculars.</summary>
    public int OverlapsBetween(int one, int other)
    {
        var count = 0;
        var sights = SightsOf(one);
        var others = SightsOf(other);
        ground.Steps.Count(StepsOfComparison * sights.Length * others.Length);
        foreach (ref readonly var sight in sights)
        {
            count += CountRepeats(sight, others);
        }

        return count;
    }

    /// <summary>Above what is allowed, how far above does not matter.</summary>
    private int OverlapsShown()
    {
        var (count, anyIsBought) = (0, Shown.Any(sight => sight.NeedsPurchase));
        for (var i = 0; i < Shown.Length && anyIsBought; i++)
        {
            ground.Steps.Count(StepsOfComparison * (Shown.Length - i));
            foreach (ref readonly var other in Shown.AsSpan()[(i + 1)..])
            {
                count += (Shown[i].NeedsPurchase || other.NeedsPurchase) && Repeats(Shown[i], other) ? 1 : 0;
            }

            if (OverlapRule.Left(ground.Problem, count) < 0)
            {
                return count;
            }
        }

        return count;
    }

    /// <summary>Kept while there is memory enough; else good until the next is counted.</summary>
    private int[] CountOverlapsWith(int chosen)
    {
        int[] counts;
        if (ground.Budget.MayKeep(Lending.BytesOf<int>(OcularCount)))
        {
            counts = overlapsWith[chosen] = lending.Lend<int>(OcularCount);
        }
        else
        {
            counts = passing ??= lending.Lend<int>(OcularCount);
            Array.Clear(counts);
        }

        foreach (ref readonly var sight in SightsOf(chosen))
        {
            neighbourhoods.Value.CountRepeats(sight, counts);
        }

        return counts;
    }

    private int[] CountOverlapsAlone()
    {
        var counts = lending.Lend<int>(OcularCount);
        foreach (ref readonly var sight in Shown.AsSpan())
        {
            neighbourhoods.Value.CountRepeats(sight, counts);
        }

        for (var place = 0; place < OcularCount; place++)
        {
            var sights = SightsOf(place);
            ground.Steps.Count(StepsOfComparison * sights.Length * sights.Length);
            for (var i = 1; i < sights.Length; i++)
            {
                counts[place] += CountRepeats(sights[i], sights[..i]);
            }
        }

        return counts;
    }

    private int CountRepeats(in Sight one, ReadOnlySpan<Sight> others)
    {
        var count = 0;
        foreach (ref readonly var other in others)
        {
            count += Repeats(one, other) ? 1 : 0;
        }

        return count;
    }

    private bool Repeats(in Sight one, in Sight other) =>
        one.Telescope == other.Telescope && Overlap.Between(one.Shows, other.Shows, leastStep);
}
