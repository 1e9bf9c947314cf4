using System.Text.Json;

namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Small cases worked by hand from the planning model, and checks of the oracle's short cuts.</summary>
public sealed class OracleSelfTests
{
    private const double Close = 1e-12;

    /// <summary>All its exit pupils are under 1 mm: positions are ln(power / 100), from 0 to ln 4.</summary>
    private static readonly OracleTelescope Even = new()
    {
        Name = "Even",
        ApertureMm = 100,
        FocalLengthMm = 1000,
        FocuserBarrel = OracleBarrel.Inch125,
        LowestPower = 100,
        HighestPower = 400,
    };

    /// <summary>From 200 / 6 by the pupil to 200 by the seeing; zones meet at 50, 100 and 200.</summary>
    private static readonly OracleTelescope Zoned = new()
    {
        Name = "Zoned",
        ApertureMm = 200,
        FocalLengthMm = 1000,
        FocuserBarrel = OracleBarrel.Inch2,
    };

    [Fact]
    public void The_range_is_set_by_pupil_barrel_aperture_and_seeing()
    {
        OracleScale byPupilAndSeeing = Scale(Zoned);
        OracleScale byBarrelAndAperture = Scale(Zoned with { ApertureMm = 70, FocuserBarrel = OracleBarrel.Inch125 });

        Assert.Equal(200 / 6.0, byPupilAndSeeing.Lowest, Close);
        Assert.Equal(200, byPupilAndSeeing.Highest, Close);
        Assert.Equal(1000 / 32.0, byBarrelAndAperture.Lowest, Close);
        Assert.Equal(100, byBarrelAndAperture.Highest, 1e-9);
    }

    [Theory]
    [InlineData(10, 7.33)]
    [InlineData(30, 6.985)]
    [InlineData(78, 4.978)]
    [InlineData(90, 4.85)]
    public void The_pupil_follows_age(int age, double pupil) =>
        Assert.Equal(pupil, OracleScale.Pupil(new OracleObserver { Age = age }), Close);

    [Fact]
    public void Positions_weigh_zones_and_halve_those_that_no_interest_names()
    {
        OracleScale plain = Scale(Zoned);
        OracleScale planets = new(Zoned, Problem(Zoned) with { Observer = new() { Observes = [OracleInterest.Planets] } });

        Assert.Equal(0.6 * Math.Log(3), plain.Position(100), Close);
        Assert.Equal((0.6 * Math.Log(3)) + Math.Log(2), plain.Length, Close);
        Assert.Equal(0, plain.Position(30), Close);
        Assert.Equal(plain.Length, plain.Position(240), Close);
        Assert.Equal(0.3 * Math.Log(3), planets.Position(100), Close);
        Assert.Equal((0.3 * Math.Log(3)) + Math.Log(2), planets.Length, Close);
    }

    [Fact]
    public void One_eyepiece_in_the_middle_gives_two_end_gaps()
    {
        OracleFigures figures = Exhaustive.Solve(Owning(Problem(Even), Eyepiece("own", 5))).BuyNothing.Kit;

        double beyond = Math.Log(2) - (Math.Log(1.5) / 2);
        Assert.Equal(4, figures.LargestStep, Close);
        Assert.Equal(Math.Log(2) / 2, figures.MeanMismatch, Close);
        Assert.Equal(beyond * beyond / Math.Log(4), figures.MeanExcess, Close);
        Assert.Equal(1 - (beyond / Math.Log(2)), figures.ServedShare, Close);
    }

    [Fact]
    public void A_telescope_without_a_usable_view_counts_as_its_whole_range()
    {
        OracleProblem problem = Problem(Even, Zoned with { FocuserBarrel = OracleBarrel.Inch0965 });
        OracleKitFigures figures = Exhaustive.Solve(Owning(problem, Eyepiece("own", 5))).BuyNothing;

        double length = (0.6 * Math.Log(2.5)) + Math.Log(2);
        Assert.False(figures.Telescopes[1].HasUsableView);
        Assert.Equal(2 * length, figures.Kit.LnLargestStep, Close);
        Assert.Equal(((Math.Log(2) / 2) + length) / 2, figures.Kit.MeanMismatch, Close);
        Assert.Equal(figures.Telescopes[0].ServedShare / 2, figures.Kit.ServedShare, Close);
        Assert.Equal(length - (Math.Log(1.5) / 2), figures.Telescopes[1].MeanExcess, Close);
    }

    [Fact]
    public void Both_ends_are_bought_when_only_both_narrow_the_largest_step()
    {
        OracleProblem problem = Owning(
            Selling(Problem(Even), Eyepiece("low", 10, price: 40), Eyepiece("high", 2.5, price: 60)), Eyepiece("own", 5));

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(2, result.LeastLargestStep!.Value, Close);
        Assert.Equal(["high", "low"], Assert.Single(result.BestSets).Ids);
        Assert.Equal(100m, result.BestPrice);
        Assert.Equal(4, result.AllowedSetCount);
    }

    [Fact]
    public void Buying_nothing_is_best_when_the_kit_is_enough()
    {
        OracleProblem problem = Owning(Selling(Problem(Even), Eyepiece("low", 10)), Eyepiece("own", 5));

        OracleResult result = Exhaustive.Solve(problem with { Preferences = new() { EnoughStep = 4 } });

        Assert.True(result.BuyingNothingIsBest);
        Assert.Equal(4, result.LeastLargestStep!.Value, Close);
        Assert.Equal(0, result.LeastMeanExcess!.Value, Close);
    }

    [Theory]
    [InlineData(OraclePrefer.LowPrice, "a")]
    [InlineData(OraclePrefer.WideField, "b")]
    [InlineData(OraclePrefer.LongEyeRelief, "c")]
    [InlineData(OraclePrefer.LightWeight, "d")]
    [InlineData(OraclePrefer.Parfocal, "c")]
    public void The_preference_chooses_among_what_is_good_enough(OraclePrefer prefer, string best)
    {
        OracleProblem problem = Owning(
            Selling(
                Problem(Even),
                Eyepiece("a", 5, price: 10, field: 40) with { MassGrams = 300 },
                Eyepiece("b", 5, price: 20, field: 70),
                Eyepiece("c", 5, price: 30) with { EyeReliefMm = 20, MassGrams = 200, ParfocalGroup = "g" },
                Eyepiece("d", 5, price: 40) with { MassGrams = 100 }),
            Eyepiece("own", 50) with { ParfocalGroup = "g" });

        OracleResult result = Exhaustive.Solve(problem with { Preferences = new() { EnoughStep = 4, Prefer = prefer } });

        Assert.Equal([best], Assert.Single(result.BestSets).Ids);
    }

    [Fact]
    public void Items_alike_tie()
    {
        OracleProblem problem = Selling(Problem(Even), Eyepiece("a", 5, price: 10), Eyepiece("b", 5, price: 10));

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(["a", "b"], result.BestSets.Select(plan => Assert.Single(plan.Ids)));
        Assert.Equal(3, result.AllowedSetCount);
    }

    [Theory]
    [InlineData(6.9, 50, false)]
    [InlineData(6.8, 50, true)]
    [InlineData(6.9, 70, false)]
    [InlineData(6.8, 70, false)]
    public void Powers_overlap_below_the_least_step_if_the_fields_are_alike(double focalLength, double field, bool overlaps)
    {
        OracleProblem problem = Owning(
            Selling(Problem(Even), Eyepiece("new", focalLength, field: field)), Eyepiece("own", 6));

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(overlaps ? "overlaps-owned" : null, result.Exclusions.GetValueOrDefault("new"));
    }

    [Fact]
    public void A_weak_barlow_repeats_the_eyepiece_it_is_put_in()
    {
        OracleProblem problem = Owning(Selling(Problem(Even), Barlow("barlow", 1.1, 2)), Eyepiece("own", 6));

        Assert.Equal("overlaps-owned", Exhaustive.Solve(problem).Exclusions["barlow"]);
        Assert.Empty(Exhaustive.Solve(Selling(problem, Barlow("barlow", 1.5, 1.55))).Exclusions);
    }

    [Fact]
    public void Two_barlows_repeat_each_other_only_on_one_eyepiece()
    {
        OracleProblem problem = Owning(Problem(Even), Eyepiece("own-1", 9), Eyepiece("own-2", 8), Barlow("own-barlow", 1.5));

        Assert.Equal("overlaps-owned", Exhaustive.Solve(Selling(problem, Barlow("new", 1.6))).Exclusions["new"]);
        Assert.Empty(Exhaustive.Solve(Selling(problem, Barlow("new", 2.6))).Exclusions);
    }

    [Theory]
    [InlineData(4, 8, true)]
    [InlineData(5, 10, false)]
    public void Zooms_overlap_when_they_share_more_than_a_point(double shortest, double longest, bool overlaps)
    {
        OracleProblem problem = Owning(Selling(Problem(Even), Zoom("new", shortest, longest)), Zoom("own", 2.5, 5));

        OracleResult result = Exhaustive.Solve(problem with { Preferences = new() { Zooms = OracleUse.Allow } });

        Assert.Equal(overlaps ? "overlaps-owned" : null, result.Exclusions.GetValueOrDefault("new"));
        if (!overlaps)
        {
            Assert.Equal(1.5, result.LeastLargestStep!.Value, Close);
            Assert.Equal(1, Exhaustive.Assess(problem with { Preferences = new() { Zooms = OracleUse.Allow } }, ["new"]).Figures.Kit.ServedShare, Close);
        }
    }

    [Fact]
    public void A_zooms_true_field_is_that_at_its_lowest_power_admitted()
    {
        OracleItem zoom = Zoom("zoom", 30, 60) with { ApparentFieldAtShortestDeg = 70, ApparentFieldAtLongestDeg = 40 };

        OracleView view = new(Scale(Zoned), zoom, null, 1);

        Assert.Equal(62.5 / (200 / 6.0 / 1.25), view.TrueFieldDeg, Close);
        Assert.Equal(12, view.ExitPupilMm, Close);
        Assert.Equal(0, view.Start, Close);
        Assert.Equal(0, view.End, Close);
    }

    [Theory]
    [InlineData(1.1, 0, 8)]
    [InlineData(1.11, 12, 12)]
    [InlineData(0.0, 0, 8)]
    [InlineData(null, 12, 12)]
    public void Spectacles_come_off_at_exit_pupils_that_hide_the_astigmatism(double? cylinder, double owned, double bought)
    {
        OracleObserver observer = new() { WearsSpectacles = true, AstigmatismDioptres = -cylinder, LeastEyeReliefMm = 12 };

        Assert.Equal(owned, OracleEyeRelief.Needed(observer, 1, owned: true));
        Assert.Equal(bought, OracleEyeRelief.Needed(observer, 1, owned: false));
    }

    [Fact]
    public void Every_exclusion_has_its_code()
    {
        OracleProblem problem = Owning(
            Selling(
                Problem(Even),
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
                Eyepiece("short", 5) with { EyeReliefMm = 7.5 },
                Eyepiece("narrow", 5, field: 44),
                Eyepiece("bought-before", 5)),
            Eyepiece("own", 2.2) with { EyeReliefMm = 1 });
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
            ["short"] = "eye-relief-too-short",
            ["narrow"] = "apparent-field-too-narrow",
            ["bought-before"] = "overlaps-owned",
        };
        Assert.Equal(expected, Exhaustive.Solve(problem).Exclusions.ToDictionary());
    }

    [Fact]
    public void The_wish_is_measured_by_what_candidates_give_and_may_fail()
    {
        OracleProblem problem = Selling(
            Problem(Zoned),
            Eyepiece("wide", 28, price: 300, field: 82) with { Barrel = OracleBarrel.Inch2 },
            Eyepiece("mid", 20, price: 50, field: 60),
            Eyepiece("high", 10, price: 10)) with
        {
            Observer = new() { Observes = [OracleInterest.LargeNebulae] },
        };

        OracleResult rich = Exhaustive.Solve(WithLimits(problem, limits => limits with { Budget = 300, MaxPurchases = 1 }));
        OracleResult poor = Exhaustive.Solve(WithLimits(problem, limits => limits with { Budget = 60, MaxPurchases = 1 }));
        OracleResult none = Exhaustive.Solve(WithLimits(problem, limits => limits with { MaxPurchases = 0 }));

        Assert.Equal(["wide"], rich.BestSets[0].Ids);
        Assert.Equal(["mid"], poor.BestSets[0].Ids);
        Assert.True(poor is { WishAsked: true, WishGranted: true });
        Assert.True(none is { WishAsked: true, WishGranted: false, BuyingNothingIsBest: true });
    }

    [Fact]
    public void A_field_too_wide_names_the_nearest_budget_and_width()
    {
        OracleProblem problem = Selling(
            Problem(Zoned),
            Eyepiece("wide", 28, price: 300, field: 82) with { Barrel = OracleBarrel.Inch2 },
            Eyepiece("mid", 20, price: 50, field: 60));
        problem = WithLimits(problem, limits => limits with { Budget = 60 }) with
        {
            Preferences = new() { MustFrame = [new OracleFrame("Field", 1.25, "Zoned")] },
        };

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(OracleOutcome.Infeasible, result.Outcome);
        Assert.Equivalent(new OracleNearest(300, null, null, null, [1.2]), result.Nearest);
    }

    [Fact]
    public void Conflicting_limits_name_their_nearest_values()
    {
        OracleProblem problem = Owning(
            Selling(Problem(Even), Eyepiece("low", 9.5), Eyepiece("high", 2.5), Barlow("barlow", 1.5)), Eyepiece("own", 10));

        OracleNearest overlaps = Exhaustive.Solve(Including(problem, "low")).Nearest!;
        OracleNearest purchases = Exhaustive.Solve(
            WithLimits(Including(problem, "high", "barlow"), limits => limits with { MaxPurchases = 1 })).Nearest!;
        OracleNearest barlows = Exhaustive.Solve(
            WithLimits(Including(problem, "barlow"), limits => limits with { MaxBarlows = 0 })).Nearest!;

        Assert.Equivalent(new OracleNearest(null, null, null, 1, []), overlaps);
        Assert.Equivalent(new OracleNearest(null, 2, null, null, []), purchases);
        Assert.Equivalent(new OracleNearest(null, null, 1, null, []), barlows);
    }

    [Fact]
    public void A_reticle_that_needs_a_barlow_never_bought_is_a_candidate_in_vain()
    {
        OracleProblem problem = Selling(
            Problem(Even), Eyepiece("cross", 12.5) with { IsReticle = true }, Barlow("barlow", 2)) with
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

    [Fact]
    public void Figures_agree_with_an_integration_that_knows_no_gaps()
    {
        Random random = new(1);
        for (int round = 0; round < 200; round++)
        {
            double length = 0.3 + random.NextDouble();
            double enough = random.NextDouble() * 0.3;
            (double Start, double End)[] intervals = [.. Enumerable.Range(0, random.Next(1, 7))
                .Select(_ => Interval(random, length))
                .OrderBy(interval => interval.Start)];

            OracleFigures figures = OracleLadder.Figures(intervals, length, enough);

            Assert.Equal(Integral(intervals, length, enough, x => x), figures.MeanMismatch * length, Close);
            Assert.Equal(Integral(intervals, length, enough, x => Math.Max(0, x - enough)), figures.MeanExcess * length, Close);
            Assert.Equal(Breakpoints(intervals, length, enough).Max(x => Mismatch(intervals, x)), figures.LnLargestStep / 2, Close);
            Assert.Equal(Served(intervals, length, enough), figures.ServedShare * length, Close);
        }
    }

    [Fact]
    public void Random_problems_are_repeatable_and_their_order_does_not_matter()
    {
        for (int seed = 0; seed < 150; seed++)
        {
            OracleProblem problem = RandomProblems.Make(seed);
            OracleResult result = Exhaustive.Solve(problem);
            OracleResult shuffled = Exhaustive.Solve(RandomProblems.Shuffle(problem, seed));

            Assert.Equal(JsonSerializer.Serialize(problem), JsonSerializer.Serialize(RandomProblems.Make(seed)));
            Assert.Equal(SetsOf(result), SetsOf(shuffled));
            Assert.Equal(result.Exclusions.OrderBy(pair => pair.Key), shuffled.Exclusions.OrderBy(pair => pair.Key));
            Assert.Equivalent(result.Nearest, shuffled.Nearest);
        }
    }

    [Fact]
    public void Nearest_values_agree_with_trying_one_value_after_another()
    {
        for (int seed = 0; seed < 400; seed++)
        {
            OracleProblem problem = RandomProblems.Make(seed);
            if (Exhaustive.Solve(problem).Nearest is not { } nearest)
            {
                continue;
            }

            Assert.Equal(First(0, 8, value => WithLimits(problem, limits => limits with { MaxPurchases = value })), nearest.MaxPurchases);
            Assert.Equal(First(0, 4, value => WithLimits(problem, limits => limits with { MaxBarlows = value })), nearest.MaxBarlows);
            Assert.Equal(First(0, 20, value => WithLimits(problem, limits => limits with { AllowedOverlaps = value })), nearest.AllowedOverlaps);
            AssertLeastBudget(problem, nearest.Budget);
        }
    }

    private static void AssertLeastBudget(OracleProblem problem, decimal? budget)
    {
        OracleProblem at = WithLimits(problem, limits => limits with { Budget = budget ?? 1_000_000 });
        OracleProblem below = WithLimits(problem, limits => limits with { Budget = (budget ?? 1_000_000) - 0.01m });
        Assert.Equal(budget is not null, IsFeasible(at));
        Assert.False(IsFeasible(below));
    }

    private static int? First(int from, int to, Func<int, OracleProblem> problemWith) =>
        Enumerable.Range(from, to - from + 1).Where(value => IsFeasible(problemWith(value))).Select(value => (int?)value).FirstOrDefault();

    private static bool IsFeasible(OracleProblem problem) => new OracleSearch(problem).AllowedSets().Any();

    private static (double Start, double End) Interval(Random random, double length)
    {
        double start = random.NextDouble() * length;
        return (start, random.Next(3) == 0 ? start + (random.NextDouble() * (length - start)) : start);
    }

    private static double Mismatch((double Start, double End)[] intervals, double x) =>
        intervals.Min(interval => Math.Max(0, Math.Max(interval.Start - x, x - interval.End)));

    /// <summary>Every place where the mismatch may bend, or cross what is enough.</summary>
    private static double[] Breakpoints((double Start, double End)[] intervals, double length, double enough)
    {
        List<double> points = [0, length];
        foreach ((double start, double end) in intervals)
        {
            points.AddRange([start, end, start - enough, end + enough]);
            points.AddRange(intervals.Select(other => (end + other.Start) / 2));
        }

        return [.. points.Where(x => x >= 0 && x <= length).Order()];
    }

    private static double Integral(
        (double Start, double End)[] intervals, double length, double enough, Func<double, double> of)
    {
        double[] points = Breakpoints(intervals, length, enough);
        return points.Zip(points.Skip(1), (from, to) =>
            (to - from) * (of(Mismatch(intervals, from)) + of(Mismatch(intervals, to))) / 2).Sum();
    }

    private static double Served((double Start, double End)[] intervals, double length, double enough)
    {
        double[] points = Breakpoints(intervals, length, enough);
        return points.Zip(points.Skip(1))
            .Where(piece => Mismatch(intervals, (piece.First + piece.Second) / 2) <= enough)
            .Sum(piece => piece.Second - piece.First);
    }

    private static string[] SetsOf(OracleResult result) => [.. result.BestSets.Select(plan => string.Join(',', plan.Ids))];

    private static OracleScale Scale(OracleTelescope telescope) => new(telescope, Problem(telescope));

    private static OracleProblem Problem(params OracleTelescope[] telescopes) => new()
    {
        Telescopes = telescopes,
        Catalogue = [],
        Limits = new OracleLimits { Budget = 500 },
    };

    private static OracleProblem Owning(OracleProblem problem, params OracleItem[] items) =>
        problem with { Owned = [.. items.Select(item => new OracleOwned(item.Id, item))] };

    private static OracleProblem Selling(OracleProblem problem, params OracleItem[] items) =>
        problem with { Catalogue = items };

    private static OracleProblem Including(OracleProblem problem, params string[] ids) =>
        problem with { Preferences = problem.Preferences with { MustInclude = ids } };

    private static OracleProblem WithLimits(OracleProblem problem, Func<OracleLimits, OracleLimits> change) =>
        problem with { Limits = change(problem.Limits) };

    private static OracleItem Eyepiece(string id, double focalLength, decimal price = 10, double field = 50) => new()
    {
        Id = id,
        Kind = OracleKind.Eyepiece,
        Barrel = OracleBarrel.Inch125,
        FocalLengthMm = focalLength,
        ApparentFieldDeg = field,
        EyeReliefMm = 10,
        Price = price,
    };

    private static OracleItem Zoom(string id, double shortest, double longest) => new()
    {
        Id = id,
        Kind = OracleKind.Zoom,
        Barrel = OracleBarrel.Inch125,
        ShortestFocalLengthMm = shortest,
        LongestFocalLengthMm = longest,
        ApparentFieldAtShortestDeg = 60,
        ApparentFieldAtLongestDeg = 45,
        EyeReliefMm = 15,
        Price = 100,
    };

    private static OracleItem Barlow(string id, params double[] factors) => new()
    {
        Id = id,
        Kind = OracleKind.Barlow,
        Barrel = OracleBarrel.Inch125,
        Factors = factors,
        Price = 50,
    };
}
