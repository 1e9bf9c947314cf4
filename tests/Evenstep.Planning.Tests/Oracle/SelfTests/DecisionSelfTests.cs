using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class DecisionSelfTests
{
    private const int Times = 3;
    private const int MostProblems = 6000;

    /// <summary>What decides nothing among random problems is not tested by them.</summary>
    [Fact]
    public void Every_definition_decides_some_random_problems()
    {
        Dictionary<OracleDefinitions, int> left = OracleDecisions.All.ToDictionary(definition => definition, _ => Times);
        for (int seed = 0; seed < MostProblems && left.Count > 0; seed++)
        {
            foreach (OracleDefinitions definition in OracleDecisions.Of(RandomProblems.Make(seed), [.. left.Keys]))
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
        OracleDecisions.All, definition => Assert.Equal(1, System.Numerics.BitOperations.PopCount((uint)definition)));

    [Fact]
    public void What_decides_is_told_from_what_does_not()
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("exact", 5, price: 100), Eyepiece("near", 4.7, price: 20))
            .Owning(Eyepiece("low", 10), Eyepiece("high", 2.5));

        Assert.Equal([OracleDefinitions.StepLeeway, OracleDefinitions.ExcessLeeway], OracleDecisions.Of(problem, OracleDecisions.All));
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

    private static OracleScale Scale(OracleProblem problem, OracleDefinitions without) =>
        new OracleBench(problem with { Without = without }).Scales[0];
}
