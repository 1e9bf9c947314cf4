using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class ElectionSelfTests
{
    /// <summary>Both ends are owned, and between them a step of 4.</summary>
    private static readonly OracleProblem Ends = Problem(Even).Owning(Eyepiece("low", 10), Eyepiece("high", 2.5));

    [Fact]
    public void Both_ends_are_bought_when_only_both_narrow_the_largest_step()
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("low", 10, price: 40), Eyepiece("high", 2.5, price: 60))
            .Owning(Eyepiece("own", 5));

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(2, result.LeastLargestStep!.Value, Close);
        Assert.Equal(["high", "low"], Assert.Single(result.BestSets).Ids);
        Assert.Equal(100m, result.BestPrice);
        Assert.Equal(4, result.AllowedSetCount);
    }

    [Fact]
    public void Buying_nothing_is_best_when_the_kit_is_enough()
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("low", 10)).Owning(Eyepiece("own", 5));

        OracleResult result = Exhaustive.Solve(problem with { Preferences = new() { EnoughStep = 4 } });

        Assert.True(result.BuyingNothingIsBest);
        Assert.Equal(4, result.LeastLargestStep!.Value, Close);
        Assert.Equal(0, result.LeastMeanExcess!.Value, Close);
    }

    /// <summary>They leave steps of 2, 2.13 and 2.22: of the least, the logarithms are 1.09 and 1.152 times.</summary>
    [Theory]
    [InlineData(OracleDefinitions.None, "near")]
    [InlineData(OracleDefinitions.StepLeeway, "exact")]
    [InlineData(OracleDefinitions.ExcessLeeway, "exact")]
    public void A_little_more_of_a_step_is_as_good(OracleDefinitions without, string best)
    {
        OracleProblem problem = Ends.Selling(Eyepiece("exact", 5, price: 100), Eyepiece("near", 4.7, price: 20), Eyepiece("far", 4.5, price: 10));

        OracleResult result = Exhaustive.Solve(problem with { Without = without });

        Assert.Equal(2, result.LeastLargestStep!.Value, Close);
        Assert.Equal([best], Assert.Single(result.BestSets).Ids);
    }

    [Theory]
    [InlineData(null, "b")]
    [InlineData(OraclePrefer.Comfort, "b")]
    [InlineData(OraclePrefer.LowPrice, "a")]
    [InlineData(OraclePrefer.WideField, "c")]
    [InlineData(OraclePrefer.LongEyeRelief, "d")]
    [InlineData(OraclePrefer.LightWeight, "e")]
    [InlineData(OraclePrefer.Parfocal, "f")]
    public void The_preference_chooses_among_what_is_good_enough(OraclePrefer? prefer, string best)
    {
        OracleProblem problem = Problem(Even)
            .Selling(
                Eyepiece("a", 5, price: 10) with { EyeReliefMm = 6, MassGrams = 90, ParfocalGroup = "g" },
                Eyepiece("b", 5, price: 20) with { MassGrams = 300 },
                Eyepiece("c", 5, price: 30, field: 82),
                Eyepiece("d", 5, price: 40) with { EyeReliefMm = 18 },
                Eyepiece("e", 5, price: 50) with { MassGrams = 100 },
                Eyepiece("f", 5, price: 60) with { ParfocalGroup = "g" })
            .Owning(Eyepiece("low", 10) with { ParfocalGroup = "g" }, Eyepiece("high", 2.5));

        OracleResult result = Exhaustive.Solve(problem with { Preferences = new() { Prefer = prefer } });

        Assert.Equal([best], Assert.Single(result.BestSets).Ids);
    }

    /// <summary>
    /// Between the ends and the middle, which the owned kit has, two pieces of ln 2 − ln 1.9 are left. In one of them the
    /// dear eyepiece is worth 1 and the cheaper ¾, where the owned ones are worth ¼.
    /// </summary>
    [Theory]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.None, "cheaper")]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.QualityLeeway, "dear")]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.QualityFloor, "dear")]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.QualityWhereNeeded, "dear")]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.PreferredQuality, null)]
    [InlineData(OraclePrefer.WideField, OracleDefinitions.Quality, null)]
    [InlineData(OraclePrefer.Comfort, OracleDefinitions.None, null)]
    public void Quality_counts_where_something_is_needed(OraclePrefer prefer, OracleDefinitions without, string? best)
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("dear", 7.07, price: 100, field: 82), Eyepiece("cheaper", 7.07, price: 50, field: 75))
            .Owning(Eyepiece("low", 10), Eyepiece("middle", 5), Eyepiece("high", 2.5)) with
        {
            Preferences = new() { Prefer = prefer, EnoughStep = 1.9 },
            Without = without,
        };

        Assert.Equal(best is null ? [] : [best], Assert.Single(Exhaustive.Solve(problem).BestSets).Ids);
    }

    [Fact]
    public void The_greatest_quality_is_what_one_piece_well_seen_and_one_badly_makes()
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("dear", 7.07, price: 100, field: 82))
            .Owning(Eyepiece("low", 10), Eyepiece("middle", 5), Eyepiece("high", 2.5)) with
        {
            Preferences = new() { Prefer = OraclePrefer.WideField, EnoughStep = 1.9 },
        };

        double piece = Math.Log(2 / 1.9);
        Assert.Equal(1.25 * piece / (Math.Log(4) / 2), Exhaustive.Solve(problem).BestQuality!.Value, Close);
    }

    [Fact]
    public void What_is_uncomfortable_is_not_bought_to_save_money()
    {
        OracleProblem problem = Ends.Selling(Eyepiece("tight", 5, price: 10) with { EyeReliefMm = 6 }, Eyepiece("easy", 5, price: 60));

        Assert.Equal(["easy"], Exhaustive.Solve(problem).BestSets[0].Ids);
        Assert.Equal(["tight"], Exhaustive.Solve(problem with { Without = OracleDefinitions.TightEyeRelief }).BestSets[0].Ids);
        Assert.Equal(["tight"], Exhaustive.Solve(problem with { Without = OracleDefinitions.Quality }).BestSets[0].Ids);
    }

    [Fact]
    public void Items_alike_tie()
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("a", 5, price: 10), Eyepiece("b", 5, price: 10));

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(["a", "b"], result.BestSets.Select(plan => Assert.Single(plan.Ids)));
        Assert.Equal(3, result.AllowedSetCount);
    }

    [Fact]
    public void A_telescope_that_nothing_serves_stands_aside_unless_all_do()
    {
        OracleTelescope thin = Zoned with { FocuserBarrel = OracleBarrel.Inch0965 };
        OracleProblem problem = Problem(Even, thin).Selling(Eyepiece("new", 5)).Owning(Eyepiece("low", 10), Eyepiece("high", 2.5));

        OracleResult result = Exhaustive.Solve(problem);
        OracleResult counted = Exhaustive.Solve(problem with { Without = OracleDefinitions.Aside });

        double beyond = (Math.Log(2) - Math.Log(1.5)) / 2;
        Assert.Equal(["Zoned"], result.StandingAside);
        Assert.Equal(2, result.LeastLargestStep!.Value, Close);
        Assert.Equal(2 * beyond * beyond / Math.Log(4), result.LeastMeanExcess!.Value, Close);
        Assert.Equal(2 * ((0.6 * Math.Log(1.25)) + (1.9 * Math.Log(2))), Math.Log(counted.LeastLargestStep!.Value), Close);
        Assert.Empty(Exhaustive.Solve(Problem(thin).Selling(Eyepiece("new", 5))).StandingAside);
    }
}
