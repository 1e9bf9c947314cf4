using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class OverlapSelfTests
{
    [Theory]
    [InlineData(6.9, 50, 50, false)]
    [InlineData(6.8, 50, 50, true)]
    [InlineData(6.8, 70, 50, false)]
    [InlineData(6.8, 55, 50, true)]
    [InlineData(6.8, 50, 90, true)]
    public void Powers_overlap_below_the_least_step_unless_what_is_bought_is_better(double focalLength, double field, double ownedField, bool overlaps)
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("new", focalLength, field: field)).Owning(Eyepiece("own", 6, field: ownedField));

        Assert.Equal(overlaps ? "overlaps-owned" : null, Exhaustive.Solve(problem).Exclusions.GetValueOrDefault("new"));
    }

    [Fact]
    public void Two_bought_of_one_power_always_overlap()
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("narrow", 6, field: 40), Eyepiece("wide", 6, field: 100));

        Assert.Equal(3, Exhaustive.Solve(problem).AllowedSetCount);
        Assert.Equal(4, Exhaustive.Solve(problem with { Without = OracleDefinitions.Upgrade }).AllowedSetCount);
    }

    [Theory]
    [InlineData(30, 52, 24, 68, true)]
    [InlineData(30, 60, 24, 68, false)]
    [InlineData(29.9, 40, 20, 68, true)]
    [InlineData(30, 40, 20, 68, false)]
    [InlineData(10, 50, 8, 65, true)]
    [InlineData(9.9, 50, 8, 65, false)]
    public void Less_power_must_take_in_more_sky(double low, double lowField, double high, double highField, bool overlaps)
    {
        OracleProblem bought = Problem(Zoned).Selling(Eyepiece("new", low, field: lowField)).Owning(Eyepiece("own", high, field: highField));
        OracleProblem owned = Problem(Zoned).Selling(Eyepiece("new", high, field: highField)).Owning(Eyepiece("own", low, field: lowField));

        Assert.Equal(overlaps ? "overlaps-owned" : null, Exhaustive.Solve(bought).Exclusions.GetValueOrDefault("new"));
        Assert.Empty(Exhaustive.Solve(owned).Exclusions);
        Assert.Empty(Exhaustive.Solve(bought with { Without = OracleDefinitions.LessPower }).Exclusions);
    }

    /// <summary>At 27 and 45 times, cut to 33 and 45.</summary>
    [Theory]
    [InlineData(37, 22, false)]
    [InlineData(32, 22, true)]
    public void Less_power_is_measured_by_real_powers(double low, double high, bool overlaps)
    {
        OracleProblem problem = Problem(Zoned).Selling(Eyepiece("new", low, field: 40)).Owning(Eyepiece("own", high, field: 68));

        Assert.Equal(overlaps ? "overlaps-owned" : null, Exhaustive.Solve(problem).Exclusions.GetValueOrDefault("new"));
    }

    [Fact]
    public void Less_power_is_held_against_no_view_through_a_barlow()
    {
        OracleBench bench = new(Problem(Zoned));
        OracleView low = new(bench.Scales[0], Eyepiece("low", 30, field: 52), null, 1, isOwned: false);
        OracleView high = new(bench.Scales[0], Eyepiece("high", 24, field: 68), null, 1, isOwned: true);
        OracleView highThroughBarlow = new(bench.Scales[0], Eyepiece("high", 48, field: 68), Barlow("barlow", 2), 2, isOwned: true);

        Assert.True(OracleOverlap.Overlap(high, low));
        Assert.False(OracleOverlap.Overlap(highThroughBarlow, low));
    }

    [Theory]
    [InlineData(62, true)]
    [InlineData(63, false)]
    public void Two_owned_of_one_power_overlap_if_their_fields_are_alike(double field, bool overlaps)
    {
        OracleBench bench = new(Problem(Zoned));
        OracleView one = new(bench.Scales[0], Eyepiece("one", 10), null, 1, isOwned: true);
        OracleView other = new(bench.Scales[0], Eyepiece("other", 10, field: field), null, 1, isOwned: true);

        Assert.Equal(overlaps, OracleOverlap.Overlap(one, other));
        Assert.Equal(overlaps, OracleOverlap.Overlap(other, one));
    }

    [Fact]
    public void A_weak_barlow_repeats_the_eyepiece_it_is_put_in()
    {
        OracleProblem problem = Problem(Even).Owning(Eyepiece("own", 6));

        Assert.Equal("overlaps-owned", Exhaustive.Solve(problem.Selling(Barlow("barlow", 1.1, 2))).Exclusions["barlow"]);
        Assert.Empty(Exhaustive.Solve(problem.Selling(Barlow("barlow", 1.5, 1.55))).Exclusions);
    }

    [Fact]
    public void Two_barlows_repeat_each_other_only_on_one_eyepiece()
    {
        OracleProblem problem = Problem(Even).Owning(Eyepiece("own-1", 9), Eyepiece("own-2", 8), Barlow("own-barlow", 1.5));

        Assert.Equal("overlaps-owned", Exhaustive.Solve(problem.Selling(Barlow("new", 1.6))).Exclusions["new"]);
        Assert.Empty(Exhaustive.Solve(problem.Selling(Barlow("new", 2.6))).Exclusions);
    }

    [Theory]
    [InlineData(4, 8, true)]
    [InlineData(5, 10, false)]
    public void Zooms_overlap_when_they_share_more_than_a_point(double shortest, double longest, bool overlaps)
    {
        OracleProblem problem = Problem(Even).Selling(Zoom("new", shortest, longest)).Owning(Zoom("own", 2.5, 5)) with
        {
            Preferences = new() { Zooms = OracleUse.Allow },
        };

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(overlaps ? "overlaps-owned" : null, result.Exclusions.GetValueOrDefault("new"));
        if (!overlaps)
        {
            Assert.Equal(1.5, result.LeastLargestStep!.Value, Close);
            Assert.Equal(1, Exhaustive.Assess(problem, ["new"]).Figures.Kit.ServedShare, Close);
        }
    }
}
