using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SpareTests
{
    private const int FirstSeed = 500_000;
    private const int Problems = 600;

    [Fact]
    public void Spare_is_what_the_definition_says_by_the_exhaustive_solvers_figures()
    {
        var (spared, kept) = (0, 0);
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            var expected = planned.Asked.Owned.Where(owned => CanBeSpared(owned, planned)).Select(owned => owned.Id).Order(StringComparer.Ordinal).ToList();

            Assert.True(expected.SequenceEqual(Spare.Of(planned.Kit).Select(item => item.Id)), $"seed {planned.Seed}: {string.Join(' ', expected)}");
            (spared, kept) = (spared + expected.Count, kept + planned.Asked.Owned.Count - expected.Count);
        }

        Assert.True(spared > Problems / 10 && kept > Problems / 10, $"{spared} spared, {kept} kept");
    }

    [Fact]
    public void What_repeats_another_power_is_spare_and_so_is_the_other()
    {
        var problem =
            Some.Problem(Some.InUse(lowest: 50, highest: 200), owned: [Some.Eyepiece(10, id: "a"), Some.Eyepiece(10, id: "b"), Some.Eyepiece(20, id: "c")]);

        Assert.Equal(["a", "b"], Spare.Of(Kit.Of(problem, [])).Select(item => item.Id));
    }

    [Fact]
    public void What_alone_shows_something_that_must_be_framed_is_not()
    {
        var wide = Some.Eyepiece(10, apparentFieldDeg: 80, id: "wide");
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), owned: [wide, Some.Eyepiece(10, id: "narrow")]);
        var framing = problem with { Demands = new Demands { MustFrame = [new FramingDemand("nebula", 0.7)] } };
        var hopeless = problem with { Demands = new Demands { MustFrame = [new FramingDemand("nebula", 0.9)] } };

        Assert.Equal(["narrow", "wide"], Spare.Of(Kit.Of(problem, [])).Select(item => item.Id));
        Assert.Equal(["narrow"], Spare.Of(Kit.Of(framing, [])).Select(item => item.Id));
        Assert.Equal(["narrow", "wide"], Spare.Of(Kit.Of(hopeless, [])).Select(item => item.Id));
    }

    [Fact]
    public void A_reticle_eyepiece_and_the_barlow_it_needs_are_kept_only_where_they_are_asked_for()
    {
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), owned: [Some.Reticle(20), Some.Barlow(2)]);
        var asking = problem with { Demands = new Demands { ReticleLeastPower = 100 } };

        Assert.Equal(2, Spare.Of(Kit.Of(problem, [])).Length);
        Assert.Empty(Spare.Of(Kit.Of(asking, [])));
    }

    [Fact]
    public void Whoever_has_cancelled_is_not_worked_for()
    {
        Item[] owned =
        [
            .. Enumerable.Range(0, 50).Select(number => Some.Eyepiece(4 + (number / 10.0))),
            .. Enumerable.Range(0, 20).Select(number => Some.Barlow(1.2 + (number / 10.0), id: $"barlow-{number}")),
        ];
        var kit = Kit.Of(Some.Problem(Some.InUse(lowest: 20, highest: 2000), owned: [.. owned]), []);
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();

        Assert.Throws<OperationCanceledException>(() => Spare.Of(kit, new WorkBudget(1, cancelled.Token)));
    }

    [Fact]
    public void Taking_an_item_from_a_kit_leaves_the_kit_of_the_rest()
    {
        foreach (var planned in Planned.Solvable(FirstSeed, 60))
        {
            foreach (var item in planned.Kit.Items)
            {
                var rest = planned.Problem with { Owned = planned.Problem.Owned.Remove(item) };
                var (expected, left) = (Kit.Of(rest, planned.Plan.Purchases.Remove(item)), planned.Kit.Without(item));

                Assert.Equal(expected.Figures, left.Figures);
                Assert.Equal(expected.Items, left.Items);
                Assert.Equal(expected.Ladders.SelectMany(ladder => ladder.Views), left.Ladders.SelectMany(ladder => ladder.Views));
            }
        }
    }

    private static bool CanBeSpared(OracleOwned owned, Planned planned)
    {
        var with = new OracleSearch(planned.Asked);
        var without = new OracleSearch(planned.Asked with { Owned = [.. planned.Asked.Owned.Where(one => one != owned)] });
        var (all, rest) = (with.SetOf(planned.Ids), without.SetOf(planned.Ids));
        if (without.Items(rest).Count() < planned.Ids.Length)
        {
            // Only a reticle eyepiece can need an owned item, a Barlow, to be worth buying.
            Assert.NotNull(planned.Asked.Preferences.ReticleLeastPower);
            return false;
        }

        var (before, after) = (with.Figures(all).Kit, without.Figures(rest).Kit);
        return Math.Abs(before.LnLargestStep - after.LnLargestStep) <= Tolerance.Value
            && Math.Abs(before.MeanExcess - after.MeanExcess) <= Tolerance.Value
            && planned.Asked.Preferences.MustFrame.All(frame => OracleTolerance.RatioAtLeast(without.WidestField(rest, frame.Telescope), frame.WidthDeg))
            && (planned.Asked.Preferences.ReticleLeastPower is not { } least
                || without.Bench.HasServingReticle([.. without.Bench.Owned, .. without.Items(rest)], least));
    }
}
