using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The first stage: the least largest step.</summary>
public sealed partial class SearchEngine
{
    /// <summary>
    /// The least logarithm of the largest step, or of the step that is enough. Bench by bench the best known is undercut until
    /// nothing undercuts it; far from the bound, half the distance is tried at once.
    /// </summary>
    private void FindLeastLargestStep()
    {
        if (LookForEnough() is ({ } set, { } enough))
        {
            first = new LeastStep(enough, LnEnough, IsLeast: true, set);
            return;
        }

        lnLeastSteps.AddRange(benches.ByPowers.Select(bench => Math.Max(LnEnough, bench.LnLeastStep)));
        areAllAsked = true;
        first = new LeastStep(null, Problem.Telescopes.Max(telescope => 2 * telescope.Axis.Length) + 1);
        foreach (var (index, bench) in benches.ByPowers.Index())
        {
            Undercut(bench, lnLeastSteps[index]);
        }

        first = first with { IsLeast = !effort.IsSpent };
    }

    /// <summary>Finds the best that a bench has, if that is better than what is known.</summary>
    private void Undercut(Bench bench, double bound)
    {
        var isFromHere = false;
        while (Tolerance.Above(first.LnLeast, bound) && !effort.IsSpent)
        {
            var halves = isFromHere && first.LnLeast - bound > Close;
            var threshold = halves ? (first.LnLeast + bound) / 2 : Math.Max(0, first.LnLeast - (2 * Tolerance.Value));
            var found = AnyKeepingTo(threshold, bench, effort);
            if (found.Selection is { } better)
            {
                (first, isFromHere) = (new LeastStep(better, Math.Max(found.LnLargestStep, LnEnough)), true);
            }
            else if (!effort.IsSpent)
            {
                bound = halves ? threshold : first.LnLeast;
            }
        }
    }

    /// <summary>Often some set does as well as any could, and is found soon.</summary>
    private (BarlowSet? Set, Selection? Selection) LookForEnough()
    {
        IEnumerable<Bench> undecided = benches.ByPowers;
        foreach (var nodes in (ReadOnlySpan<long>)[NodesOfShortLook, NodesOfLongerLook])
        {
            List<BarlowSet> unfinished = [];
            foreach (var bench in undecided)
            {
                var look = effort.Short(nodes);
                if (AnyKeepingTo(LnEnough, bench, look).Selection is { } enough)
                {
                    return (bench.Set, enough);
                }

                if (look.IsSpent)
                {
                    unfinished.Add(bench.Set);
                }
            }

            undecided = unfinished.Select(benches.Of);
        }

        return default;
    }

    private AnySet AnyKeepingTo(double lnStep, Bench bench, Effort looked)
    {
        var any = new AnySet();
        Descend(bench, lnStep, any, bench.Reticle.Cheapest, looked);
        return any;
    }

    /// <param name="Selection">A set with that step, if any is allowed.</param>
    /// <param name="LnLeast">The least known.</param>
    /// <param name="IsLeast">Whether no set has less.</param>
    /// <param name="Enough">The Barlows of the set if all its steps are enough: then it leaves no excess.</param>
    private sealed record LeastStep(Selection? Selection, double LnLeast, bool IsLeast = false, BarlowSet? Enough = null)
    {
        /// <summary>The logarithm of the largest step that the later stages keep to.</summary>
        public double LnAllowed => StageValues.StepLeeway * LnLeast;
    }
}
