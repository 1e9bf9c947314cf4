using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>What a solve has while it runs. It belongs to the thread of the solve.</summary>
internal sealed class SolveSlot
{
    private readonly SolveScheduler scheduler;
    private readonly Signal granted = new();
    private readonly List<(WorkBudget Budget, double Units)> budgets = [];
    private bool hasBegun;

    /// <param name="scheduler">Gives and takes the slot.</param>
    /// <param name="claim">For whom the solve is.</param>
    /// <param name="begin">Begins the solve; it must return at once.</param>
    /// <param name="cancellationToken">Ends the solve, whether it runs or waits.</param>
    public SolveSlot(SolveScheduler scheduler, SolveClaim claim, Action<SolveSlot> begin, CancellationToken cancellationToken)
    {
        this.scheduler = scheduler;
        CancellationToken = cancellationToken;
        Solve = new ScheduledSolve(claim, () => BeginOrGoOn(begin));
    }

    public ScheduledSolve Solve { get; }

    public CancellationToken CancellationToken { get; }

    /// <summary>A budget of work in this slot: its checkpoints are those at which the slot is yielded.</summary>
    public WorkBudget Budget(WorkLimits limits)
    {
        var budget = new WorkBudget(limits, Checkpoint, CancellationToken);
        budgets.Add((budget, limits.Units));
        return budget;
    }

    /// <summary>Lets others go first, if they have a better claim; blocks meanwhile.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public void Checkpoint()
    {
        if (scheduler.MustYield(Solve, budgets.Sum(one => one.Budget.Held)))
        {
            granted.Wait(CancellationToken);
        }
    }

    /// <summary>The solve is over: gives the slot back, and notes what the solve has taken.</summary>
    public void End()
    {
        scheduler.End(Solve);
        Solve.Claim.Spend(budgets.Sum(one => one.Units - one.Budget.UnitsLeft));
    }

    private void BeginOrGoOn(Action<SolveSlot> begin)
    {
        if (hasBegun)
        {
            granted.Set();
            return;
        }

        hasBegun = true;
        begin(this);
    }
}
