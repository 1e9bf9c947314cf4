using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class FigureSelfTests
{
    [Fact]
    public void One_eyepiece_in_the_middle_gives_two_end_gaps()
    {
        OracleFigures figures = Exhaustive.Solve(Problem(Even).Owning(Eyepiece("own", 5))).BuyNothing.Kit;

        double beyond = Math.Log(2) - (Math.Log(1.5) / 2);
        Assert.Equal(4, figures.LargestStep, Close);
        Assert.Equal(Math.Log(2) / 2, figures.MeanMismatch, Close);
        Assert.Equal(beyond * beyond / Math.Log(4), figures.MeanExcess, Close);
        Assert.Equal(1 - (beyond / Math.Log(2)), figures.ServedShare, Close);
        Assert.Equal(figures.ServedShare, figures.ComfortableShare, Close);
    }

    [Fact]
    public void Comfort_lies_near_comfortable_views_alone()
    {
        OracleProblem problem = Problem(Even).Owning(Eyepiece("own", 5) with { EyeReliefMm = 9 }, Eyepiece("comfortable", 10));

        OracleFigures figures = Exhaustive.Solve(problem).BuyNothing.Kit;

        Assert.Equal(1.5 * Math.Log(1.5) / Math.Log(4), figures.ServedShare, Close);
        Assert.Equal(0.5 * Math.Log(1.5) / Math.Log(4), figures.ComfortableShare, Close);
    }

    [Fact]
    public void Where_less_is_enough_a_step_of_a_fifth_still_serves()
    {
        OracleProblem problem = Problem(Even).Owning(Eyepiece("own", 5)) with { Preferences = new() { EnoughStep = 1 } };

        OracleFigures figures = Exhaustive.Solve(problem).BuyNothing.Kit;

        Assert.Equal(Math.Log(1.2) / Math.Log(4), figures.ServedShare, Close);
        Assert.Equal(Math.Log(1.2) / Math.Log(4), figures.ComfortableShare, Close);
        Assert.Equal(figures.MeanMismatch, figures.MeanExcess, Close);
    }

    [Fact]
    public void A_telescope_without_a_usable_view_counts_as_its_whole_range()
    {
        OracleProblem problem = Problem(Even, Zoned with { FocuserBarrel = OracleBarrel.Inch0965 });
        OracleKitFigures figures = Exhaustive.Solve(problem.Owning(Eyepiece("own", 5))).BuyNothing;

        double length = (0.6 * Math.Log(1.25)) + (1.9 * Math.Log(2));
        Assert.False(figures.Telescopes[1].HasUsableView);
        Assert.Equal(2 * length, figures.Kit.LnLargestStep, Close);
        Assert.Equal(((Math.Log(2) / 2) + length) / 2, figures.Kit.MeanMismatch, Close);
        Assert.Equal(figures.Telescopes[0].ServedShare / 2, figures.Kit.ServedShare, Close);
        Assert.Equal(length - (Math.Log(1.5) / 2), figures.Telescopes[1].MeanExcess, Close);
        Assert.Equal(figures.Telescopes[0], figures.Counting);
    }

    [Fact]
    public void Figures_agree_with_an_integration_that_knows_no_gaps()
    {
        Random random = new(1);
        for (int round = 0; round < 200; round++)
        {
            double length = 0.3 + random.NextDouble();
            double enoughStep = 1.2 + random.NextDouble();
            double enough = Math.Log(enoughStep) / 2;
            (double Start, double End)[] intervals = [.. Enumerable.Range(0, random.Next(1, 7))
                .Select(_ => Interval(random, length))
                .OrderBy(interval => interval.Start)];
            (double Start, double End)[] comfortable = [.. intervals.Where(_ => random.Next(2) == 0)];

            OracleFigures figures = OracleLadder.Figures(intervals, comfortable, length, enoughStep);

            Assert.Equal(Integral(intervals, length, enough, x => x), figures.MeanMismatch * length, Close);
            Assert.Equal(Integral(intervals, length, enough, x => Math.Max(0, x - enough)), figures.MeanExcess * length, Close);
            Assert.Equal(Breakpoints(intervals, length, enough).Max(x => Mismatch(intervals, x)), figures.LnLargestStep / 2, Close);
            Assert.Equal(Served(intervals, length, enough), figures.ServedShare * length, Close);
            Assert.Equal(comfortable.Length == 0 ? 0 : Served(comfortable, length, enough), figures.ComfortableShare * length, Close);
        }
    }

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
}
