using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Solving.Search;

/// <summary>How many nodes a search may look at: counted and not clocked, so that it always ends at the same place. What the nodes take
/// is counted by themselves.</summary>
internal sealed class Effort(long nodes, WorkBudget budget)
{
    private const long NodesBetweenLooks = 1024;

    private long left = nodes;

    public bool IsSpent => left <= 0 || budget.IsSpent;

    /// <summary>A part of it, to be spent apart.</summary>
    public Effort Short(long most) => new(Math.Min(most, left), budget);

    /// <summary>One node more.</summary>
    public void Spend()
    {
        left--;
        if (left % NodesBetweenLooks == 0)
        {
            budget.Look();
        }
    }
}
