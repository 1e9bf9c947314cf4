using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class DecisionSelfTests
{
    private const int Times = 3;
    private const int FirstSeed = 80_000;
    private const int MostProblems = 3000;

    /// <summary>What decides nothing among random problems is not tested by them.</summary>
    [Theory]
    [InlineData(OracleQuestion.Recommendation, OracleDefinitions.None, false)]
    [InlineData(OracleQuestion.SpendingCurve, OracleDefinitions.EnoughStep | OracleDefinitions.Aside | OracleDefinitions.LessPower, false)]
    [InlineData(OracleQuestion.BuyingPath, OracleDefinitions.EnoughStep | OracleDefinitions.StepLeeway, false)]
    [InlineData(OracleQuestion.BuyingPath, OracleDefinitions.LossLeeway, true)]
    [InlineData(OracleQuestion.Spare, OracleDefinitions.SpareExcess | OracleDefinitions.SpareComfort | OracleDefinitions.SpareField, false)]
    public void Every_definition_decides_some_random_problems(OracleQuestion question, OracleDefinitions some, bool demanding)
    {
        IEnumerable<OracleDefinitions> asked = some == OracleDefinitions.None ? OracleDecisions.All
            : Enum.GetValues<OracleDefinitions>().Where(one => one != OracleDefinitions.None && (some & one) != 0);
        Dictionary<OracleDefinitions, int> left = asked.ToDictionary(definition => definition, _ => Times);
        for (int seed = FirstSeed; seed < FirstSeed + MostProblems && left.Count > 0; seed++)
        {
            OracleProblem problem = demanding ? RandomProblems.MakeDemanding(seed) : RandomProblems.Make(seed);
            foreach (OracleDefinitions definition in OracleDecisions.Of(problem, [.. left.Keys], question))
            {
                if (--left[definition] == 0)
                {
                    left.Remove(definition);
                }
            }
        }

        Assert.Empty(left);
    }

    [Fact]
    public void Every_definition_is_a_bit_of_its_own() => Assert.All(
        Enum.GetValues<OracleDefinitions>().Skip(1), definition => Assert.Equal(1, System.Numerics.BitOperations.PopCount((uint)definition)));

    [Fact]
    public void What_decides_is_told_from_what_does_not()
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("exact", 5, price: 100), Eyepiece("near", 4.7, price: 20))
            .Owning(Eyepiece("low", 10), Eyepiece("high", 2.5));

        Assert.Equal([OracleDefinitions.StepLeeway, OracleDefinitions.ExcessLeeway], OracleDecisions.Of(problem, OracleDecisions.All));
        Assert.Equal([OracleDefinitions.StepLeeway], OracleDecisions.Of(problem, OracleDecisions.All, OracleQuestion.BuyingPath));
    }

    [Theory]
    [InlineData(OracleDefinitions.HighGrace, 2.2)]
    [InlineData(OracleDefinitions.BoughtEyeRelief, 5)]
    public void What_makes_a_view_usable_can_be_left_out(OracleDefinitions without, double focalLength)
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("new", focalLength) with { EyeReliefMm = without == OracleDefinitions.HighGrace ? 10 : 4 });

        Assert.Single(Exhaustive.Solve(problem).Exclusions);
        Assert.Empty(Exhaustive.Solve(problem with { Without = without }).Exclusions);
    }

    [Fact]
    public void The_range_its_weights_and_drawbacks_can_be_left_out()
    {
        OracleProblem planets = Problem(Zoned with { ApertureMm = 70 }) with { Observer = new() { Observes = [OracleInterest.Planets] } };
        OracleItem bad = Eyepiece("one", 95, field: 40) with { EyeReliefMm = 6, FastestFocalRatio = 18 };
        OracleItem barlow = Barlow("barlow", 2) with { FastestFocalRatio = 18 };

        Assert.Equal(100, Scale(planets, OracleDefinitions.SmallExitPupil).Highest, 1e-9);
        Assert.Equal(0.3 * Math.Log(1.1), Weighed(OracleDefinitions.LeastWeight), Close);
        Assert.Equal(0.45 * Math.Log(1.1), Weighed(OracleDefinitions.None), Close);
        Assert.Equal(["tight-eye-relief", "narrow-field"], Drawbacks(OracleDefinitions.WideExitPupil | OracleDefinitions.SteepCone));
        Assert.Equal(["narrow-field", "wide-exit-pupil"], Drawbacks(OracleDefinitions.TightEyeRelief | OracleDefinitions.SteepCone));
        Assert.Equal(["tight-eye-relief", "wide-exit-pupil"], Drawbacks(OracleDefinitions.NarrowField | OracleDefinitions.SteepCone));
        Assert.Empty(View(planets with { Without = OracleDefinitions.SteepConeOfBarlow }, Eyepiece("good", 20), barlow).Drawbacks);

        double Weighed(OracleDefinitions without)
        {
            OracleScale scale = Scale(planets with { Telescopes = [Zoned] }, without);
            return scale.Position(scale.Lowest * 1.1);
        }

        IEnumerable<string> Drawbacks(OracleDefinitions without) => View(planets with { Without = without }, bad).Drawbacks;
    }

    [Theory]
    [InlineData(OracleDefinitions.None, 57.3, 14)]
    [InlineData(OracleDefinitions.AssumedField, 50, 14)]
    [InlineData(OracleDefinitions.AssumedEyeRelief, 57.3, 10)]
    public void What_is_assumed_can_be_left_out(OracleDefinitions without, double field, double relief)
    {
        OracleItem unknown = Eyepiece("one", 20) with { StatedApparentFieldDeg = null, StatedEyeReliefMm = null, FieldStopMm = 20 };
        OracleBench bench = new(Problem(Zoned).Selling(unknown).Owning(unknown with { Id = "own" }) with { Without = without });

        Assert.All([bench.Owned[0], bench.Problem.Catalogue[0]], item => Assert.Equal((field, relief), (item.ApparentFieldDeg, item.EyeReliefMm)));
    }

    [Theory]
    [InlineData(OracleDefinitions.None, "")]
    [InlineData(OracleDefinitions.SpareField, "")]
    [InlineData(OracleDefinitions.SpareComfort, "beside")]
    [InlineData(OracleDefinitions.SpareField | OracleDefinitions.SpareComfort, "beside wide")]
    public void What_spares_can_be_left_out(OracleDefinitions without, string spare)
    {
        OracleProblem problem = Problem(Even).Owning(
            Eyepiece("low", 10) with { EyeReliefMm = 6 },
            Eyepiece("wide", 10, field: 60),
            Eyepiece("middle", 5),
            Eyepiece("beside", 5.1),
            Eyepiece("high", 2.5));

        Assert.Equal(spare, string.Join(' ', OracleSpare.Alone(problem with { Without = without }, []).Where(id => id != "low")));
    }

    private static OracleScale Scale(OracleProblem problem, OracleDefinitions without) =>
        new OracleBench(problem with { Without = without }).Scales[0];
}
