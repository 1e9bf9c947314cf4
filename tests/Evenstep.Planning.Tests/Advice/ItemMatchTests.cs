using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>One telescope of 1000 mm, of use from 25 to 200 times; 25 mm give 40 times, 10 mm give 100.</summary>
public sealed class ItemMatchTests
{
    private const int Draws = 800;
    private const int FirstSeed = 440_000;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Fact]
    public void A_view_in_a_wide_step_fills_it()
    {
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Eyepiece(12.5));

        Assert.Equal(
            (Verdict.FillsAStep, 40.0, 200.0, JumpPlace.BetweenViews),
            (match.Verdict, Math.Round(match.Filling!.Jump.FromPower, 6), Math.Round(match.Filling.Jump.ToPower, 6), match.Filling.Jump.Place));
        Assert.True(match.After.Figures.MeanExcess < match.Before.Figures.MeanExcess);
    }

    [Theory]
    [InlineData(40, JumpPlace.LowEnd)]
    [InlineData(6, JumpPlace.HighEnd)]
    public void A_view_towards_an_end_fills_the_step_there(double focalLengthMm, JumpPlace end)
    {
        var match = Owning([Some.Eyepiece(20), Some.Eyepiece(14), Some.Eyepiece(10)], Some.Eyepiece(focalLengthMm));

        Assert.Equal((Verdict.FillsAStep, (JumpPlace?)end), (match.Verdict, match.Filling?.Jump.Place));
    }

    [Theory]
    [InlineData(40, 5, JumpPlace.HighEnd)]
    [InlineData(5, 40, JumpPlace.LowEnd)]
    public void A_step_across_the_whole_range_lies_at_the_end_that_nothing_reaches(double ownedMm, double focalLengthMm, JumpPlace end)
    {
        var match = Owning([Some.Eyepiece(ownedMm)], Some.Eyepiece(focalLengthMm));

        Assert.Equal((Verdict.FillsAStep, (JumpPlace?)end), (match.Verdict, match.Filling?.Jump.Place));
    }

    [Fact]
    public void The_first_view_of_all_fills_the_whole_range()
    {
        var match = Owning([], Some.Eyepiece(12.5));

        Assert.Equal(
            (Verdict.FillsAStep, 25.0, 200.0), (match.Verdict, Math.Round(match.Filling!.Jump.FromPower, 6), Math.Round(match.Filling.Jump.ToPower, 6)));
    }

    [Fact]
    public void A_Barlow_fills_a_step_by_what_it_makes_of_an_eyepiece()
    {
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Barlow(2));

        Assert.Equal((Verdict.FillsAStep, 80.0), (match.Verdict, match.Filling!.View.View.Power));
        Assert.Equal([80.0, 400.0], match.Views.Select(view => view.View.Power));
        Assert.Equal([true, false], match.Views.Select(view => view.IsUsable));
    }

    [Theory]
    [InlineData(62.6, true)]
    [InlineData(62.5, false)] // just 1.25 times the field of 50 degrees
    public void A_view_of_an_owned_power_with_a_much_wider_field_widens_the_view(double apparentFieldDeg, bool widens)
    {
        var match = Owning([Some.Eyepiece(20)], Some.Eyepiece(20, apparentFieldDeg, id: "wide"), enoughStep: 4);

        Assert.Equal(widens ? Verdict.WidensTheView : Verdict.Repeats, match.Verdict);
        Assert.Equal(widens, match.WiderField is { WidestDeg: 1, AtItsPower: true });
        Assert.Equal(widens ? 0 : 1, match.Repetitions.Length);
    }

    [Theory]
    [InlineData(25.1, Verdict.WidensTheView)]
    [InlineData(25, Verdict.ChangesNothing)] // 1.25 degrees instead of 1
    public void A_view_of_a_new_power_widens_the_view_beside_the_widest_of_all(double focalLengthMm, Verdict verdict)
    {
        var match = Owning([Some.Eyepiece(20), Some.Eyepiece(10)], Some.Eyepiece(focalLengthMm), enoughStep: 4);

        Assert.Equal(verdict, match.Verdict);
        Assert.NotEqual(true, match.WiderField?.AtItsPower);
    }

    [Fact]
    public void A_view_close_to_an_owned_one_repeats_it_though_it_would_narrow_a_step()
    {
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Eyepiece(22));

        Assert.Equal(Verdict.Repeats, match.Verdict);
        Assert.Equal(["eyepiece-25 eyepiece-22"], match.Repetitions.Select(pair => $"{pair.First.Eyepiece} {pair.Second.Eyepiece}"));
        Assert.Null(match.Filling);
    }

    [Fact]
    public void A_Barlow_that_repeats_one_power_and_fills_a_step_with_another_fills_it()
    {
        // 2x gives 80, 100 and 160 times; 100 times is there already.
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(20), Some.Eyepiece(10)], Some.Barlow(2));

        Assert.Equal((Verdict.FillsAStep, 1), (match.Verdict, match.Repetitions.Length));
        Assert.DoesNotContain(match.Repetitions, pair => pair.First == match.Filling!.View || pair.Second == match.Filling.View);
    }

    [Fact]
    public void What_is_owned_already_repeats_itself()
    {
        Assert.Equal(Verdict.Repeats, Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Eyepiece(5)).Verdict);
        Assert.Equal(Verdict.Repeats, Owning([Some.Zoom(8, 24)], Some.Zoom(8, 24)).Verdict);
    }

    [Fact]
    public void What_makes_only_views_of_no_use_is_not_usable()
    {
        Assert.Equal(Verdict.NotUsable, Owning([Some.Eyepiece(20)], Some.Eyepiece(2)).Verdict); // 500 times
        Assert.Equal(Verdict.NotUsable, Owning([Some.Eyepiece(20)], Some.Eyepiece(12, eyeReliefMm: 5)).Verdict);
        Assert.Equal(Verdict.NotUsable, Owning([Some.Eyepiece(5)], Some.Barlow(3)).Verdict);
        Assert.Equal(Verdict.NotUsable, Owning([], Some.Barlow(2, barrel: Barrel.Inch2)).Verdict);
        Assert.Equal(Verdict.NotUsable, Owning([], Some.Eyepiece(20, barrel: Barrel.Inch2)).Verdict);
    }

    [Fact]
    public void What_makes_no_view_changes_nothing()
    {
        Assert.Equal(Verdict.ChangesNothing, Owning([], Some.Barlow(2)).Verdict);
        Assert.Equal(Verdict.ChangesNothing, Owning([Some.Eyepiece(20)], Some.Reticle(12)).Verdict);
    }

    [Fact]
    public void What_lands_where_the_steps_are_enough_changes_nothing()
    {
        var match = Owning([Some.Eyepiece(40), Some.Eyepiece(20), Some.Eyepiece(10), Some.Eyepiece(5)], Some.Eyepiece(14), enoughStep: 4);

        Assert.Equal(Verdict.ChangesNothing, match.Verdict);
    }

    [Fact]
    public void No_eyepiece_of_a_plan_is_of_no_use_by_itself()
    {
        var verdicts = new HashSet<Verdict>();
        foreach (var problem in Drawn())
        {
            foreach (var item in Planner.Solve(problem, new WorkBudget(10)).Purchases.Where(item => item.Ocular is not null))
            {
                var match = ItemMatch.Of(problem, item);
                verdicts.Add(match.Verdict);
                Assert.True(match.Verdict != Verdict.NotUsable, $"{item} is judged {match.Verdict}");
            }
        }

        Assert.Contains(Verdict.FillsAStep, verdicts);
    }

    [Fact]
    public void The_verdict_on_any_item_goes_with_its_figures()
    {
        var verdicts = new HashSet<Verdict>();
        foreach (var problem in Drawn())
        {
            foreach (var item in problem.Catalogue.Items)
            {
                var match = ItemMatch.Of(problem, item);
                var isBetter = Tolerance.Below(match.After.Figures.MeanExcess, match.Before.Figures.MeanExcess);

                verdicts.Add(match.Verdict);
                Assert.Equal(match.Verdict == Verdict.NotUsable && match.Views.Length > 0, match.Views.Length > 0 && match.Views.All(view => !view.IsUsable));
                Assert.True(
                    match.Verdict != Verdict.FillsAStep || isBetter || !match.Before.Figures.HasViews, $"{item} fills a step and leaves no less excess");
                Assert.False(match.Verdict == Verdict.ChangesNothing && isBetter, $"{item} leaves less excess and is said to change nothing");
                Assert.Equal(match.Verdict == Verdict.FillsAStep, match.Filling is not null);
                Assert.Equal(match.Verdict == Verdict.WidensTheView, match.WiderField is not null);
            }
        }

        Assert.Equal(Enum.GetValues<Verdict>(), verdicts.Order());
    }

    private static IEnumerable<PurchaseProblem> Drawn() => Enumerable.Range(FirstSeed, Draws)
        .Select(seed => Bridge.ToProblem(RandomProblems.Make(seed)))
        .Where(problem => problem.Telescopes.Length == 1);

    private static ItemMatch Owning(Item[] owned, Item item, double enoughStep = 1.5) => ItemMatch.Of(
        Some.Problem(From25To200, owned: [.. owned], catalogue: [item]) with { Preferences = new Preferences { EnoughStep = enoughStep } },
        item);
}
