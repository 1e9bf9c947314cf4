using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// The mean excess is at most so much, or the quality at least. What a choice gains in either only shrinks where more is
/// bought, so a set gains on another at most the sum of what its choices gain on that one each (Nemhauser and Wolsey, 1981).
/// </summary>
internal sealed class GainCut : Cut
{
    /// <summary>Gains are counted in units of 1e-11, rounded up, and what is needed is rounded down: nothing is ever cut off
    /// that is within the question. Rounding a double is far finer than the slack.</summary>
    private const double UnitsPerGain = 1e11;
    private const double Slack = 0.01;
    private const long StepsPerChoice = 25;

    private readonly long[] units;
    private readonly long least;

    private GainCut(long[] units, long least) => (this.units, this.least) = (units, least);

    public override int Terms => units.Length;

    /// <param name="judged">A set whose excess is too great.</param>
    public static GainCut OfExcess(Judged judged) =>
        Of(judged, judged.ExcessGainOf, judged.MeanExcess - judged.Settled.Question.MostExcess, StepsPerChoice);

    /// <param name="judged">A set whose quality is too low.</param>
    public static GainCut OfQuality(Judged judged) => Of(
        judged,
        judged.QualityGainOf,
        judged.Settled.Question.LeastQuality - judged.Quality,
        StepsPerChoice * judged.Settled.Question.QualityMeasure!.Levels.Length);

    /// <summary>Whether even the best choices within money and number gain too little.</summary>
    public bool IsOutOfReach(Settled settled) => GreatestGain.IsBelow(least, units, settled);

    public override bool Allows(ReadOnlySpan<int> indices)
    {
        var sum = 0L;
        foreach (var index in indices)
        {
            sum += units[index];
        }

        return sum >= least;
    }

    public override void Keep(Master master)
    {
        int[] gaining = [.. Enumerable.Range(0, units.Length).Where(index => units[index] > 0)];
        master.Cp.Add(LinearExpr.WeightedSum(gaining.Select(master.Chosen), gaining.Select(index => units[index])) >= least);
    }

    private static GainCut Of(Judged judged, Func<int, double> gainOf, double needed, long stepsPerChoice)
    {
        var settled = judged.Settled;
        settled.Space.Budget.Spend(stepsPerChoice * settled.Choices.Length * settled.Space.Telescopes.Length);
        var units = new long[settled.Choices.Length];
        for (var index = 0; index < units.Length; index++)
        {
            units[index] = (long)Math.Ceiling((gainOf(index) * UnitsPerGain) + Slack);
        }

        foreach (var index in judged.Indices)
        {
            units[index] = 0;
        }

        var least = (long)Math.Floor((needed * UnitsPerGain) - Slack);
        return WithoutNothings(units, least - Limits.MostPurchases);
    }

    /// <summary>A gain of one unit is none that was rounded up: a set has few of them, and so much less is asked of it instead.
    /// And no choice needs to gain more than all that is asked.</summary>
    private static GainCut WithoutNothings(long[] units, long least)
    {
        foreach (ref var one in units.AsSpan())
        {
            one = one <= 1 ? 0 : Math.Min(one, Math.Max(0, least));
        }

        return new GainCut(units, least);
    }
}
