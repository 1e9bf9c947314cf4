using System.Runtime.InteropServices;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>Two choices and the pairs of their views that overlap.</summary>
internal readonly record struct Clash(int One, int Other, int Pairs);

/// <summary>A set of choices, by their indices, beside the Barlows settled: what it leaves open, and what overlaps in it.</summary>
internal sealed class Judged
{
    private const long StepsPerReach = 30;

    private Judged(Settled settled, int[] indices)
    {
        (Settled, Indices) = (settled, indices);
        Telescopes = [.. Enumerable.Range(0, settled.Telescopes).Select(GapsIn)];
        for (var t = 0; t < Telescopes.Length; t++)
        {
            LnStep = Math.Max(LnStep, 2 * Telescopes[t].Mismatch);
            MeanExcess += Telescopes[t].Excess * WeightIn(settled, t);
        }
    }

    public Settled Settled { get; }

    /// <summary>Ascending.</summary>
    public int[] Indices { get; }

    public Gaps[] Telescopes { get; }

    public double LnStep { get; }

    public double MeanExcess { get; }

    public bool KeepsStep => LnStep <= Settled.Question.MostLnStep;

    public bool KeepsExcess => MeanExcess <= Settled.Question.MostExcess;

    public static Judged Of(Settled settled, int[] indices) => new(settled, indices);

    /// <summary>What an integral over one telescope's axis adds to the kit's mean.</summary>
    public static double WeightIn(Settled settled, int telescope) =>
        1 / (settled.Problem.Telescopes[telescope].Axis.Length * settled.Telescopes);

    /// <summary>How much less mean excess there is with one more choice.</summary>
    public double GainOf(int index)
    {
        var gain = 0.0;
        for (var t = 0; t < Telescopes.Length; t++)
        {
            gain += Telescopes[t].Gain(Settled.ReachesIn(t, index)) * WeightIn(Settled, t);
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

    private Gaps GapsIn(int telescope)
    {
        List<Reach> all = [.. Settled.CertainIn(telescope)];
        foreach (var index in Indices)
        {
            all.AddRange(Settled.ReachesIn(telescope, index));
        }

        Settled.Space.Budget.Spend(StepsPerReach * (1 + all.Count));
        var axis = Settled.Problem.Telescopes[telescope].Axis;
        return Gaps.Of(CollectionsMarshal.AsSpan(all), axis.Length, Settled.Problem.EnoughMismatch);
    }
}
