using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The greatest quality of a set whose mean excess is small enough.</summary>
/// <param name="mostExcess">Small enough.</param>
/// <param name="known">A set of such a mean excess.</param>
/// <param name="knownQuality">Its quality.</param>
internal sealed class MostQuality(double mostExcess, Selection known, double knownQuality) : Goal
{
    private readonly double mostExcess = mostExcess + Tolerance.Value;

    public double Best { get; private set; } = knownQuality;

    /// <summary>The best set found, or the one known before.</summary>
    public Selection BestSet => Selection ?? known;

    /// <summary>No set is better than this.</summary>
    public double Ceiling { get; set; } = double.PositiveInfinity;

    public override bool IsReached => Best >= Ceiling - Rounding;

    public override Comparison<Option> FirstTried { get; } =
        (a, b) => a.Quality != b.Quality ? b.Quality.CompareTo(a.Quality) : a.Gain != b.Gain ? b.Gain.CompareTo(a.Gain) : a.Place.CompareTo(b.Place);

    public override bool IsHopeless(Node node, Path path)
    {
        if (IsNoBetter(node.MostQuality) || !node.Reduce(node.Excess - mostExcess, Best + Rounding - node.Quality))
        {
            return true;
        }

        node.RefreshQualities();
        return false;
    }

    public override bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost) =>
        prospects.LeastExcess - option.Gain <= mostExcess && !IsNoBetter(prospects.MostQuality + option.Quality);

    public override Func<Option, bool> MayHelp(Node node) => node.Excess > mostExcess
        ? static option => option.Gain > 0
        : static option => option.Quality > Rounding;

    public override bool Note(Node node, Path path)
    {
        if (node.Excess <= mostExcess && node.Quality > Best)
        {
            (Best, Selection) = (node.Quality, path.Select());
        }

        return true;
    }

    private bool IsNoBetter(double quality) => quality <= Best + Rounding;
}

/// <summary>The least cost of a set whose mean excess is small enough, and its quality great enough.</summary>
/// <param name="mostExcess">Small enough.</param>
/// <param name="leastQuality">Great enough.</param>
/// <param name="known">Such a set.</param>
/// <param name="knownCost">What it costs.</param>
/// <param name="priceDecides">Whether nothing is preferred before the price.</param>
internal sealed class LeastCost(double mostExcess, double leastQuality, Selection known, Cost knownCost, bool priceDecides) : Goal
{
    private readonly double mostExcess = mostExcess + Tolerance.Value;
    private readonly double leastQuality = leastQuality - Tolerance.Value;

    public Cost Best { get; private set; } = knownCost;

    /// <summary>The best set found, or the one known before.</summary>
    public Selection Cheapest => Selection ?? known;

    public override bool WantsEveryWare => true;

    public override bool IsHopeless(Node node, Path path)
    {
        if (path.Cost >= Best)
        {
            return true;
        }

        var (lessExcess, moreQuality) = (node.Excess - mostExcess, leastQuality - node.Quality);
        return (lessExcess > 0 || moreQuality > 0)
            && (!node.Reduce(lessExcess, moreQuality) || !IsWithinReach(node.ProspectsOf(node.CountLeft), gain: 0, quality: 0, path.Cost));
    }

    public override bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost) =>
        IsWithinReach(prospects, option.Gain, option.Quality, cost);

    public override Money MoneyWorthSpending(Cost spent) => priceDecides ? Best.Price - spent.Price : Money.MaxValue;

    public override Comparison<Option> FirstTried { get; } = (a, b) => a.Place.CompareTo(b.Place);

    public override Func<Option, bool> MayHelp(Node node) => node.Excess > mostExcess
        ? static option => option.Gain > 0
        : static option => option.Quality > Rounding;

    public override bool Note(Node node, Path path)
    {
        if (node.Excess > mostExcess || node.Quality < leastQuality)
        {
            return true;
        }

        if (path.Cost < Best)
        {
            (Best, Selection) = (path.Cost, path.Select());
        }

        return false;
    }

    /// <summary>Whether the purchases to come can make the set good enough at less than the best cost.</summary>
    private bool IsWithinReach(in Prospects prospects, double gain, double quality, Cost cost)
    {
        var (excess, reached) = (prospects.Excess - gain, prospects.Quality + quality);
        return excess - prospects.LessExcess.Together <= mostExcess && reached + prospects.MoreQuality.Together >= leastQuality
            && cost + prospects.LessExcess.LeastCostOf(excess - mostExcess) < Best
            && cost + prospects.MoreQuality.LeastCostOf(leastQuality - reached) < Best;
    }
}
