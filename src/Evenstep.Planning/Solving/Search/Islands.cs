using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>An axis as the search sees it: its length, what mismatch is good enough, and how much its excess weighs.</summary>
internal readonly record struct Shore(double Length, double Enough, double Weight)
{
    /// <summary>The excess along a side of a gap, on which the mismatch rises from 0.</summary>
    public double OfSide(double side)
    {
        var over = side - Enough;
        return over > 0 ? over * over / 2 * Weight : 0;
    }

    public double OfGap(double gap) => 2 * OfSide(gap / 2);

    public double OfNothing => Math.Max(0, Length - Enough) * Length * Weight;

    /// <summary>The axes of all telescopes. One that stands aside has no length, and so neither gaps nor excess.</summary>
    /// <param name="problem">Whose telescopes.</param>
    /// <param name="telescopes">Those that count, by their indices.</param>
    public static Shore[] All(PurchaseProblem problem, ImmutableArray<int> telescopes) =>
    [
        .. problem.Telescopes.Select((telescope, t) => telescopes.Contains(t)
            ? new Shore(telescope.Axis.Length, problem.MismatchLimits.Enough, 1 / (telescope.Axis.Length * telescopes.Length))
            : default),
    ];
}

/// <summary>
/// The positions of one axis that views reach, as islands in ascending order that do not touch, with the mean excess that
/// the gaps between them leave. Kept up to date from view to view: a view only changes the gap it lands in.
/// </summary>
internal sealed class Islands(Shore shore)
{
    /// <summary>A bound may promise a little too much, never too little.</summary>
    private const double Slack = 1e-6;

    /// <summary>Something must lie beyond a place to cover it, and not only touch it.</summary>
    private const double Sliver = 1e-12;

    private const int FirstCapacity = 16;

    private double[] from = new double[FirstCapacity];
    private double[] to = new double[FirstCapacity];
    private int count;

    public Shore Shore { get; } = shore;

    /// <summary>This axis' part of the kit's mean excess.</summary>
    public double Excess { get; private set; } = shore.OfNothing;

    public void Clear()
    {
        count = 0;
        Excess = Shore.OfNothing;
    }

    public void CopyFrom(Islands other)
    {
        count = other.count;
        MakeRoom();
        Array.Copy(other.from, from, count);
        Array.Copy(other.to, to, count);
        Excess = other.Excess;
    }

    /// <summary>Joins a reach to the islands it touches, or makes it one of its own.</summary>
    public void Add(Reach reach)
    {
        var (first, after) = Touched(reach);
        Excess -= Gain(reach, first, after);
        var (start, end) = first < after
            ? (Math.Min(reach.From, from[first]), Math.Max(reach.To, to[after - 1]))
            : (reach.From, reach.To);
        var behind = count - after;
        MakeRoom();
        Array.Copy(from, after, from, first + 1, behind);
        Array.Copy(to, after, to, first + 1, behind);
        from[first] = start;
        to[first] = end;
        count = first + 1 + behind;
    }

    /// <summary>Whether a reach covers what lies just beyond a place that <see cref="Uncovered"/> gave.</summary>
    public static bool Covers(Reach reach, double place, double half) => reach.From - half <= place && reach.To + half > place + Sliver;

    /// <summary>How much less the excess would be with one more reach.</summary>
    public double GainOf(Reach reach)
    {
        var (first, after) = Touched(reach);
        return Gain(reach, first, after);
    }

    /// <summary>The widest step, twice the greatest mismatch.</summary>
    public Step LargestStep()
    {
        if (count == 0)
        {
            return Step.OfMismatch(Shore.Length);
        }

        var widest = 2 * Math.Max(from[0], Shore.Length - to[count - 1]);
        for (var i = 1; i < count; i++)
        {
            widest = Math.Max(widest, from[i] - to[i - 1]);
        }

        return new Step(widest);
    }

    /// <summary>
    /// The places just beyond which nothing is within <paramref name="half"/>, one for each gap that is too wide, as many as
    /// there is room for: a set of views keeps to a step of twice that only if something reaches each of them.
    /// </summary>
    public int Uncovered(double half, Span<double> places)
    {
        if (2 * Shore.Length <= 2 * half)
        {
            return 0;
        }

        if (count == 0)
        {
            places[0] = 0;
            return 1;
        }

        var found = 0;
        if (from[0] > half)
        {
            places[found++] = 0;
        }

        for (var i = 0; i < count && found < places.Length; i++)
        {
            var isTooWide = i + 1 < count ? from[i + 1] - to[i] > 2 * half : Shore.Length - to[i] > half;
            if (isTooWide)
            {
                places[found++] = to[i] + half;
            }
        }

        return found;
    }

    /// <summary>The least number of further points that make every gap keep to a step of twice <paramref name="half"/>.</summary>
    public long PointsNeeded(double half)
    {
        if (Shore.Length <= half)
        {
            return 0;
        }

        if (count == 0)
        {
            return Steps(Shore.Length, 2 * half);
        }

        var needed = Steps(from[0] - half, 2 * half) + Steps(Shore.Length - to[count - 1] - half, 2 * half);
        for (var i = 1; i < count; i++)
        {
            needed += Math.Max(0, Steps(from[i] - to[i - 1], 2 * half) - 1);
        }

        return needed;

        static long Steps(double stretch, double step) => stretch <= 0 ? 0 : (long)Math.Ceiling((stretch / step) - Slack);
    }

    /// <summary>For one island more.</summary>
    private void MakeRoom()
    {
        if (count >= from.Length)
        {
            Array.Resize(ref from, 2 * count);
            Array.Resize(ref to, 2 * count);
        }
    }

    /// <summary>The islands from the first that the reach touches to before the one after the last.</summary>
    private (int First, int After) Touched(Reach reach)
    {
        var first = 0;
        while (first < count && to[first] < reach.From)
        {
            first++;
        }

        var after = first;
        while (after < count && from[after] <= reach.To)
        {
            after++;
        }

        return (first, after);
    }

    private double Gain(Reach reach, int first, int after)
    {
        if (count == 0)
        {
            return Shore.OfNothing - Shore.OfSide(reach.From) - Shore.OfSide(Shore.Length - reach.To);
        }

        var before = 0.0;
        for (var i = first; i <= after; i++)
        {
            before += Between(i == 0 ? -1 : to[i - 1], i == count ? -1 : from[i]);
        }

        var (start, end) = first < after
            ? (Math.Min(reach.From, from[first]), Math.Max(reach.To, to[after - 1]))
            : (reach.From, reach.To);
        return before - Between(first == 0 ? -1 : to[first - 1], start) - Between(end, after == count ? -1 : from[after]);
    }

    /// <summary>The excess between two islands; -1 stands for an end of the axis.</summary>
    private double Between(double lower, double upper) =>
        lower < 0 ? Shore.OfSide(upper) : upper < 0 ? Shore.OfSide(Shore.Length - lower) : Shore.OfGap(upper - lower);
}
