using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>By a planner that buys by rule, so that it is known where it changes its mind.</summary>
public sealed class HoldsWhileTests
{
    private static readonly Item Cheap = Some.Eyepiece(10, id: "cheap", price: 50);
    private static readonly Item Dear = Some.Eyepiece(10, id: "dear", price: 80);
    private static readonly PurchaseProblem Problem = Some.Problem(catalogue: [Cheap, Dear]) with { Limits = new Limits { Budget = 100.10m } };

    [Fact]
    public void The_seeing_is_tried_in_tenths_from_half_to_twice()
    {
        var held = Of(problem => problem.Telescopes[0].Range.Highest > 100 ? Dear : Cheap);

        // The highest power is 300 / seeing, but 100 / 0.7 at most: 3 arcseconds leave 100.
        Assert.Equal(new HeldInterval(0.8m, 2.9m, 7 + 15, null, held.SeeingArcsec!.Above), held.SeeingArcsec);
        Assert.Equal((3.0m, "cheap"), (held.SeeingArcsec.Above!.Value, held.SeeingArcsec.Above.Plan!.Purchases.Single().Id));
    }

    [Fact]
    public void The_pupil_that_counts_is_tried_up_to_one_and_a_half_millimetres_either_way()
    {
        var held = Of(problem => problem.Observer.DarkAdaptedPupilMm < 5.25 ? Cheap : Dear);

        Assert.Equal((5.3m, 7.5m, 8 + 15), (held.PupilMm!.From, held.PupilMm.To, held.PupilMm.Tried));
        Assert.Equal((5.2m, "cheap"), (held.PupilMm.Below!.Value, held.PupilMm.Below.Plan!.Purchases.Single().Id));
        Assert.Null(held.PupilMm.Above);
    }

    [Theory]
    [InlineData(2.0, 1.0, 3.5)]
    [InlineData(8.0, 6.5, 9.0)]
    public void No_pupil_is_tried_that_nobody_has(double pupilMm, double from, double to)
    {
        var held = Of(_ => Dear, Problem with { Observer = new Observer { PupilMm = pupilMm }, Telescopes = [Some.InUse(lowest: 40)] });

        Assert.Equal(((decimal)from, (decimal)to), (held.PupilMm!.From, held.PupilMm.To));
    }

    [Fact]
    public void The_budget_is_tried_in_twentieths_rounded_down_to_cents()
    {
        var held = Of(problem => problem.Limits.Budget switch { < 75.07m => Cheap, > 150.14m => Cheap, _ => Dear });

        Assert.Equal((75.07m, 145.14m, 6 + 10), (held.Budget!.From, held.Budget.To, held.Budget.Tried));
        Assert.Equal((70.07m, 150.15m), (held.Budget.Below!.Value, held.Budget.Above!.Value));
    }

    [Fact]
    public void Without_money_no_other_sum_is_tried() =>
        Assert.Equal(new HeldInterval(0, 0, 0, null, null), Of(_ => null, Problem with { Limits = new Limits { Budget = 0 } }).Budget);

    /// <summary>Of use are 28.6 to 300 / seeing times; 150 were asked for at the least, and 3 arcseconds leave 100.</summary>
    [Fact]
    public void A_value_that_leaves_no_range_of_powers_is_a_change()
    {
        var held = Of(_ => Dear, Problem with { Telescopes = [Some.InUse(lowest: 90)] });

        Assert.Equal((2.2m, 2.3m, null), (held.SeeingArcsec!.To, held.SeeingArcsec.Above!.Value, held.SeeingArcsec.Above.Plan));
    }

    [Fact]
    public void What_allows_nothing_is_a_change()
    {
        var held = HoldsWhile.Of(Problem, PlanOf(Problem, Dear), 1.5, (problem, _) =>
            problem.Limits.Budget < 80 ? PlanOf(problem, null) with { Outcome = Outcome.Infeasible } : PlanOf(problem, Dear), new WorkBudget(1));

        Assert.Equal((80.08m, Outcome.Infeasible), (held!.Budget!.From, held.Budget.Below!.Plan!.Outcome));
    }

    [Fact]
    public void Where_the_work_does_not_suffice_for_an_input_nothing_is_said_of_it()
    {
        var held = HoldsWhile.Of(Problem, PlanOf(Problem, Dear), 1.5, (problem, budget) =>
            problem.Limits.Budget == Problem.Limits.Budget ? PlanOf(problem, Dear) : throw new WorkLimitException(), new WorkBudget(1));
        var unproved = HoldsWhile.Of(
            Problem, PlanOf(Problem, Dear), 1.5, (problem, _) => PlanOf(problem, Dear) with { Outcome = Outcome.BestFound }, new WorkBudget(1));

        Assert.NotNull(held!.SeeingArcsec);
        Assert.Null(held.Budget);
        Assert.Equal(new HoldsWhile(null, null, null), unproved);
    }

    [Fact]
    public void What_one_input_leaves_of_the_work_is_for_those_after_it()
    {
        List<double> left = [];
        HoldsWhile.Of(Problem, PlanOf(Problem, Dear), 1.5, (problem, budget) =>
        {
            left.Add(budget.UnitsLeft);
            return PlanOf(problem, problem.Limits.Budget == Problem.Limits.Budget ? Cheap : Dear);
        }, new WorkBudget(3));

        Assert.Equal((1.0, 3.0), (left[0], left[^1]));
    }

    [Fact]
    public void Of_what_is_not_allowed_nothing_is_said() => Assert.Null(HoldsWhile.Of(
        Problem, PlanOf(Problem, null) with { Outcome = Outcome.Infeasible }, 1.5, (problem, _) => PlanOf(problem, null), new WorkBudget(1)));

    [Fact]
    public void Ends_of_the_range_that_were_asked_for_stay()
    {
        var problem = Problem with { Telescopes = [Some.InUse(lowest: 40, highest: 150)] };
        List<PowerRange> ranges = [];
        Of(changed =>
        {
            ranges.Add(changed.Telescopes[0].Range);
            return Dear;
        }, problem);

        Assert.All(ranges, range => Assert.Equal((40.0, 150.0), (range.Lowest, range.Highest)));
        Assert.Equal(22 + 30 + 30, ranges.Count - 1);
    }

    private static HoldsWhile Of(Func<PurchaseProblem, Item?> choose, PurchaseProblem? problem = null)
    {
        var asked = problem ?? Problem;
        return HoldsWhile.Of(
            asked, PlanOf(asked, choose(asked)), PowerRange.UsualSeeingArcsec, (changed, _) => PlanOf(changed, choose(changed)), new WorkBudget(1))!;
    }

    private static Plan PlanOf(PurchaseProblem problem, Item? item) => new()
    {
        Outcome = item is null ? Outcome.NothingWorthwhile : Outcome.Optimal,
        Purchases = item is null ? [] : [item],
        Candidacy = Candidacy.Of(problem),
    };
}
