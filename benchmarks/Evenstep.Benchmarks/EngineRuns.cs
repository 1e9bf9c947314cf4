using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Benchmarks.Reports;
using Evenstep.Benchmarks.Ways;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks;

/// <summary>
/// Runs every way on every problem, problem by problem, so that what else the machine does hits all alike. The way that
/// goes first changes from problem to problem.
/// </summary>
internal sealed class EngineRuns(Options options)
{
    /// <summary>Runs that leave much on the heap are cleared away before the next one is timed.</summary>
    private const double LongRunMilliseconds = 50;

    private static readonly ProblemSet WarmUpSet = new(30, Variant.Usual with { Name = "warm-up" }, 1000, 1000);

    public List<Measurement> Run()
    {
        WarmUp();
        List<Measurement> all = [];
        foreach (var set in ProblemSet.All(options.Quick))
        {
            Progress.Tell($"{set.Name}: {set.Count} problems");
            for (var number = 0; number < set.Count; number++)
            {
                all.AddRange(RunAll(set, number));
            }
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
            for (var number = 0; Stopwatch.GetElapsedTime(started) < options.WarmUp; number++)
            {
                way.Solve(WarmUpSet.Problem(-1 - number), options.Cap);
            }
        }
    }

    private IEnumerable<Measurement> RunAll(ProblemSet set, int number)
    {
        var problem = set.Problem(number);
        for (var i = 0; i < AllWays.Listed.Length; i++)
        {
            var way = AllWays.Listed[(number + i) % AllWays.Listed.Length];
            if (way.IsAsked(set, number))
            {
                yield return Measure(set, number, way, problem);
            }
        }
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
