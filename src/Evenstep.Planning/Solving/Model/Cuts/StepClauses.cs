using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// The largest step is at most so much: every position of a telescope that counts has a view within half of it. Where a set leaves a gap that is too
/// wide, some choice that reaches a position in it must be bought.
/// </summary>
internal static class StepClauses
{
    /// <summary>So much farther a view may lie and still reach a position: nothing is cut off by rounding.</summary>
    private const double Lenience = 1e-12;

    /// <summary>So far within a gap its positions are chosen, beyond what its ends reach.</summary>
    private const double Inside = 1e-9;

    /// <summary>One for each gap that is too wide: of the positions tried, the one that the fewest choices reach.</summary>
    public static IEnumerable<AtLeastOne> Of(Judged judged)
    {
        var settled = judged.Settled;
        var reach = settled.Question.MostStep.Half;
        foreach (var (telescope, _, gaps, _) in judged.Telescopes)
        {
            var length = settled.Problem.Telescopes[telescope].Axis.Length;
            foreach (var gap in gaps.All.Where(gap => gap.Mismatch > reach))
            {
                yield return new AtLeastOne(
                    Positions(gap, reach, length).Select(at => Reaching(settled, telescope, at, reach)).MinBy(choices => choices.Length)!);
            }
        }
    }

    private static IEnumerable<double> Positions(Gap gap, double reach, double length)
    {
        var inside = Math.Min(Inside, (gap.Mismatch - reach) / 2);
        if (gap.IsLowEnd)
        {
            yield return 0;
        }

        if (gap.IsHighEnd)
        {
            yield return length;
        }

        if (!gap.IsLowEnd)
        {
            yield return Math.Clamp(gap.From + reach + inside, 0, length);
        }

        if (!gap.IsHighEnd)
        {
            yield return Math.Clamp(gap.To - reach - inside, 0, length);
        }

        if (gap.IsLowEnd == gap.IsHighEnd)
        {
            yield return (gap.From + gap.To) / 2;
        }
    }

    private static int[] Reaching(Settled settled, int telescope, double at, double reach)
    {
        List<int> indices = [];
        for (var index = 0; index < settled.Choices.Length; index++)
        {
            if (Reaches(settled.ReachesIn(telescope, index), at, reach + Lenience))
            {
                indices.Add(index);
            }
        }

        settled.Space.Budget.Spend(settled.ReachesIn(telescope).Length + settled.Choices.Length);
        return [.. indices];
    }

    private static bool Reaches(ReadOnlySpan<RatedReach> reaches, double at, double reach)
    {
        foreach (var one in reaches)
        {
            if (one.From - reach <= at && at <= one.To + reach)
            {
                return true;
            }
        }

        return false;
    }
}
