using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What a descent looks for, among the sets that keep to its step and meet every demand.</summary>
internal abstract class Goal
{
    /// <summary>Differences in excess below this are rounding.</summary>
    protected const double Rounding = 1e-12;

    /// <summary>Whether the whole descent may end.</summary>
    public virtual bool IsReached => false;

    /// <summary>Whether every ware of an offer matters here, or only the cheapest.</summary>
    public virtual bool WantsEveryWare => false;

    /// <summary>Whether no set at or below the node can be any better than what is known.</summary>
    public abstract bool IsHopeless(Node node, Path path);

    /// <summary>Takes note of a set that is allowed; says whether more purchases may make it better.</summary>
    public abstract bool Note(Node node, Path path);
}

/// <summary>Any set at all.</summary>
internal sealed class AnySet : Goal
{
    /// <summary>The set found; null if there is none.</summary>
    public Selection? Selection { get; private set; }

    public double LnLargestStep { get; private set; }

    public override bool IsReached => Selection is not null;

    public override bool IsHopeless(Node node, Path path) => false;

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

    public override bool IsHopeless(Node node, Path path)
    {
        if (IsOutOfReach(node))
        {
            return true;
        }

        node.RefreshGains();
        return IsOutOfReach(node);
    }

    public override bool Note(Node node, Path path)
    {
        Best = Math.Min(Best, node.Excess);
        return Best > Rounding;
    }

    private bool IsOutOfReach(Node node) => node.Excess - node.BestGains(node.CountLeft) >= Best - Rounding;
}

/// <summary>The least cost of a set whose mean excess is small enough.</summary>
internal sealed class LeastCost(double mostExcess) : Goal
{
    private readonly double mostExcess = mostExcess + Tolerance.Value;

    public Cost Best { get; private set; } = Cost.Unknown;

    /// <summary>The wares of the best set, beside what its bench has settled.</summary>
    public Selection? BestSelection { get; private set; }

    public override bool WantsEveryWare => true;

    public override bool IsHopeless(Node node, Path path)
    {
        if (path.Cost + LeastFurther(node) >= Best)
        {
            return true;
        }

        if (node.Excess <= mostExcess)
        {
            return false;
        }

        node.RefreshGains();
        return node.Excess - node.BestGains(node.CountLeft) > mostExcess || path.Cost + LeastFurther(node) >= Best;
    }

    public override bool Note(Node node, Path path)
    {
        if (node.Excess > mostExcess)
        {
            return true;
        }

        if (path.Cost < Best)
        {
            (Best, BestSelection) = (path.Cost, path.Select());
        }

        return false;
    }

    /// <summary>What must still be spent at the least: for each further purchase needed, the least that any option costs.</summary>
    private Cost LeastFurther(Node node)
    {
        var needed = 0;
        while (needed < node.CountLeft && node.Excess - node.BestGains(needed) > mostExcess)
        {
            needed++;
        }

        return needed == 0 ? default : node.LeastCostOfOptions(needed);
    }
}
