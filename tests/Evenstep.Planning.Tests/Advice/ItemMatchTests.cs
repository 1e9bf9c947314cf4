using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>One telescope of 1000 mm, of use from 25 to 200 times; 25 mm give 40 times, 10 mm give 100.</summary>
public sealed class ItemMatchTests
{
    private const int Draws = 800;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Fact]
    public void A_view_in_a_wide_step_fills_it()
    {
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Eyepiece(12.5));

        Assert.Equal((Verdict.FillsAStep, JumpPlace.BetweenViews, 40.0, 200.0), (match.Verdict, match.Filling!.Jump.Place, From(match), To(match)));
        Assert.True(match.After.Figures.MeanExcess < match.Before.Figures.MeanExcess);
    }

    [Theory]
    [InlineData(24, JumpPlace.LowEnd)]
    [InlineData(6, JumpPlace.HighEnd)]
    public void A_view_towards_an_end_fills_the_step_there(double focalLengthMm, JumpPlace end)
    {
        var match = Owning([Some.Eyepiece(20), Some.Eyepiece(14), Some.Eyepiece(10)], Some.Eyepiece(focalLengthMm), leastStep: 1.1);

        Assert.Equal((Verdict.FillsAStep, (JumpPlace?)end), (match.Verdict, match.Filling?.Jump.Place));
    }

    [Fact]
    public void A_step_across_the_whole_range_lies_at_the_end_that_nothing_reaches()
    {
        var match = Owning([Some.Eyepiece(40)], Some.Eyepiece(5));

        Assert.Equal((Verdict.FillsAStep, (JumpPlace?)JumpPlace.HighEnd), (match.Verdict, match.Filling?.Jump.Place));
    }

    [Fact]
    public void The_first_view_of_all_fills_the_whole_range()
    {
        var match = Owning([], Some.Eyepiece(12.5));

        Assert.Equal((Verdict.FillsAStep, 25.0, 200.0), (match.Verdict, From(match), To(match)));
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
    [InlineData(62.5, Verdict.WidensTheView)] // just 1.25 times the field of 50 degrees
    [InlineData(62.4, Verdict.Repeats)]
    public void A_view_with_a_much_wider_field_than_any_widens_the_view(double apparentFieldDeg, Verdict verdict)
    {
        var match = Owning([Some.Eyepiece(20)], Some.Eyepiece(20, apparentFieldDeg, id: "wide"), enoughStep: 4);

        Assert.Equal((verdict, verdict == Verdict.WidensTheView ? (double?)1 : null), (match.Verdict, match.WiderField?.WidestDeg));
    }

    [Theory]
    [InlineData(62.5, true)]
    [InlineData(62.6, false)] // more than 1.25 times: an upgrade
    public void What_a_recommendation_would_not_buy_for_its_overlap_is_marked_whatever_else_it_does(double apparentFieldDeg, bool repeatsTooMuch)
    {
        var match = Owning([Some.Eyepiece(20)], Some.Eyepiece(20, apparentFieldDeg, id: "wide"));

        Assert.Equal((Verdict.WidensTheView, repeatsTooMuch), (match.Verdict, match.RepeatsTooMuch));
    }

    [Theory]
    [InlineData(25, Verdict.WidensTheView)] // 1.25 degrees instead of 1
    [InlineData(24.9, Verdict.FillsAStep)]
    [InlineData(10.5, Verdict.ChangesNothing)]
    public void Only_the_widest_of_all_counts(double focalLengthMm, Verdict verdict)
    {
        var item = Some.Eyepiece(focalLengthMm, focalLengthMm < 24 ? 80 : 50);
        var match = Owning([Some.Eyepiece(20), Some.Eyepiece(14), Some.Eyepiece(5)], item, enoughStep: 4);

        Assert.Equal(verdict, match.Verdict);
    }

    [Fact]
    public void A_view_close_to_an_owned_one_that_narrows_a_step_fills_it_and_is_marked()
    {
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(5)], Some.Eyepiece(22));

        Assert.Equal((Verdict.FillsAStep, true), (match.Verdict, match.RepeatsTooMuch));
        Assert.Equal(["eyepiece-25 eyepiece-22"], match.Repetitions.Select(pair => $"{pair.First.Eyepiece} {pair.Second.Eyepiece}"));
    }

    [Fact]
    public void A_Barlow_that_repeats_one_power_and_fills_a_step_with_another_fills_it()
    {
        // 2x gives 80, 100 and 160 times; 100 times is there already.
        var match = Owning([Some.Eyepiece(25), Some.Eyepiece(20), Some.Eyepiece(10)], Some.Barlow(2));

        Assert.Equal((Verdict.FillsAStep, 1, true), (match.Verdict, match.Repetitions.Length, match.RepeatsTooMuch));
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
        Assert.Equal(Verdict.NotUsable, Owning([Some.Eyepiece(20)], Some.Eyepiece(12, eyeReliefMm: 4)).Verdict);
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
    public void The_verdict_on_any_item_goes_with_its_figures()
    {
        var verdicts = new HashSet<Verdict>();
        for (var seed = 0; seed < Draws; seed++)
        {
            var kit = KitDraw.Make(seed, owned: seed % 4, bought: 2);
            foreach (var item in kit.Purchases.Where(_ => kit.Ladders.Length == 1))
            {
                var match = ItemMatch.Of(kit.Problem, item);

                verdicts.Add(match.Verdict);
                Assert.Equal(Expected(match), match.Verdict);
                Assert.Equal(match.Verdict == Verdict.FillsAStep, match.Filling is not null);
                Assert.Equal(match.Verdict == Verdict.WidensTheView, match.WiderField is not null);
            }
        }

        Assert.Equal(Enum.GetValues<Verdict>(), verdicts.Order());
    }

    private static Verdict Expected(ItemMatch match)
    {
        var (before, after) = (match.Before.Figures, match.After.Figures);
        var isSmaller = Read(before.LargestStep.Ratio, 3) > Read(after.LargestStep.Ratio, 3) || Read(Percent(before), 2) > Read(Percent(after), 2);
        var (so, then) = (match.Before.WidestFieldDeg() ?? 0, match.Views.Where(view => view.IsUsable).Max(view => (double?)view.View.TrueFieldDeg) ?? 0);
        return so > 0 && then / so > 1.25 - 1e-9 ? Verdict.WidensTheView
            : then > 0 && (so == 0 || isSmaller) ? Verdict.FillsAStep
            : match.Repetitions.Length > 0 ? Verdict.Repeats
            : match.Views.Length > 0 && then == 0 ? Verdict.NotUsable
            : Verdict.ChangesNothing;
    }

    private static double From(ItemMatch match) => Math.Round(match.Filling!.Jump.FromPower, 6);

    private static double To(ItemMatch match) => Math.Round(match.Filling!.Jump.ToPower, 6);

    private static double Percent(LadderFigures figures) => 100 * (Math.Exp(figures.MeanExcess) - 1);

    private static double Read(double figure, int decimals) => Math.Round(Math.Round(figure, 9), decimals, MidpointRounding.AwayFromZero);

    private static ItemMatch Owning(Item[] owned, Item item, double enoughStep = 1.5, double leastStep = 1.15)
    {
        var preferences = new Preferences { EnoughStep = enoughStep, LeastStep = leastStep };
        return ItemMatch.Of(Some.Problem(From25To200, owned: [.. owned], catalogue: [item]) with { Preferences = preferences }, item);
    }
}
