using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>What a run of the solver came to.</summary>
/// <param name="Purchases">The set found, in ordinal order of ids; null if none was.</param>
/// <param name="IsProved">That it is best, or that there is none.</param>
internal readonly record struct Verdict(ImmutableArray<Item>? Purchases, bool IsProved)
{
    public bool IsImpossible => Purchases is null && IsProved;
}

/// <summary>
/// The work that one planning may do, counted by the solver's own deterministic clock and not in seconds, so that the
/// same problem always ends at the same place.
/// </summary>
internal sealed class Work(WorkBudget budget)
{
    /// <summary>Seconds after which a run ends whatever its own clock says: only ever reached on a machine that hangs.</summary>
    private const double EmergencySeconds = 300;

    /// <summary>A stop that comes before the solver listens is lost, so it is repeated.</summary>
    private static readonly TimeSpan StopAgainAfter = TimeSpan.FromMilliseconds(20);

    /// <summary>
    /// Presolve is off for two reasons. These models are small, and it takes longer than it saves; and in this release it is
    /// known to call a model infeasible that is not (OR-Tools issue 5274; the tests hold such a problem).
    /// </summary>
    private const string Parameters =
        "num_workers:1,random_seed:1,cp_model_presolve:false,linearization_level:0,symmetry_level:0,cp_model_probing_level:0";

    /// <summary>Finds the set of least objective, or any set if the model has no objective.</summary>
    public Verdict Find(PurchaseModel model)
    {
        budget.Look();
        if (budget.IsSpent)
        {
            return new Verdict(null, IsProved: false);
        }

        var solver = new CpSolver
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"{Parameters},max_deterministic_time:{budget.UnitsLeft:F9},max_time_in_seconds:{EmergencySeconds}"),
        };
        var status = SolveUnlessCancelled(solver, model.Cp);
        budget.SpendUnits(solver.Response?.DeterministicTime ?? 0);
        return status switch
        {
            CpSolverStatus.Optimal => new Verdict(Bought(solver, model), IsProved: true),
            CpSolverStatus.Feasible => new Verdict(Bought(solver, model), IsProved: false),
            CpSolverStatus.Infeasible => new Verdict(null, IsProved: true),
            CpSolverStatus.Unknown => new Verdict(null, IsProved: false),
            _ => throw new InvalidOperationException($"The model is invalid: {model.Cp.Validate()}"),
        };
    }

    private CpSolverStatus SolveUnlessCancelled(CpSolver solver, CpModel model)
    {
        using var stopper = new Timer(_ => solver.StopSearch());
        using var registration = budget.CancellationToken.Register(() => stopper.Change(TimeSpan.Zero, StopAgainAfter));
        var status = solver.Solve(model);
        budget.CancellationToken.ThrowIfCancellationRequested();
        return status;
    }

    private static ImmutableArray<Item> Bought(CpSolver solver, PurchaseModel model) =>
        [.. model.Items.Where(item => solver.BooleanValue(model.Bought(item))).OrderBy(item => item.Id, StringComparer.Ordinal)];
}
