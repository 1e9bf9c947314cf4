using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>A random problem, as the exhaustive solver and as the planner know it, with its plan.</summary>
internal sealed record Planned(int Seed, OracleProblem Asked, PurchaseProblem Problem, Plan Plan)
{
    public ImmutableArray<string> Ids => [.. Plan.Purchases.Select(item => item.Id)];

    public Kit Kit => Kit.Of(Problem, Plan.Purchases);

    /// <summary>The problems of these seeds that can be solved.</summary>
    public static IEnumerable<Planned> Solvable(int firstSeed, int count) =>
        from seed in Enumerable.Range(firstSeed, count)
        let asked = RandomProblems.Make(seed)
        let problem = Bridge.ToProblem(asked)
        let plan = Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit))
        where plan.Outcome != Outcome.Infeasible
        select new Planned(seed, asked, problem, plan);
}
