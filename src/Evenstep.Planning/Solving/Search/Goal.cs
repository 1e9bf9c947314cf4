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
    /// <param name="prospects">What the node has, and what is to be expected of the purchases after this one.</param>
    /// <param name="option">What it gains, at most.</param>
    /// <param name="cost">Of all purchases with it.</param>
    public abstract bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost);

    /// <summary>Which options may make a set better in which nothing is amiss.</summary>
    public virtual Func<Option, bool> MayHelp(Node node) => static option => option.Gain > 0;

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
    public Step LargestStep { get; private set; }

    public override bool IsReached => Selection is not null;

    public override bool OrderMatters(int countLeft) => countLeft > 1;

    public override bool IsHopeless(Node node, Path path) => false;

    public override bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost) => true;

    public override bool Note(Node node, Path path)
    {
        (Selection, LargestStep) = (path.Select(), node.LargestStep());
        return false;
    }
}

/// <summary>The least mean excess.</summary>
/// <param name="known">A set that is allowed.</param>
/// <param name="knownExcess">Its mean excess.</param>
internal sealed class LeastExcess(Selection known, double knownExcess) : Goal
{
    public double Best { get; private set; } = knownExcess;

    /// <summary>The best set found, or the one known before.</summary>
    public Selection BestSet => Selection ?? known;

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

    public override bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost) => !IsNoBetter(prospects.LeastExcess - option.Gain);

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
