using System.Runtime.InteropServices;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>Two choices and the pairs of their views that overlap.</summary>
internal readonly record struct Clash(int One, int Other, int Pairs);

/// <summary>What a set leaves open in one telescope.</summary>
/// <param name="Index">Of the telescope.</param>
/// <param name="Weight">What an integral over its axis adds to the kit's mean.</param>
/// <param name="Gaps">What no view reaches.</param>
/// <param name="QualityGaps">What no good view is near to; null where the question does not ask for it.</param>
internal sealed record JudgedTelescope(int Index, double Weight, Gaps Gaps, QualityGaps? QualityGaps);

/// <summary>A set of choices, by their indices, beside the Barlows settled: what it leaves open, and what overlaps in it.</summary>
internal sealed class Judged
{
    private const long StepsPerReach = 30;

    private Judged(Settled settled, int[] indices)
    {
        (Settled, Indices) = (settled, indices);
        Telescopes = [.. settled.Space.Telescopes.Select(JudgedIn)];
        foreach (var one in Telescopes)
        {
            Step = Step.Max(Step, Step.OfMismatch(one.Gaps.Mismatch));
            MeanExcess += one.Gaps.Excess * one.Weight;
            Quality += one.QualityGaps?.Quality ?? 0;
        }
    }

    public Settled Settled { get; }

    /// <summary>Ascending.</summary>
    public int[] Indices { get; }

    /// <summary>Those that count.</summary>
    public JudgedTelescope[] Telescopes { get; }

    public Step Step { get; }

    public double MeanExcess { get; }

    /// <summary>0 where the question does not ask for it.</summary>
    public double Quality { get; }

    public bool KeepsStep => Step.Ln <= Settled.Question.MostStep.Ln;

    public bool KeepsExcess => MeanExcess <= Settled.Question.MostExcess;

    public bool KeepsQuality => Settled.Question.QualityMeasure is null || Quality >= Settled.Question.LeastQuality;

    public static Judged Of(Settled settled, int[] indices) => new(settled, indices);

    /// <summary>How much less mean excess there is with one more choice.</summary>
    public double ExcessGainOf(int index)
    {
        var gain = 0.0;
        foreach (var one in Telescopes)
        {
            gain += one.Gaps.Gain(Settled.ReachesIn(one.Index, index)) * one.Weight;
        }

        return gain;
    }

    /// <summary>How much more quality there is with one more choice; 0 where the question does not ask for it.</summary>
    public double QualityGainOf(int index)
    {
        var gain = 0.0;
        foreach (var one in Telescopes)
        {
            gain += one.QualityGaps?.Gain(Settled.ReachesIn(one.Index, index)) ?? 0;
        }

        return gain;
    }

    /// <summary>The pairs of choices that overlap.</summary>
    public IEnumerable<Clash> Clashes()
    {
        for (var i = 0; i < Indices.Length; i++)
        {
            for (var j = i + 1; j < Indices.Length; j++)
            {
                if (Settled.OverlapsOf(Indices[i], Indices[j]) is > 0 and var pairs)
                {
                    yield return new Clash(Indices[i], Indices[j], pairs);
                }
            }
        }
    }

    private JudgedTelescope JudgedIn(int telescope)
    {
        List<RatedReach> all = [.. Settled.CertainIn(telescope)];
        foreach (var index in Indices)
        {
            all.AddRange(Settled.ReachesIn(telescope, index));
        }

        Settled.Space.Budget.Spend(StepsPerReach * (1 + all.Count));
        all.Sort(RatedReach.ByBeginning);
        var sorted = CollectionsMarshal.AsSpan(all);
        var length = Settled.Problem.Telescopes[telescope].Axis.Length;
        return new JudgedTelescope(
            telescope,
            1 / (length * Settled.Space.Telescopes.Length),
            Gaps.Of(sorted, length, Settled.Problem.MismatchLimits.Enough),
            Settled.Question.QualityMeasure is { } measure ? QualityGaps.Of(measure, telescope, sorted) : null);
    }
}
