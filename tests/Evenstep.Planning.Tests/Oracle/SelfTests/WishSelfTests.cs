using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class WishSelfTests
{
    /// <summary>True fields of 2.3°, 1.2° and 0.5°.</summary>
    private static readonly OracleProblem Asked = Problem(Zoned).Selling(
        Eyepiece("wide", 28, price: 300, field: 82) with { Barrel = OracleBarrel.Inch2 },
        Eyepiece("middle", 20, price: 50, field: 60),
        Eyepiece("high", 10, price: 10)) with
    {
        Observer = new() { Observes = [OracleInterest.LargeNebulae] },
    };

    [Fact]
    public void A_wide_view_is_chosen_among_those_whose_step_is_good_enough()
    {
        OracleResult granted = Exhaustive.Solve(Asked.WithLimits(limits => limits with { MaxPurchases = 2 }));

        Assert.Equal(0.75 * 82 * 28 / 1000, granted.WishedFieldDeg, Close);
        Assert.True(granted is { WishAsked: true, WishGranted: true });
        Assert.Equal(["high", "wide"], granted.BestSets[0].Ids);
    }

    [Fact]
    public void It_is_measured_by_what_the_candidates_give()
    {
        OracleResult poor = Exhaustive.Solve(Asked.WithLimits(limits => limits with { Budget = 60 }));

        Assert.Equal(0.75 * 60 * 20 / 1000, poor.WishedFieldDeg, Close);
        Assert.Equal(["high", "middle"], poor.BestSets[0].Ids);
    }

    [Fact]
    public void It_costs_no_step()
    {
        OracleProblem one = Asked.WithLimits(limits => limits with { MaxPurchases = 1 });

        OracleResult after = Exhaustive.Solve(one);
        OracleResult before = Exhaustive.Solve(one with { Without = OracleDefinitions.WishAfterStep });

        Assert.True(after is { WishAsked: true, WishGranted: false });
        Assert.Equal(["high"], after.BestSets[0].Ids);
        Assert.True(before is { WishAsked: true, WishGranted: true });
        Assert.Equal(["wide"], before.BestSets[0].Ids);
    }

    [Fact]
    public void It_may_fail_and_is_not_there_unasked()
    {
        OracleResult none = Exhaustive.Solve(Asked.WithLimits(limits => limits with { MaxPurchases = 0 }));
        OracleResult unasked = Exhaustive.Solve(Asked with { Observer = new() });

        Assert.True(none is { WishAsked: true, WishGranted: false, BuyingNothingIsBest: true });
        Assert.True(unasked is { WishAsked: false, WishGranted: false, WishedFieldDeg: 0 });
    }
}
