using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>The wish for a wide view comes after the first stage, and before all others.</summary>
public class WishTests
{
    private const int FirstSeed = 720_000;
    private const int Problems = 300;
    private const long ManyNodes = 1_000_000;
    private const double FigureTolerance = 1e-6;

    private static readonly Observer OfNebulae = new() { Observes = [Interest.LargeNebulae] };

    [Fact]
    public void It_is_granted_exactly_if_a_set_of_the_first_stage_grants_it_and_never_widens_the_least_step()
    {
        var (granted, refused) = (0, 0);
        foreach (var seed in Enumerable.Range(FirstSeed, Problems))
        {
            var drawn = RandomProblems.Make(seed);
            OracleInterest[] observes = [.. drawn.Observer.Observes.Append(OracleInterest.LargeNebulae).Distinct()];
            var wishing = drawn with { Observer = drawn.Observer with { Observes = observes } };
            var problem = Bridge.ToProblem(wishing);
            if (SearchEngine.Solve(problem, ManyNodes, new WorkBudget(Comparison.WorkLimit)).Plan is not { Values: { } values, Wish: { } wish } plan)
            {
                continue;
            }

            var search = new OracleSearch(wishing);
            OraclePlan[] allowed = [.. Exhaustive.AllowedSets(wishing)];
            var least = allowed.Min(set => OracleElection.StepOf(search, set));
            var kept = allowed.Where(set => Tolerance.AtMost(OracleElection.StepOf(search, set), StageValues.StepLeeway * least));
            var isGranted = kept.Any(set => Tolerance.AtLeast(search.WidestField(search.SetOf(set.Ids), null) / wish.TrueFieldDeg, 1));
            Assert.Equal(least, values.LeastLargestStep.Ln, FigureTolerance);
            Assert.True(isGranted == wish.Granted, $"seed {seed}");
            Assert.True(!isGranted || FramingRule.Frames(Kit.Of(problem, plan.Purchases), wish.TrueFieldDeg, null), $"seed {seed}");
            granted += isGranted ? 1 : 0;
            refused += isGranted ? 0 : 1;
        }

        Assert.True(granted > Problems / 2 && refused > 3, $"{granted} granted, {refused} refused");
    }

    /// <summary>With money for one, the 40 mm shows most sky, but leaves too wide a step; the 14 mm does not show three quarters of it.</summary>
    [Fact]
    public void It_is_refused_where_only_a_set_with_too_wide_a_step_would_grant_it()
    {
        var plan = Solve(money: 100, Some.Eyepiece(40, 60, id: "wide"), Some.Eyepiece(14, 50, id: "even"));
        Assert.Equal("even", Assert.Single(plan.Purchases).Id);
        Assert.False(plan.Wish!.Granted);
    }

    [Fact]
    public void It_is_granted_where_the_step_allows_it_though_it_costs_more()
    {
        var plan = Solve(money: 200, Some.Eyepiece(14, 80, id: "wide", price: 180), Some.Eyepiece(14.2, 50, id: "plain", price: 50));
        Assert.Equal("wide", Assert.Single(plan.Purchases).Id);
        Assert.True(plan.Wish!.Granted);
    }

    [Fact]
    public void Nobody_else_wishes_for_one() => Assert.Null(SearchEngine
        .Solve(Some.Problem(catalogue: [Some.Eyepiece(40), Some.Eyepiece(14)]), ManyNodes, new WorkBudget(Comparison.WorkLimit)).Plan!.Wish);

    private static Plan Solve(decimal money, params Item[] catalogue)
    {
        var problem = Some.Problem(Some.InUse(lowest: 25, highest: 200, observer: OfNebulae), catalogue: [.. catalogue], observer: OfNebulae);
        return SearchEngine.Solve(problem with { Limits = problem.Limits with { Budget = money } }, ManyNodes, new WorkBudget(Comparison.WorkLimit)).Plan!;
    }
}
