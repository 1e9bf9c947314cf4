using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Benchmarks.Reports;
using Evenstep.Benchmarks.Ways;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks;

/// <summary>
/// Runs every way on every problem, problem by problem and in an order that changes each time, so that what else the
/// machine does hits all alike.
/// </summary>
internal sealed class EngineRuns(Options options)
{
    /// <summary>Runs that leave much on the heap are cleared away before the next one is timed.</summary>
    private const double LongRunMilliseconds = 50;

    private const int WarmUpItems = 30;

    public List<Measurement> Run()
    {
        WarmUp();
        List<Measurement> all = [];
        foreach (var set in ProblemSet.All(options.Quick))
        {
            Progress.Tell($"{set.Name}: {set.Count} problems");
            all.AddRange(Run(set));
        }

        return all;
    }

    /// <summary>Small problems of no set, until every way has run long enough for its code to be compiled to the end.</summary>
    private void WarmUp()
    {
        Progress.Tell("warm-up");
        foreach (var way in AllWays.Listed)
        {
            var started = Stopwatch.GetTimestamp();
            for (var number = 1; Stopwatch.GetElapsedTime(started) < options.WarmUp; number++)
            {
                way.Solve(WarmUpProblem(number), options.Cap);
            }
        }
    }

    private static PurchaseProblem WarmUpProblem(int number) =>
        ProblemDraw.Draw(WarmUpItems, Variant.Others[number % Variant.Others.Length], -number);

    private IEnumerable<Measurement> Run(ProblemSet set)
    {
        var spent = AllWays.Listed.ToDictionary(way => way, _ => 0.0);
        for (var number = 0; number < set.Count; number++)
        {
            var problem = set.Problem(number);
            // Otherwise the way that happens to go first would be the only one to find the problem's data cold.
            Candidacy.Of(problem);
            foreach (var way in InAnyOrder(set, number).Where(way => way.IsAsked(set, number) && spent[way] < options.CapPerSet.TotalMilliseconds))
            {
                var measured = Measure(set, number, way, problem);
                spent[way] += measured.Milliseconds;
                yield return measured;
            }
        }
    }

    private static Way[] InAnyOrder(ProblemSet set, int number)
    {
        Way[] ways = [.. AllWays.Listed];
        var dice = new Dice(set.Items, number, ways.Length);
        for (var i = ways.Length - 1; i > 0; i--)
        {
            var j = dice.Int(0, i);
            (ways[i], ways[j]) = (ways[j], ways[i]);
        }

        return ways;
    }

    private Measurement Measure(ProblemSet set, int number, Way way, PurchaseProblem problem)
    {
        var bytesBefore = GC.GetAllocatedBytesForCurrentThread();
        var started = Stopwatch.GetTimestamp();
        var answer = Solve(set, number, way, problem);
        var took = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        var bytes = GC.GetAllocatedBytesForCurrentThread() - bytesBefore;
        if (took > LongRunMilliseconds)
        {
            GC.Collect();
        }

        return new Measurement(set, number, way.Name, answer, took, bytes);
    }

    private Answer Solve(ProblemSet set, int number, Way way, PurchaseProblem problem)
    {
        try
        {
            return way.Solve(problem, options.Cap);
        }
#pragma warning disable CA1031 // Whatever goes wrong in one way is reported as that way's failure.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            Progress.Tell($"{way.Name} failed at {set.Name}, problem {number}: {exception.Message}");
            return new Answer(Ending.Failed);
        }
    }
}
