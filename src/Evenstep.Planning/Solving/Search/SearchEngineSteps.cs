using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The first stage: the least largest step.</summary>
public sealed partial class SearchEngine
{
    /// <summary>
    /// The least largest step, or the step that is enough. Bench by bench the best known is undercut until
    /// nothing undercuts it; far from the bound, half the distance is tried at once.
    /// </summary>
    private void FindLeastLargestStep()
    {
        if (LookForEnough() is ({ } set, { } enough))
        {
            first = new LeastStep(enough, Problem.EnoughStep, IsLeast: true, set);
            return;
        }

        leastSteps.AddRange(benches.ByPowers.Select(bench => Step.Max(Problem.EnoughStep, bench.LeastStep)));
        areAllAsked = true;
        first = new LeastStep(null, new Step(Problem.Telescopes.Max(telescope => 2 * telescope.Axis.Length) + 1));
        foreach (var (index, bench) in benches.ByPowers.Index())
        {
            Undercut(bench, leastSteps[index]);
        }

        first = first with { IsLeast = !effort.IsSpent };
    }

    /// <summary>Finds the best that a bench has, if that is better than what is known.</summary>
    private void Undercut(Bench bench, Step bound)
    {
        var isFromHere = false;
        while (first.Least.Above(bound) && !effort.IsSpent)
        {
            var halves = isFromHere && first.Least.Ln - bound.Ln > Close;
            var threshold = new Step(halves ? (first.Least.Ln + bound.Ln) / 2 : Math.Max(0, first.Least.Ln - (2 * Tolerance.Value)));
            var found = AnyKeepingTo(threshold, bench, effort);
            if (found.Selection is { } better)
            {
                (first, isFromHere) = (new LeastStep(better, Step.Max(found.LargestStep, Problem.EnoughStep)), true);
            }
            else if (!effort.IsSpent)
            {
                bound = halves ? threshold : first.Least;
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
                if (AnyKeepingTo(Problem.EnoughStep, bench, look).Selection is { } enough)
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

    private AnySet AnyKeepingTo(Step step, Bench bench, Effort looked)
    {
        var any = new AnySet();
        Descend(bench, step, any, bench.Reticle.Cheapest, looked);
        return any;
    }

    /// <param name="Selection">A set with that step, if any is allowed.</param>
    /// <param name="Least">The least known.</param>
    /// <param name="IsLeast">Whether no set has less.</param>
    /// <param name="Enough">The Barlows of the set if all its steps are enough: then it leaves no excess.</param>
    private sealed record LeastStep(Selection? Selection, Step Least, bool IsLeast = false, BarlowSet? Enough = null)
    {
        /// <summary>The largest step that the later stages keep to.</summary>
        public Step Allowed => Least.Widened(StageValues.StepLeeway);
    }
}
