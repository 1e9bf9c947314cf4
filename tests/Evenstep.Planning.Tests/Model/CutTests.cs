using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Cuts;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Tests.Model;

/// <summary>Cuts against the definitions: what is within a question is never cut off, what made a cut always is.</summary>
public class CutTests
{
    private const int Problems = 120;
    private const int SetsEach = 4;
    private const double FigureTolerance = 1e-12;

    [Fact]
    public void A_set_is_judged_as_its_kit_is()
    {
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            foreach (var places in drawn.RandomSets(SetsEach))
            {
                var (judged, kit) = (Judged.Of(drawn.Settled, places), drawn.KitOf(places));
                Assert.Equal(drawn.FiguresOf(kit).LargestStep.Ln, judged.Step.Ln, FigureTolerance);
                Assert.Equal(drawn.FiguresOf(kit).MeanExcess, judged.MeanExcess, FigureTolerance);
                Assert.Equal(drawn.QualityOf(kit), judged.Quality, FigureTolerance);
            }
        }
    }

    [Fact]
    public void Overlaps_are_counted_as_the_kit_counts_them()
    {
        var overlapping = 0;
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            foreach (var places in drawn.RandomSets(SetsEach))
            {
                var settled = drawn.Settled;
                var counted = settled.OverlapsOfNothing + places.Sum(settled.OverlapsOf) + Judged.Of(settled, places).Clashes().Sum(clash => clash.Pairs);
                Assert.Equal(drawn.KitOf(places).OverlapsThroughPurchases(), counted);
                overlapping += counted > 0 ? 1 : 0;
            }
        }

        Assert.True(overlapping > Problems / 2, $"only {overlapping} sets overlap");
    }

    [Fact]
    public void A_gain_is_what_excess_is_lost_and_what_quality_is_won()
    {
        var won = 0;
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            foreach (var places in drawn.RandomSets(SetsEach))
            {
                var judged = Judged.Of(drawn.Settled, places);
                foreach (var place in Enumerable.Range(0, drawn.Settled.Choices.Length).Except(places))
                {
                    var more = drawn.KitOf([.. places, place]);
                    Assert.Equal(judged.MeanExcess - drawn.FiguresOf(more).MeanExcess, judged.ExcessGainOf(place), FigureTolerance);
                    Assert.Equal(drawn.QualityOf(more) - judged.Quality, judged.QualityGainOf(place), FigureTolerance);
                    won += judged.QualityGainOf(place) > 0 ? 1 : 0;
                }
            }
        }

        Assert.True(won > 5 * Problems, $"only {won} won quality");
    }

    [Fact]
    public void No_set_within_the_question_is_cut_off()
    {
        var tried = 0;
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            int[][] within = [.. drawn.AllSets().Where(places => IsWithin(drawn, places))];
            foreach (var cut in drawn.RandomSets(SetsEach).SelectMany(places => CutsOf(drawn.Settled, places)))
            {
                Assert.All(within, places => Assert.True(cut.Allows(places), $"seed {drawn.Seed}: {cut} cuts off {string.Join(' ', places)}"));
                tried += within.Length;
            }
        }

        Assert.True(tried > 10 * Problems, $"only {tried} were tried");
    }

    [Fact]
    public void A_set_beyond_the_question_is_cut_off_by_what_it_breaks()
    {
        var cutOff = 0;
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            foreach (var places in drawn.RandomSets(SetsEach))
            {
                foreach (var cut in CutsOf(drawn.Settled, places))
                {
                    Assert.False(cut.Allows(places), $"seed {drawn.Seed}: {cut} allows what it was made of");
                    cutOff++;
                }
            }
        }

        Assert.True(cutOff > Problems, $"only {cutOff} were cut off");
    }

    [Fact]
    public void What_excess_is_out_of_reach_is_reached_by_no_set() => AssertOutOfReach(judged => judged.KeepsExcess, GainCut.OfExcess);

    [Fact]
    public void What_quality_is_out_of_reach_is_reached_by_no_set() => AssertOutOfReach(judged => judged.KeepsQuality, GainCut.OfQuality);

    private static void AssertOutOfReach(Func<Judged, bool> keeps, Func<Judged, GainCut> cutOf)
    {
        var outOfReach = 0;
        foreach (var drawn in ModelDraw.Some(Problems))
        {
            foreach (var judged in drawn.RandomSets(SetsEach).Select(places => Judged.Of(drawn.Settled, places)).Where(judged => !keeps(judged)))
            {
                if (cutOf(judged).IsOutOfReach(drawn.Settled))
                {
                    outOfReach++;
                    Assert.DoesNotContain(drawn.AllSets(), set => IsAffordable(drawn, set) && keeps(Judged.Of(drawn.Settled, set)));
                }
            }
        }

        Assert.True(outOfReach > Problems / 4, $"only {outOfReach} were out of reach");
    }

    private static IEnumerable<Cut> CutsOf(Settled settled, int[] places)
    {
        var judged = Judged.Of(settled, places);
        IEnumerable<Cut> step = judged.KeepsStep ? [] : StepClauses.Of(judged);
        IEnumerable<Cut> excess = judged.KeepsExcess ? [] : [GainCut.OfExcess(judged)];
        IEnumerable<Cut> quality = judged.KeepsQuality ? [] : [GainCut.OfQuality(judged)];
        var overlaps = settled.AllowedOverlaps > 0 ? [] : judged.Clashes().Select(clash => OverlapCuts.Of(settled, clash));
        return step.Concat(excess).Concat(quality).Concat(overlaps);
    }

    private static bool IsWithin(ModelDraw drawn, int[] places)
    {
        var (kit, question) = (drawn.KitOf(places), drawn.Settled.Question);
        return drawn.FiguresOf(kit).LargestStep.Ln <= question.MostStep.Ln
            && drawn.FiguresOf(kit).MeanExcess <= question.MostExcess
            && drawn.QualityOf(kit) >= question.LeastQuality
            && kit.OverlapsThroughPurchases() <= drawn.Settled.AllowedOverlaps;
    }

    private static bool IsAffordable(ModelDraw drawn, int[] places) =>
        places.Length <= drawn.Settled.PurchasesLeft && places.Sum(place => drawn.Settled.Choices[place].LeastPrice) <= drawn.Settled.MoneyLeft;
}
