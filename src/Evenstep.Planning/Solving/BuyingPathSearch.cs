using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Paths;

namespace Evenstep.Planning.Solving;

/// <summary>Finds in what order to buy what, so that stopping early is never regretted.</summary>
public static class BuyingPathSearch
{
    /// <summary>The plan, the frontier and the path share the work.</summary>
    private const int Sharers = 3;

    /// <summary>The no-regret path for a problem: the same for the same problem, whatever the order of its items.</summary>
    /// <param name="problem">What to buy for.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found, and before it was proved
    /// that there is none.</exception>
    public static BuyingPath Solve(PurchaseProblem problem, WorkBudget budget)
    {
        var path = Found(problem, budget);
        return path with { Limit = path.IsProved ? path.Plan.Limit : path.Plan.Limit ?? path.Frontier.Limit ?? budget.Reached ?? ReachedLimit.Work };
    }

    private static BuyingPath Found(PurchaseProblem problem, WorkBudget budget)
    {
        var part = budget.UnitsLeft / Sharers;
        var plan = Planner.Solve(problem, budget.Part(part));
        var frontier = SpendingSearch.Solve(problem, budget.Part(part));
        if (plan.Values is not { } values)
        {
            return new BuyingPath(plan, frontier, [], null, IsProved: true);
        }

        var losses = new Losses(frontier);
        try
        {
            using var ground = new PathGround(problem, plan.Candidacy, budget);
            var known = Ordering.Best(ground, losses, ChoicesOf(ground, plan));
            var (best, least, isProved) = new PathSearch(ground, losses, new Destination(ground, values.LargestStepAllowed), known).Run();
            isProved &= plan.IsProved && frontier.IsProved;
            return new BuyingPath(plan, frontier, StepsOf(problem, plan, losses, best.Order), plan.IsProved && frontier.IsProved ? least : null, isProved);
        }
        catch (WorkEndedException)
        {
            return new BuyingPath(plan, frontier, StepsOf(problem, plan, losses, ByPrice(plan)), null, IsProved: false);
        }
    }

    /// <summary>An order to buy a plan in where there was no work left for a better one.</summary>
    private static IEnumerable<Choice> ByPrice(Plan plan) =>
        plan.Purchases.OrderBy(item => item.ExactPrice).Select(item => new Choice(0, item, Choice.None, Choice.None, IsMust: false));

    /// <summary>The purchases of a plan; of alike items the path knows only the cheapest.</summary>
    private static IEnumerable<Choice> ChoicesOf(PathGround ground, Plan plan) => plan.Purchases.Select(item =>
        ground.Choices.FirstOrDefault(choice => choice.Item.Equals(item))
        ?? ground.Choices.First(choice => !choice.IsMust && Likeness.Of(ground.Problem, choice.Item).Equals(Likeness.Of(ground.Problem, item))));

    private static ImmutableArray<BuyingStep> StepsOf(PurchaseProblem problem, Plan plan, Losses losses, IEnumerable<Choice> order)
    {
        var spent = Money.Zero;
        List<Item> bought = [];
        return [.. order.Select(choice =>
        {
            spent += choice.Price;
            bought.Add(choice.Item);
            return new BuyingStep(choice.Item, spent.ToDecimal(), losses.Of(spent, Kit.Of(problem, bought).FiguresIn(plan.Candidacy.Telescopes).LargestStep));
        })];
    }
}
