using System.Globalization;
using Evenstep.Planning.Budgets;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// Runs the constraint solver, whose work is counted by its own deterministic clock and not in seconds, so that the same
/// problem always ends at the same place.
/// </summary>
internal static class Work
{
    /// <summary>Work of a first run, in units; each further one on the same model may take twice what the last one did.
    /// Between two runs others may go first.</summary>
    private const double FirstSlice = 0.1;

    /// <summary>What the solver's clock does not count: handing over a model, and each number in it.</summary>
    private const long StepsPerRun = 300_000;
    private const long StepsPerTerm = 30;

    /// <summary>A stop that comes before the solver listens is lost, so it is repeated.</summary>
    private static readonly TimeSpan StopAgainAfter = TimeSpan.FromMilliseconds(20);

    /// <summary>
    /// Presolve is off for two reasons. These models are small, and it takes longer than it saves; and in this release it is
    /// known to call a model infeasible that is not (OR-Tools issue 5274; the tests hold such a problem).
    /// </summary>
    private const string Parameters =
        "num_workers:1,random_seed:1,cp_model_presolve:false,linearization_level:2,symmetry_level:0,cp_model_probing_level:0";

    /// <summary>Unknown if the work ended first, or feasible where a solution was found by then that may not be the best.</summary>
    /// <param name="solver">Holds the solution then.</param>
    /// <param name="model">To be solved.</param>
    /// <param name="terms">Of all its constraints.</param>
    /// <param name="budget">The work that it may take.</param>
    public static CpSolverStatus Run(CpSolver solver, CpModel model, long terms, WorkBudget budget)
    {
        var status = CpSolverStatus.Unknown;
        for (var slice = FirstSlice; ; slice *= 2)
        {
            budget.Spend(StepsPerRun + (StepsPerTerm * terms));
            budget.Look();
            if (budget.IsSpent)
            {
                return status;
            }

            solver.StringParameters = string.Create(
                CultureInfo.InvariantCulture, $"{Parameters},max_deterministic_time:{Math.Min(slice, budget.UnitsLeft):F9}");
            status = SolveUnlessCancelled(solver, model, budget.CancellationToken);
            budget.SpendUnits(solver.Response?.DeterministicTime ?? 0);
            if (status == CpSolverStatus.ModelInvalid)
            {
                throw new InvalidOperationException($"The model is invalid: {model.Validate()}");
            }

            if (status is not (CpSolverStatus.Unknown or CpSolverStatus.Feasible))
            {
                return status;
            }
        }
    }

    private static CpSolverStatus SolveUnlessCancelled(CpSolver solver, CpModel model, CancellationToken cancellationToken)
    {
        using var stopper = new Timer(_ => solver.StopSearch());
        using var registration = cancellationToken.Register(() => stopper.Change(TimeSpan.Zero, StopAgainAfter));
        var status = solver.Solve(model);
        cancellationToken.ThrowIfCancellationRequested();
        return status;
    }
}
