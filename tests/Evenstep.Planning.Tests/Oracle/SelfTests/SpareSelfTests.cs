using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class SpareSelfTests
{
    private static readonly OracleItem Low = Eyepiece("low", 10);
    private static readonly OracleItem High = Eyepiece("high", 2.5);

    [Fact]
    public void Of_two_alike_each_is_spare_and_together_the_one_worth_more()
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("a", 5, price: 30), Eyepiece("b", 5, price: 20), Eyepiece("c", 5, price: 40));

        Assert.Equal(["a", "b", "c"], OracleSpare.Alone(problem, []));
        Assert.Equal(["a", "c"], Assert.Single(OracleSpare.Together(problem, [])));
    }

    /// <summary>Without the 5 mm the largest step grows; how much comfort the other adds, it says with its focal length.</summary>
    [Theory]
    [InlineData(5.05, true)]
    [InlineData(5.1, false)]
    public void A_hundredth_of_comfort_is_not_missed(double focalLength, bool spare)
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("middle", 5), Eyepiece("beside", focalLength));

        Assert.Equal(spare ? ["beside"] : [], OracleSpare.Alone(problem, []));
    }

    /// <summary>Uncomfortable, it adds no comfort; in the middle of a step of 2 it is worth 0.015 of mean excess, beside its end almost nothing.</summary>
    [Theory]
    [InlineData(7.07, OracleDefinitions.None, false)]
    [InlineData(5.05, OracleDefinitions.None, true)]
    [InlineData(5.05, OracleDefinitions.SpareExcess, false)]
    public void A_little_of_mean_excess_is_not_missed(double focalLength, OracleDefinitions without, bool spare)
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("middle", 5), Eyepiece("beside", focalLength) with { EyeReliefMm = 6 });

        Assert.Equal(spare ? ["beside"] : [], OracleSpare.Alone(problem with { Without = without }, []));
    }

    [Theory]
    [InlineData(51, true)]
    [InlineData(52, false)]
    public void The_widest_view_is_missed(double field, bool spare)
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("middle", 5), Eyepiece("wide", 10, field: field));

        Assert.Equal(spare ? ["low", "wide"] : ["low"], OracleSpare.Alone(problem, []));
    }

    [Fact]
    public void What_is_bought_may_make_an_owned_one_spare()
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("new", 5, field: 70)).Owning(Low, High, Eyepiece("old", 5));

        Assert.Equal(["old"], OracleSpare.Alone(problem, ["new"]));
        Assert.Empty(OracleSpare.Alone(problem, []));
    }

    [Theory]
    [InlineData(null, "cross")]
    [InlineData(100.0, null)]
    public void A_reticle_is_spare_unless_one_is_asked_for(double? power, string? spare)
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("middle", 5), Eyepiece("cross", 5) with { IsReticle = true });

        Assert.Equal(spare is null ? [] : [spare], OracleSpare.Alone(problem with { Preferences = new() { ReticleLeastPower = power } }, []));
    }

    /// <summary>A true field of 0.51° is there, and without it one of 0.5°.</summary>
    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.505, false)]
    [InlineData(0.52, true)]
    public void What_a_demand_needs_is_not_spare(double width, bool spare)
    {
        OracleProblem problem = Problem(Even).Owning(Low, High, Eyepiece("middle", 5), Eyepiece("wide", 10, field: 51)) with
        {
            Preferences = new() { MustFrame = [new OracleFrame("Field", width, null)] },
        };

        Assert.Equal(spare, OracleSpare.Alone(problem, []).Contains("wide"));
    }
}
