using System.Globalization;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>Whatever is said where the work ends early is true: compared with an exhaustive solver, at several limits of the work.</summary>
public class HurriedTests
{
    /// <summary>A long run: EVENSTEP_HURRIED_PROBLEMS=2000 takes so many of each kind.</summary>
    private static readonly int Problems = int.Parse(Environment.GetEnvironmentVariable("EVENSTEP_HURRIED_PROBLEMS") ?? "60", CultureInfo.InvariantCulture);

    private const int FirstSeed = 900_000;
    private const double FigureTolerance = 1e-6;

    private static readonly double[] Units = [1e-8, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2];

    [Fact]
    public void Of_infeasible_problems_nothing_untrue_is_said()
    {
        var undecided = 0;
        var infeasible = Seeds().Select(RandomProblems.Make).Select(problem => (problem, truth: Exhaustive.Solve(problem)))
            .Where(one => one.truth.Outcome == OracleOutcome.Infeasible).Take(Problems);
        Assert.Empty(UntrueOfPlans(infeasible, ref undecided));
        Assert.True(undecided > Problems / 10, $"only {undecided} diagnoses were cut short");
    }

    [Fact]
    public void Of_hard_problems_nothing_untrue_is_said()
    {
        var cut = 0;
        var hard = Seeds().Select(Hard).Select(problem => (problem, truth: Exhaustive.Solve(problem))).Take(Problems);
        Assert.Empty(UntrueOfPlans(hard, ref cut));
        Assert.True(cut > Problems / 10, $"only {cut} plans were cut short");
    }

    [Fact]
    public void Of_curves_and_paths_nothing_untrue_is_said()
    {
        var cut = 0;
        List<string> untrue = [];
        foreach (var seed in Seeds().Take(Problems))
        {
            var problem = seed % 2 == 0 ? Hard(seed) : RandomProblems.Make(seed);
            foreach (var units in Units)
            {
                untrue.AddRange(UntrueOfCurve(problem, units, ref cut).Concat(UntrueOfPath(problem, units)).Select(fault => $"seed {seed}, {units}: {fault}"));
            }
        }

        Assert.Empty(untrue.Take(20));
        Assert.True(cut > Problems / 10, $"only {cut} curves were cut short");
    }

    [Fact]
    public void Of_alternatives_and_certificates_nothing_untrue_is_said()
    {
        var cut = 0;
        List<string> untrue = [];
        foreach (var seed in Seeds().Take(Problems))
        {
            var problem = Bridge.ToProblem(Hard(seed));
            var plan = Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit));
            foreach (var units in Units)
            {
                if (Certifier.Certify(problem, plan, new WorkBudget(units)) == false)
                {
                    untrue.Add($"seed {seed}, {units}: a plan that is right is refuted");
                }

                foreach (var alternative in Alternatives.Of(problem, plan, new WorkBudget(units)))
                {
                    cut += alternative.Plan is { IsProved: true } ? 0 : 1;
                    untrue.AddRange(UntrueOfAlternative(alternative).Select(fault => $"seed {seed}, {units}: {fault}"));
                }
            }
        }

        Assert.Empty(untrue.Take(20));
        Assert.True(cut > Problems / 10, $"only {cut} alternatives were cut short");
    }

    private static IEnumerable<int> Seeds() => Enumerable.Range(FirstSeed, int.MaxValue - FirstSeed);

    /// <summary>More may be bought, and more must be before the steps are enough.</summary>
    private static OracleProblem Hard(int seed)
    {
        var problem = RandomProblems.Make(seed);
        return problem with
        {
            Limits = problem.Limits with { Budget = 2 * problem.Limits.Budget, MaxPurchases = 4, MaxPricePerItem = null, MaxItemMassGrams = null },
            Preferences = problem.Preferences with { EnoughStep = 1.05, LeastStep = 1.02 },
        };
    }

    private static IEnumerable<string> UntrueOfPlans(IEnumerable<(OracleProblem Problem, OracleResult Truth)> all, ref int cut)
    {
        List<string> untrue = [];
        foreach (var (problem, truth) in all)
        {
            foreach (var units in Units)
            {
                untrue.AddRange(UntrueOfPlan(problem, truth, units, ref cut).Select(fault => $"{problem}, {units}: {fault}"));
            }
        }

        return untrue.Take(20);
    }

    private static List<string> UntrueOfPlan(OracleProblem oracle, OracleResult truth, double units, ref int cut)
    {
        var problem = Bridge.ToProblem(oracle);
        Plan plan;
        try
        {
            plan = Planner.Solve(problem, new WorkBudget(units));
        }
        catch (WorkLimitException)
        {
            cut++;
            return [];
        }

        cut += plan.Limit is null ? 0 : 1;
        return [.. UntrueOfPlan(oracle, truth, problem, plan)];
    }

    private static IEnumerable<string> UntrueOfPlan(OracleProblem oracle, OracleResult truth, PurchaseProblem problem, Plan plan) => plan switch
    {
        { Limit: null } => Comparison.Differences(oracle, _ => plan),
        { Conflicts: { } conflicts } => UntrueOfConflicts(truth, conflicts),
        { Values: { } values } =>
        [
            .. Referee.FaultsOf(problem, plan),
            .. Unless(truth.LeastLargestStep is not null, "there is no set, and yet one is found"),
            .. Unless(
                values.Bound.Ln <= Math.Log(truth.LeastLargestStep ?? 1) + FigureTolerance, $"the bound {values.Bound} is above {truth.LeastLargestStep}"),
            .. Unless(values.LeastLargestStep.Ln >= Math.Log(truth.LeastLargestStep ?? 1) - FigureTolerance, "the step is below the least"),
            .. Unless(plan.Outcome == Outcome.BestFound, $"cut short, and yet {plan.Outcome}"),
        ],
        _ => ["neither values nor conflicts"],
    };

    private static IEnumerable<string> UntrueOfConflicts(OracleResult truth, Conflicts conflicts)
    {
        if (truth.Nearest is not { } wanted)
        {
            return ["a set is allowed"];
        }

        var nearest = conflicts.Nearest;
        return
        [
            .. Same("budget", wanted.Budget, nearest.Budget),
            .. Same("maxPurchases", wanted.MaxPurchases, nearest.MaxPurchases),
            .. Same("maxBarlows", wanted.MaxBarlows, nearest.MaxBarlows),
            .. Same("allowedOverlaps", wanted.AllowedOverlaps, nearest.AllowedOverlaps),
            .. Same("maxPricePerItem", wanted.MaxPricePerItem, nearest.MaxPricePerItem),
            .. Same("maxItemMassGrams", wanted.MaxItemMassGrams, nearest.MaxItemMassGrams),
            .. wanted.MustFrame.Zip(nearest.WidthDeg).SelectMany(pair => Same("width", pair.First, pair.Second)),
        ];
    }

    private static IEnumerable<string> Same<T>(string what, T? wanted, Nearest<T> said)
        where T : struct => said.IsDecided
            ? Unless(EqualityComparer<T?>.Default.Equals(wanted, said.Value), $"nearest {what} is {wanted}, not {said.Value}")
            : Unless(said.Value is null, $"{what} is not decided, and yet {said.Value}");

    private static List<string> UntrueOfCurve(OracleProblem problem, double units, ref int cut)
    {
        var curve = SpendingSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(units));
        cut += curve.IsProved ? 0 : 1;
        var proved = curve.ProvedUpTo ?? -1;
        var wanted = OracleSpending.Of(problem).Frontier().TakeWhile(point => point.Price <= proved).Select(point => point.Price);
        return
        [
            .. SpendingReferee.FaultsOf(curve),
            .. Unless(
                wanted.SequenceEqual(curve.Points.Select(point => point.TotalPrice).TakeWhile(price => price <= proved)),
                "a point that is proved is wrong or missing"),
            .. Unless(curve.IsProved == curve.Limit is null, "the limit is not told"),
        ];
    }

    private static IEnumerable<string> UntrueOfPath(OracleProblem problem, double units)
    {
        BuyingPath path;
        try
        {
            path = BuyingPathSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(units));
        }
        catch (WorkLimitException)
        {
            return [];
        }

        var best = path.IsProved && path.Plan.Values is not null ? OraclePaths.Best(problem) : [];
        return
        [
            .. BuyingPathReferee.FaultsOf(path),
            .. Unless(best.Count == 0 || best.Any(one => one.Ids.SequenceEqual(path.Steps.Select(step => step.Item.Id))), "proved, and yet not the best"),
            .. Unless(
                path.LeastGreatestLoss is not { } least || Math.Abs(least - (OraclePaths.LeastLoss(problem) ?? double.NaN)) <= FigureTolerance,
                $"the least loss is not {path.LeastGreatestLoss}"),
            .. Unless(path.IsProved || path.Limit is not null, "the limit is not told"),
        ];
    }

    /// <summary>Compared with a run without haste, which other tests compare with the exhaustive solver.</summary>
    private static IEnumerable<string> UntrueOfAlternative(Alternative alternative)
    {
        if (alternative.Plan is not { } plan)
        {
            return [];
        }

        var whole = Planner.Solve(alternative.Problem, new WorkBudget(Comparison.WorkLimit));
        return
        [
            .. Referee.FaultsOf(alternative.Problem, plan),
            .. Unless(
                plan.Outcome is Outcome.BestFound or Outcome.Infeasible || plan.Purchases.SequenceEqual(whole.Purchases), "proved, and yet another is best"),
            .. Unless(plan.Outcome == Outcome.Infeasible == (whole.Outcome == Outcome.Infeasible), $"{whole.Outcome}, not {plan.Outcome}"),
            .. Unless(plan.Values is null || plan.Values.Bound.Ln <= whole.Values!.LeastLargestStep.Ln + FigureTolerance, "the bound is too high"),
        ];
    }

    private static IEnumerable<string> Unless(bool isTrue, string otherwise) => isTrue ? [] : [otherwise];
}
