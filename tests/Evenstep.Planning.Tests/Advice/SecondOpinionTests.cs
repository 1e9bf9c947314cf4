using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SecondOpinionTests
{
    private const double Work = 10;
    private const int Lists = 3000;
    private const int FirstSeed = 420_000;

    private static readonly string[] Codes =
        ["budget", "max-barlows", "max-purchases", "must-frame", "must-include", "overlap", "reticle", "reticles"];

    private static readonly PurchaseProblem Problem = Some.Problem(Some.InUse(lowest: 25, highest: 200), owned: [Some.Eyepiece(20), Some.Eyepiece(21)]);

    [Fact]
    public void The_advice_itself_breaks_no_rule_and_differs_in_nothing()
    {
        var infeasible = 0;
        foreach (var seed in Enumerable.Range(FirstSeed, 300))
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            var plan = Planner.Solve(problem, new WorkBudget(Work));

            var opinion = SecondOpinion.Of(problem, plan, plan.Purchases.Reverse());

            infeasible += plan.Outcome == Outcome.Infeasible ? 1 : 0;
            Assert.Equal(plan.Outcome == Outcome.Infeasible, opinion.Difference is null);
            if (opinion.Difference is { } difference)
            {
                var shows = opinion.List.Figures.HasViews;
                Assert.Equal(new KitDifference(0, shows ? 0 : null, shows ? 0 : null, 0, 0), difference);
                Assert.Empty(opinion.Breaches);
                Assert.Empty(opinion.Exclusions);
            }
        }

        Assert.InRange(infeasible, 1, 299);
    }

    [Fact]
    public void A_list_breaks_just_the_rules_that_the_definitions_say()
    {
        var alone = new HashSet<string>();
        foreach (var (problem, ids) in Drawn())
        {
            var kit = Kit.Of(Bridge.ToProblem(problem), Bridge.ToProblem(problem).Catalogue.Items.Where(item => ids.Contains(item.Id)));

            var broken = Breaches.Of(kit).SelectMany(breach => Enumerable.Repeat(CodeOf(breach), TimesIn(breach))).Order(StringComparer.Ordinal).ToArray();

            Assert.Equal(OracleBreaches.Of(problem, ids).Order(StringComparer.Ordinal), broken);
            alone.UnionWith(broken.Distinct().Count() == 1 ? broken : []);
        }

        Assert.Equal(Codes, alone.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_list_of_candidates_breaks_no_rule_just_if_the_exhaustive_solver_may_choose_it()
    {
        var allowed = 0;
        foreach (var (problem, ids) in Drawn())
        {
            var search = new OracleSearch(problem);
            var candidates = search.Candidates.Select(item => item.Id).Intersect(ids).ToArray();

            var isAllowed = search.IsAllowed(search.SetOf(candidates));

            Assert.Equal(isAllowed, OracleBreaches.Of(problem, candidates).Count == 0);
            allowed += isAllowed ? 1 : 0;
        }

        Assert.InRange(allowed, Lists / 20, Lists * 19 / 20);
    }

    [Fact]
    public void Items_that_are_no_candidates_are_named_with_the_reason()
    {
        var dear = Some.Eyepiece(10, price: 20000);
        var opinion = OpinionOn([dear, Some.Eyepiece(5), Problem.Owned[0]]);

        Assert.Equal<Exclusion>([new Exclusion(dear, Excluded.OverBudget), new Exclusion(Problem.Owned[0], Excluded.OverlapsOwned)], opinion.Exclusions);
    }

    [Fact]
    public void An_owned_item_that_is_bought_again_repeats_itself_and_blames_nothing_else_on_the_purchase()
    {
        // 20 and 21 mm repeat one another already, so that the second 20 mm makes two more pairs.
        var opinion = OpinionOn([Problem.Owned[0]]);

        Assert.Equal<Breach>([new Breach.Overlaps(2, 0)], opinion.Breaches);
    }

    [Fact]
    public void The_difference_is_that_of_the_figures()
    {
        var opinion = OpinionOn([Some.Eyepiece(10, price: 60)]);
        var (list, nothing) = (opinion.List.Figures, Kit.Of(Problem, []).Figures);

        Assert.Equal(60, opinion.Difference!.TotalPrice);
        Assert.Equal(list.LargestStep.Ratio - nothing.LargestStep.Ratio, opinion.Difference.LargestStep);
        Assert.True(opinion.Difference.LargestStep < 0);
        Assert.Equal(Math.Exp(list.MeanMismatch) - Math.Exp(nothing.MeanMismatch), opinion.Difference.MeanMismatch);
        Assert.True(opinion.Difference.ServedShare > 0);
    }

    [Fact]
    public void Where_there_is_nothing_to_look_through_no_step_differs()
    {
        var opinion = OpinionOn([Some.Barlow(2, price: 50)], Problem with { Owned = [] });

        Assert.Equal(new KitDifference(50, null, null, 0, 0), opinion.Difference);
    }

    /// <summary>Beside a plan that buys nothing.</summary>
    private static SecondOpinion OpinionOn(ImmutableArray<Item> list, PurchaseProblem? problem = null)
    {
        var asked = (problem ?? Problem) with { Catalogue = [.. list] };
        var values = new StageValues(default, default, 0, 0, 0);
        var plan = new Plan { Outcome = Outcome.NothingWorthwhile, Purchases = [], Candidacy = Candidacy.Of(asked), Values = values };
        return SecondOpinion.Of(asked, plan, list);
    }

    private static IEnumerable<(OracleProblem Problem, string[] Ids)> Drawn() =>
        Enumerable.Range(FirstSeed, Lists).Select(seed => RandomProblems.Make(seed)).Select((problem, i) => (problem, ShoppingLists.Draw(problem, i)));

    private static int TimesIn(Breach breach) => breach is Breach.Overlaps overlaps ? overlaps.Count : 1;

    private static string CodeOf(Breach breach) => breach switch
    {
        Breach.Budget => "budget",
        Breach.MaxPurchases => "max-purchases",
        Breach.MaxBarlows => "max-barlows",
        Breach.Reticles => "reticles",
        Breach.Overlaps => "overlap",
        Breach.MustInclude => "must-include",
        Breach.MustFrame => "must-frame",
        _ => "reticle",
    };
}
