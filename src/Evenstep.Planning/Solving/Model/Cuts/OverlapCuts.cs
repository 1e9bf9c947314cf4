using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// No pair of views overlaps. Where two choices do, they are not bought together; and if two views of fixed power show it,
/// neither are others whose views overlap with both and with each other: plain views whose powers lie within the least
/// step of one another, or of which each shows hardly more sky than those of somewhat higher power.
/// </summary>
internal static class OverlapCuts
{
    public static AtMostOne Of(Settled settled, Clash clash)
    {
        foreach (var (t, one) in settled.ViewsOf(clash.One))
        {
            foreach (var (other, _) in settled.ViewsOf(clash.Other).Where(view => view.Telescope == t).Select(view => (view.View, t)))
            {
                if (!one.IsZoom && Overlap.Between(one, other, settled.Problem.LeastStep))
                {
                    return new AtMostOne(Widened(settled, t, clash, one, other));
                }
            }
        }

        return new AtMostOne([clash.One, clash.Other]);
    }

    private static int[] Widened(Settled settled, int telescope, Clash clash, in Showing one, in Showing other)
    {
        SortedSet<int> indices = [clash.One, clash.Other];
        List<Showing> all = [one, other];
        var leastStep = settled.Problem.LeastStep;
        for (var index = 0; index < settled.Choices.Length; index++)
        {
            foreach (ref readonly var view in settled.PlainIn(telescope, index))
            {
                if (!indices.Contains(index) && OverlapsAll(view, all, leastStep))
                {
                    indices.Add(index);
                    all.Add(view);
                }
            }
        }

        settled.Space.Budget.Spend(settled.Choices.Length * 4L);
        return [.. indices];
    }

    private static bool OverlapsAll(in Showing view, List<Showing> all, Step leastStep)
    {
        if (view.IsZoom || view.Barlow is not null)
        {
            return false;
        }

        foreach (var other in all)
        {
            if (!Overlap.Between(view, other, leastStep))
            {
                return false;
            }
        }

        return true;
    }
}
