using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// The sights of all offered oculars by telescope and power, in stretches as long as the least step: whatever a view of
/// fixed power repeats lies in its own stretch or few from it. Zooms, which repeat only zooms, have one stretch a telescope.
/// </summary>
internal sealed class Neighbourhoods
{
    /// <summary>In the logarithm of power: a least step near 1 makes no shorter stretches.</summary>
    private const double Shortest = 0.05;

    /// <summary>Of comparing two views, one of which is to be fetched first.</summary>
    private const long StepsOfComparison = 5;

    private const long StepsOfPlacing = 12;

    private readonly ImmutableArray<TelescopeInUse> telescopes;
    private readonly Step leastStep;
    private readonly double length;
    private readonly int[] firstOfTelescope;
    private readonly int[] ends;
    private readonly Bench bench;
    private readonly StepCounter steps;
    private readonly (int Place, int Index)[] sights;

    public Neighbourhoods(Bench bench, Groundwork ground)
    {
        var problem = ground.Problem;
        this.bench = bench;
        telescopes = problem.Telescopes;
        leastStep = problem.LeastStep;
        length = Math.Max(Shortest, leastStep.Ln);
        firstOfTelescope = new int[telescopes.Length + 1];
        for (var t = 0; t < telescopes.Length; t++)
        {
            // One for zooms, the rest for fixed powers; the last is never reached, and spares a look at the end.
            firstOfTelescope[t + 1] = firstOfTelescope[t] + 3 + (int)((telescopes[t].Axis.LnHighest - telescopes[t].Axis.LnLowest) / length);
        }

        ends = new int[firstOfTelescope[^1] + 1];
        steps = ground.Steps;
        sights = Sorted();
    }

    /// <summary>Adds to each ocular's count how many of its sights repeat this one.</summary>
    public void CountRepeats(in Sight one, int[] counts)
    {
        var stretch = StretchOf(one);
        var far = (int)Math.Ceiling(Overlap.MostDistance(one.Shows, leastStep) / length);
        var (first, last) = one.Shows.IsZoom
            ? (stretch, stretch)
            : (Math.Max(stretch - far, firstOfTelescope[one.Telescope] + 1), Math.Min(stretch + far, firstOfTelescope[one.Telescope + 1] - 1));
        var start = first == 0 ? 0 : ends[first - 1];
        steps.Count(StepsOfComparison * (ends[last] - start));
        for (var i = start; i < ends[last]; i++)
        {
            var (place, index) = sights[i];
            if (Overlap.Between(one.Shows, bench.SightsOf(place)[index].Shows, leastStep))
            {
                counts[place]++;
            }
        }
    }

    private (int Place, int Index)[] Sorted()
    {
        for (var place = 0; place < bench.OcularCount; place++)
        {
            foreach (ref readonly var sight in bench.SightsOf(place))
            {
                ends[StretchOf(sight) + 1]++;
            }
        }

        for (var i = 1; i < ends.Length; i++)
        {
            ends[i] += ends[i - 1];
        }

        // Until a stretch is filled, its end is where the next sight goes; the end of the last one is the number of all.
        steps.Count(StepsOfPlacing * ends[^1]);
        var sorted = bench.Lend<(int, int)>(ends[^1]);
        for (var place = 0; place < bench.OcularCount; place++)
        {
            var ofPlace = bench.SightsOf(place);
            for (var i = 0; i < ofPlace.Length; i++)
            {
                sorted[ends[StretchOf(ofPlace[i])]++] = (place, i);
            }
        }

        return sorted;
    }

    private int StretchOf(in Sight sight) => firstOfTelescope[sight.Telescope]
        + (sight.Shows.IsZoom ? 0 : 1 + (int)((sight.Shows.LnCutPower - telescopes[sight.Telescope].Axis.LnLowest) / length));
}
