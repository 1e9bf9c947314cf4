using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Solving.Search;

/// <summary>How much the search may do: counted in nodes and not in time, so that it always ends at the same place.</summary>
internal sealed class Effort(long nodes, WorkBudget budget)
{
    private const long NodesBetweenLooks = 1024;

    private long left = nodes;

    public bool IsSpent => left <= 0 || budget.IsSpent;

    /// <summary>A part of it, to be spent apart.</summary>
    public Effort Short(long most) => new(Math.Min(most, left), budget);

    /// <summary>One node more.</summary>
    public void Spend() => Spend(1);

    /// <summary>What takes as long as so many nodes.</summary>
    public void Spend(long nodes)
    {
        var before = left;
        left -= nodes;
        if (before / NodesBetweenLooks != left / NodesBetweenLooks)
        {
            budget.Look();
        }
    }
}
