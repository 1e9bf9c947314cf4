using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Service.Answering.Solving;

/// <summary>Finds the plan for a problem.</summary>
internal delegate Plan PlanSolver(PurchaseProblem problem, WorkBudget budget);

/// <summary>Finds what every budget buys at best.</summary>
internal delegate SpendingFrontier SpendingSolver(PurchaseProblem problem, WorkBudget budget);

/// <summary>Finds the no-regret path.</summary>
internal delegate BuyingPath PathSolver(PurchaseProblem problem, WorkBudget budget);

/// <summary>What plans, curves and paths are found by.</summary>
internal static class Solvers
{
    public static void AddSolvers(this IServiceCollection services)
    {
        services.AddSingleton<PlanSolver>(Planner.Solve);
        services.AddSingleton<SpendingSolver>(SpendingSearch.Solve);
        services.AddSingleton<PathSolver>(BuyingPathSearch.Solve);
    }
}
