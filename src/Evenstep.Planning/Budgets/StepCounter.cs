namespace Evenstep.Planning.Budgets;

/// <summary>Gathers the steps of short operations, so that counting them costs next to nothing, and uses them up in portions.</summary>
internal sealed class StepCounter(WorkBudget budget)
{
    private const long Portion = 2_000;

    private long pending;

    public WorkBudget Budget => budget;

    /// <exception cref="WorkEndedException">Nothing is left of the budget.</exception>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public void Count(long steps)
    {
        pending += steps;
        if (pending >= Portion)
        {
            var portion = pending;
            pending = 0;
            budget.Use(portion);
        }
    }

    /// <summary>Hands on what was gathered last, when the work is done.</summary>
    public void Settle()
    {
        budget.Spend(pending);
        pending = 0;
    }
}
