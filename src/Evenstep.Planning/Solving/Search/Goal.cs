using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What a descent looks for, among the sets that keep to its step and meet every demand.</summary>
internal abstract class Goal
{
    /// <summary>Differences in excess below this are rounding.</summary>
    protected const double Rounding = 1e-12;

    /// <summary>The best set found; null if none was.</summary>
    public Selection? Selection { get; protected set; }

    /// <summary>Whether the whole descent may end.</summary>
    public virtual bool IsReached => false;

    /// <summary>Whether every ware of an offer matters here, or only the cheapest.</summary>
    public virtual bool WantsEveryWare => false;

    /// <summary>Whether no set at or below the node can be any better than what is known.</summary>
    public abstract bool IsHopeless(Node node, Path path);

    /// <summary>A first look at a purchase, before it is made.</summary>
    /// <param name="prospect">What is to be expected of the purchases at its node.</param>
    /// <param name="gain">What it takes off the mean excess, at most.</param>
    /// <param name="cost">Of all purchases with it.</param>
    public abstract bool IsWorthTrying(in Prospect prospect, double gain, Cost cost);

    /// <summary>Spending more than this, beyond what is spent, makes no set any better than what is known.</summary>
    public virtual Money MoneyWorthSpending(Cost spent) => Money.MaxValue;

    /// <summary>Which options are tried first: those that gain most. Oculars lie by their price on a bench.</summary>
    public virtual Comparison<Option> FirstTried { get; } = (a, b) => a.Gain != b.Gain ? b.Gain.CompareTo(a.Gain) : a.Place.CompareTo(b.Place);

    /// <summary>Whether it matters which are tried first where so many purchases are left.</summary>
    public virtual bool OrderMatters(int countLeft) => true;

    /// <summary>Takes note of a set that is allowed; says whether more purchases may make it better.</summary>
    public abstract bool Note(Node node, Path path);
}

/// <summary>Any set at all.</summary>
internal sealed class AnySet : Goal
{
    public double LnLargestStep { get; private set; }

    public override bool IsReached => Selection is not null;

    public override bool OrderMatters(int countLeft) => countLeft > 1;

    public override bool IsHopeless(Node node, Path path) => false;

    public override bool IsWorthTrying(in Prospect prospect, double gain, Cost cost) => true;

    public override bool Note(Node node, Path path)
    {
        (Selection, LnLargestStep) = (path.Select(), node.LnLargestStep());
        return false;
    }
}

/// <summary>The least mean excess.</summary>
internal sealed class LeastExcess : Goal
{
    public double Best { get; private set; } = double.PositiveInfinity;

    /// <summary>No set is better than this.</summary>
    public double Floor { get; set; }

    public override bool IsReached => Best <= Floor + Rounding;

    public override bool IsHopeless(Node node, Path path)
    {
        if (IsNoBetter(node.LeastExcess(node.CountLeft)))
        {
            return true;
        }

        node.RefreshGains();
        return IsNoBetter(node.LeastExcess(node.CountLeft));
    }

    public override bool IsWorthTrying(in Prospect prospect, double gain, Cost cost) => !IsNoBetter(prospect.LeastExcess - gain);

    public override bool Note(Node node, Path path)
    {
        if (node.Excess < Best)
        {
            (Best, Selection) = (node.Excess, path.Select());
        }

        return true;
    }

    private bool IsNoBetter(double excess) => excess >= Best - Rounding;
}

/// <summary>The least cost of a set whose mean excess is small enough.</summary>
/// <param name="mostExcess">Small enough.</param>
/// <param name="known">A set of such a mean excess.</param>
/// <param name="knownCost">What it costs.</param>
/// <param name="priceDecides">Whether the price is what is preferred.</param>
internal sealed class LeastCost(double mostExcess, Selection known, Cost knownCost, bool priceDecides) : Goal
{
    private readonly double mostExcess = mostExcess + Tolerance.Value;

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

        if (node.Excess <= mostExcess)
        {
            return false;
        }

        node.RefreshGains();
        return node.LeastExcess(node.CountLeft) > mostExcess || path.Cost + node.ProspectOf(node.CountLeft).LeastCostOf(node.Excess - mostExcess) >= Best;
    }

    public override bool IsWorthTrying(in Prospect prospect, double gain, Cost cost) =>
        prospect.LeastExcess - gain <= mostExcess && cost + prospect.LeastCostOf(prospect.Excess - gain - mostExcess) < Best;

    public override Money MoneyWorthSpending(Cost spent) => priceDecides ? Best.Price - spent.Price : Money.MaxValue;

    public override Comparison<Option> FirstTried { get; } = (a, b) => a.Place.CompareTo(b.Place);

    public override bool Note(Node node, Path path)
    {
        if (node.Excess > mostExcess)
        {
            return true;
        }

        if (path.Cost < Best)
        {
            (Best, Selection) = (path.Cost, path.Select());
        }

        return false;
    }
}
