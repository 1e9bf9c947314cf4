using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class ExclusionSelfTests
{
    [Fact]
    public void Every_exclusion_has_its_code()
    {
        OracleProblem problem = Problem(Even)
            .Selling(
                Eyepiece("named", 5),
                Zoom("zoom", 4, 8),
                Eyepiece("sold-out", 5) with { InStock = false },
                Eyepiece("cross", 5) with { IsReticle = true },
                Eyepiece("dear", 5, price: 501),
                Eyepiece("heavy", 5) with { MassGrams = 401 },
                Eyepiece("wide-barrel", 5) with { Barrel = OracleBarrel.Inch2 },
                Barlow("thin-barrel", 2) with { Barrel = OracleBarrel.Inch0965 },
                Eyepiece("weak", 12.6),
                Eyepiece("at-the-edge", 12.5),
                Eyepiece("strong", 2.27),
                Eyepiece("at-the-top", 2.28) with { EyeReliefMm = 5 },
                Eyepiece("short", 5) with { EyeReliefMm = 4.9 },
                Eyepiece("narrow", 5, field: 44),
                Eyepiece("bought-before", 5))
            .Owning(Eyepiece("own", 3.2) with { EyeReliefMm = 1 });
        problem = problem with
        {
            Owned = [.. problem.Owned, new OracleOwned("bought-before", null)],
            Limits = problem.Limits with { MaxItemMassGrams = 400 },
            Preferences = new() { Exclude = ["named", "unknown"], LeastApparentFieldDeg = 45 },
        };

        Dictionary<string, string> expected = new()
        {
            ["named"] = "excluded-by-request",
            ["zoom"] = "excluded-by-request",
            ["sold-out"] = "out-of-stock",
            ["cross"] = "reticle",
            ["dear"] = "over-budget",
            ["heavy"] = "too-heavy",
            ["wide-barrel"] = "barrel-too-wide",
            ["thin-barrel"] = "barrel-too-wide",
            ["weak"] = "outside-power-range",
            ["strong"] = "outside-power-range",
            ["short"] = "eye-relief-too-short",
            ["narrow"] = "apparent-field-too-narrow",
            ["bought-before"] = "overlaps-owned",
        };
        Assert.Equal(expected, Exhaustive.Solve(problem).Exclusions.ToDictionary());
    }

    [Fact]
    public void A_reticle_that_needs_a_barlow_never_bought_is_a_candidate_in_vain()
    {
        OracleProblem problem = Problem(Even).Selling(
            Eyepiece("cross", 12.5) with { IsReticle = true }, Barlow("barlow", 2)) with
        {
            Preferences = new() { ReticleLeastPower = 150, Barlows = OracleUse.Avoid },
        };

        OracleResult avoided = Exhaustive.Solve(problem);
        OracleResult allowed = Exhaustive.Solve(problem with { Preferences = new() { ReticleLeastPower = 160 } });

        Assert.Equal(OracleOutcome.Infeasible, avoided.Outcome);
        Assert.DoesNotContain("cross", avoided.Exclusions);
        Assert.Equivalent(new OracleNearest(null, null, null, null, []), avoided.Nearest);
        Assert.Equal(["barlow", "cross"], Assert.Single(allowed.BestSets).Ids);
    }
}
