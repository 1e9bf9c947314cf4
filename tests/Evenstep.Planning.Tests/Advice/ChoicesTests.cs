using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>By a planner that buys by rule: what each way of weighing chooses is known.</summary>
public sealed class ChoicesTests
{
    private static readonly Item Plain = new("plain", new Eyepiece(10, 50, 16, Barrel.Inch125)) { Price = 50, MassGrams = 100 };
    private static readonly Item Wide = new("wide", new Eyepiece(10, 82, 16, Barrel.Inch125)) { Price = 150, MassGrams = 450 };
    private static readonly Item Tight = new("tight", new Eyepiece(10, 50, 6, Barrel.Inch125)) { Price = 30, MassGrams = 100 };
    private static readonly Item Doubling = new("doubling", new Barlow([2], Barrel.Inch125)) { Price = 40, MassGrams = 80 };

    private static readonly PurchaseProblem Problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), catalogue: [Plain, Wide, Tight, Doubling]) with
    {
        Preferences = new Preferences { Prefer = Prefer.LightWeight, EnoughStep = 1.7 },
    };

    [Fact]
    public void Each_way_of_weighing_is_asked_and_all_else_stays_as_it_was_asked()
    {
        List<Preferences> asked = [];
        Choices.Of(Problem, (problem, _) =>
        {
            asked.Add(problem.Preferences);
            return PlanOf(problem, Plain);
        }, new WorkBudget(1));

        Assert.Equal(
            [(Prefer.Comfort, false), (Prefer.LowPrice, false), (Prefer.Comfort, true), (Prefer.WideField, false)],
            asked.Select(one => (one.Prefer, one.AvoidBarlows)));
        Assert.All(asked, one => Assert.Equal(1.7, one.EnoughStep));
    }

    [Fact]
    public void Barlows_that_are_not_wanted_stay_so()
    {
        var weighed = Choices.Weighing(Problem with { Preferences = new Preferences { AvoidBarlows = true } }, ChoiceCode.WidestViews);

        Assert.True(weighed.Preferences.AvoidBarlows);
    }

    [Fact]
    public void Those_that_agree_are_one_and_the_cheapest_comes_first()
    {
        var choices = Chosen(cheap: [Tight], comfort: [Plain], noBarlow: [Plain], wide: [Wide]);

        Assert.Equal(
            [[ChoiceCode.LeastMoney], [ChoiceCode.Comfort, ChoiceCode.NoBarlow], [ChoiceCode.WidestViews]],
            choices.All.Select(choice => choice.Codes.ToArray()));
        Assert.Equal([30m, 50m, 150m], choices.All.Select(choice => choice.Kit.TotalPrice));
        Assert.True(choices.AreProved);
    }

    [Fact]
    public void What_each_has_more_and_less_is_told_beside_comfort()
    {
        var high = new Item("high", Some.Eyepiece(5).Optic) { Price = 60, MassGrams = 100 };
        var choices = Chosen(cheap: [Tight, Doubling], comfort: [Plain, Doubling], noBarlow: [Plain, high], wide: [Wide, Doubling]);

        Assert.Equal(["costs-less 20", "less-comfortable 0 57.42"], Told(choices, ChoiceCode.LeastMoney));
        Assert.Empty(Told(choices, ChoiceCode.Comfort));
        Assert.Equal(["costs-more 20", "lighter-at-focuser 100 180", "more-eyepieces 2 1", "fewer-barlows 0 1"], Told(choices, ChoiceCode.NoBarlow));
        Assert.Equal(["costs-more 100", "wider-fields 82 50", "heavier-at-focuser 530 180"], Told(choices, ChoiceCode.WidestViews));
    }

    [Fact]
    public void A_difference_that_cannot_be_read_is_none()
    {
        var alike = new Item("alike", new Eyepiece(10, 50.0001, 16, Barrel.Inch125)) { Price = 50, MassGrams = 100.01 };
        var kits = (Kit.Of(Problem, [Plain]), Kit.Of(Problem, [alike]));

        Assert.Empty(Differences.Of(kits.Item1, kits.Item2, [0]));
    }

    [Fact]
    public void Masses_are_compared_only_where_those_of_all_purchases_are_known()
    {
        var weighed = new Item("weighed", new Eyepiece(10, 50, 16, Barrel.Inch125)) { MassGrams = 165 };
        var light = new Item("light", new Eyepiece(10, 50, 16, Barrel.Inch125)) { MassGrams = 50 };
        var unknown = new Item("unknown", new Eyepiece(10, 50, 16, Barrel.Inch125));
        var owner = Problem with { Owned = [unknown] };

        Assert.Empty(Differences.Of(Kit.Of(Problem, [unknown, light]), Kit.Of(Problem, [weighed, light]), [0]));
        Assert.Null(Differences.Of(Kit.Of(Problem, [light]), Kit.Of(Problem, [weighed]), [0]).Single().Variant);
        Assert.Equal(Differences.AsFarAsKnown, Differences.Of(Kit.Of(owner, [light]), Kit.Of(owner, [weighed]), [0]).Single().Variant);
    }

    [Fact]
    public void How_much_is_served_is_compared()
    {
        Assert.Contains(Differences.LessServed, Differences.Of(Kit.Of(Problem, []), Kit.Of(Problem, [Some.Eyepiece(10)]), [0]).Select(one => one.Code));
        Assert.Contains(Differences.MoreServed, Differences.Of(Kit.Of(Problem, [Some.Eyepiece(10)]), Kit.Of(Problem, []), [0]).Select(one => one.Code));
    }

    [Fact]
    public void Where_nothing_is_allowed_there_are_no_choices_and_the_plan_says_why()
    {
        var choices = Choices.Of(Problem, (problem, _) => PlanOf(problem) with { Outcome = Outcome.Infeasible }, new WorkBudget(1));

        Assert.Equal((0, Outcome.Infeasible), (choices.All.Length, choices.Comfort.Outcome));
    }

    [Fact]
    public void A_way_that_allows_nothing_is_no_choice()
    {
        var choices = Choices.Of(
            Problem,
            (problem, _) => problem.Preferences.AvoidBarlows ? PlanOf(problem) with { Outcome = Outcome.Infeasible } : PlanOf(problem, Plain),
            new WorkBudget(1));

        Assert.Equal([ChoiceCode.LeastMoney, ChoiceCode.Comfort, ChoiceCode.WidestViews], Assert.Single(choices.All).Codes.AsEnumerable());
        var infeasible = Assert.Single(choices.Infeasible);
        Assert.Equal((ChoiceCode.NoBarlow, true), (infeasible.Code, infeasible.Barlows.IsEmpty));
    }

    [Fact]
    public void A_Barlow_that_must_be_bought_leaves_no_choice_without_one()
    {
        var choices = Chosen(cheap: [Tight, Doubling], comfort: [Plain, Doubling], noBarlow: [Plain, Doubling], wide: [Wide, Doubling]);

        Assert.DoesNotContain(ChoiceCode.NoBarlow, choices.All.SelectMany(choice => choice.Codes));
        var infeasible = Assert.Single(choices.Infeasible);
        Assert.Equal((ChoiceCode.NoBarlow, "doubling"), (infeasible.Code, infeasible.Barlows.Single().Id));
        Assert.True(choices.AreProved);
    }

    [Fact]
    public void A_way_for_which_the_work_does_not_suffice_is_named()
    {
        var choices = Choices.Of(
            Problem,
            (problem, _) => problem.Preferences.Prefer == Prefer.WideField ? throw new WorkLimitException() : PlanOf(problem, Plain),
            new WorkBudget(1));

        Assert.Equal([ChoiceCode.WidestViews], choices.NotFound.AsEnumerable());
        Assert.False(choices.AreProved);
    }

    private static Choices Chosen(Item[] cheap, Item[] comfort, Item[] noBarlow, Item[] wide) => Choices.Of(
        Problem,
        (problem, _) => PlanOf(problem, problem.Preferences switch
        {
            { Prefer: Prefer.LowPrice } => cheap,
            { Prefer: Prefer.WideField } => wide,
            { AvoidBarlows: true } => noBarlow,
            _ => comfort,
        }),
        new WorkBudget(1));

    private static IEnumerable<string> Told(Choices choices, ChoiceCode code) => choices.All.Single(choice => choice.Codes.Contains(code)).Differences
        .Select(remark => string.Join(' ', [remark.Code, .. remark.Values.Select(Read)]));

    private static string Read(RemarkValue value) => value.Value is double number ? $"{Math.Round(number, value.Decimals)}" : $"{value.Value}";

    private static Plan PlanOf(PurchaseProblem problem, params Item[] purchases) =>
        new() { Outcome = Outcome.Optimal, Purchases = [.. purchases], Candidacy = Candidacy.Of(problem) };
}
