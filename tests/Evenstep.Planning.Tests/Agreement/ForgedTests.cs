using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>Each objection of the referees of curves and paths, and those of plans that random problems seldom provoke, by a forged answer that
/// is wrong in that and nothing else.</summary>
public class ForgedTests
{
    private static readonly Item Long = Some.Eyepiece(25, id: "a-25", price: 40);
    private static readonly Item Short = Some.Eyepiece(8, id: "b-8", price: 60);
    private static readonly Item Dear = Some.Eyepiece(14, id: "c-14", price: 900);
    private static readonly Item Strange = Some.Eyepiece(12, id: "d-12", price: 10);

    private static readonly PurchaseProblem Problem = Some.Problem(catalogue: [Long, Short, Dear, Strange]) with
    {
        Limits = new Limits { Budget = 300 },
        Preferences = new Preferences { Exclude = [Strange.Id] },
    };

    private static readonly BuyingPath Path = BuyingPathSearch.Solve(Problem, new WorkBudget(Comparison.WorkLimit));

    [Fact]
    public void What_is_not_forged_is_let_pass()
    {
        Assert.True(Path is { IsProved: true, Steps.Length: 2 } && Path.Frontier.Points.Length > 1);
        Assert.Empty(SpendingReferee.FaultsOf(Path.Frontier));
        Assert.Empty(BuyingPathReferee.FaultsOf(Path));
    }

    [Fact]
    public void A_wrong_price_of_a_point_is_not_let_pass() =>
        AssertOnly("The price is", Curve(0, point => point with { TotalPrice = point.TotalPrice - 1 }));

    [Fact]
    public void A_wrong_step_of_a_point_is_not_let_pass() =>
        AssertOnly("The largest step is", Curve(^1, point => point with { LargestStep = new(point.LargestStep.Ln - 0.01) }));

    [Fact]
    public void A_point_that_is_no_better_is_not_let_pass() =>
        AssertOnly("is no better than", Path.Frontier with { Points = Path.Frontier.Points.Add(Path.Frontier.Points[^1]) });

    [Fact]
    public void A_point_that_breaks_a_limit_is_not_let_pass() =>
        AssertOnly("MaxPurchases", Path.Frontier with { Problem = Problem with { Limits = Problem.Limits with { MaxPurchases = 1 } } });

    [Fact]
    public void A_point_with_what_is_no_candidate_is_not_let_pass() => AssertOnly("is no candidate", PointOf(Strange));

    [Fact]
    public void A_beginning_that_breaks_a_limit_is_not_let_pass() => Assert.Contains(
        BuyingPathReferee.FaultsOf(Path with { Steps = [.. Steps(Dear, Long, Short)] }), fault => fault.StartsWith("Budget", StringComparison.Ordinal));

    [Fact]
    public void An_end_that_leaves_a_demand_unmet_is_not_let_pass()
    {
        var demanding = Problem with { Demands = new Demands { MustInclude = [Short.Id] } };
        var path = BuyingPathSearch.Solve(demanding, new WorkBudget(Comparison.WorkLimit));
        Assert.Contains(
            BuyingPathReferee.FaultsOf(path with { Steps = [.. path.Steps.Where(step => step.Item != Short)] }),
            fault => fault.StartsWith("MustInclude", StringComparison.Ordinal));
    }

    [Fact]
    public void An_end_with_what_is_no_candidate_is_not_let_pass() =>
        AssertSaid("is no candidate", Path with { Steps = Path.Steps.Add(Step([Long, Short], Strange)) });

    [Fact]
    public void An_end_whose_steps_are_too_wide_is_not_let_pass() => AssertOnly("The largest step,", Path with { Steps = Path.Steps[..1] });

    [Fact]
    public void An_end_that_does_not_grant_the_wish_is_not_let_pass() => AssertSaid(
        "though the wish for one is said to be granted", Path with { Plan = Path.Plan with { Wish = new WideViewWish(20, Granted: true) } });

    [Fact]
    public void A_wrong_price_so_far_is_not_let_pass() =>
        AssertOnly("The price so far is", Path with { Steps = Path.Steps.SetItem(0, Path.Steps[0] with { TotalPriceSoFar = 1 }) });

    [Fact]
    public void A_wrong_loss_is_not_let_pass() =>
        AssertOnly("The loss with", Path with { Steps = Path.Steps.SetItem(0, Path.Steps[0] with { Loss = Path.Steps[0].Loss + 0.01 }) });

    [Fact]
    public void A_purchase_where_no_set_is_allowed_is_not_let_pass() => AssertSaid("though no set is allowed", Path with
    {
        Plan = Path.Plan with { Outcome = Outcome.Infeasible, Values = null, Purchases = [], Conflicts = Nothing },
    });

    [Fact]
    public void A_faulty_plan_or_curve_of_a_path_is_not_let_pass()
    {
        AssertOnly("bound", Path with { Plan = Path.Plan with { Values = Path.Plan.Values! with { Bound = new(9) } } });
        AssertOnly("is no better than", Path with { Frontier = Path.Frontier with { Points = Path.Frontier.Points.Add(Path.Frontier.Points[^1]) } });
    }

    [Fact]
    public void A_plan_without_values_is_not_let_pass() => Assert.Contains(
        "A plan has values and no conflicts.", Referee.FaultsOf(Problem, Path.Plan with { Values = null }));

    [Fact]
    public void A_step_better_than_the_bound_is_not_let_pass() => Assert.Contains(
        Referee.FaultsOf(Problem, Path.Plan with { Values = Path.Plan.Values! with { LeastLargestStep = new(2), Bound = new(2) } }),
        fault => fault.Contains("is better than the bound", StringComparison.Ordinal));

    [Fact]
    public void An_excess_better_than_the_least_is_not_let_pass() => Assert.Contains(
        Referee.FaultsOf(Problem, Path.Plan with { Values = Path.Plan.Values! with { LeastMeanExcess = 1 } }),
        fault => fault.Contains("is better than the least", StringComparison.Ordinal));

    [Fact]
    public void A_purchase_that_could_be_left_out_is_not_let_pass() => Assert.Contains(
        Referee.FaultsOf(Problem, Path.Plan with { Purchases = [.. Path.Plan.Purchases, Long], Values = Path.Plan.Values! with { LeastMeanExcess = 1 } }),
        fault => fault.EndsWith("could be left out.", StringComparison.Ordinal));

    private static Conflicts Nothing => new([], [], IsTogetherDecided: true, new NearestLimits(
        Nearest.None<decimal>(), Nearest.None<int>(), Nearest.None<int>(), Nearest.None<int>(), []));

    private static SpendingFrontier Curve(Index place, Func<SpendingPoint, SpendingPoint> forge)
    {
        var points = Path.Frontier.Points;
        var index = place.GetOffset(points.Length);
        return Path.Frontier with { Points = points.SetItem(index, forge(points[index])) };
    }

    private static SpendingFrontier PointOf(params ImmutableArray<Item> items)
    {
        var kit = Kit.Of(Problem, items);
        return new SpendingFrontier(Problem, [new SpendingPoint(items, kit.TotalPrice, kit.Figures.LargestStep)], Problem.Limits.Budget);
    }

    private static IEnumerable<BuyingStep> Steps(params Item[] items) => items.Select((item, place) => Step(items[..place], item));

    /// <summary>With the price so far and the loss as they are.</summary>
    private static BuyingStep Step(IEnumerable<Item> before, Item item)
    {
        var kit = Kit.Of(Problem, [.. before, item]);
        var enough = Problem.EnoughStep;
        var loss = Path.Frontier.LeastStepFor(kit.TotalPrice) is { } least
            ? Math.Max(0, Math.Exp(Math.Max(enough.Ln, kit.Figures.LargestStep.Ln) - Math.Max(enough.Ln, least.Ln)) - 1) : 0;
        return new BuyingStep(item, kit.TotalPrice, loss);
    }

    private static void AssertOnly(string words, SpendingFrontier forged)
    {
        var faults = SpendingReferee.FaultsOf(forged);
        Assert.NotEmpty(faults);
        Assert.All(faults, fault => Assert.Contains(words, fault, StringComparison.Ordinal));
    }

    private static void AssertOnly(string words, BuyingPath forged)
    {
        var faults = BuyingPathReferee.FaultsOf(forged);
        Assert.NotEmpty(faults);
        Assert.All(faults, fault => Assert.Contains(words, fault, StringComparison.Ordinal));
    }

    private static void AssertSaid(string words, BuyingPath forged) =>
        Assert.Contains(BuyingPathReferee.FaultsOf(forged), fault => fault.Contains(words, StringComparison.Ordinal));
}
