using System.Collections.Immutable;
using System.Diagnostics;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Benchmarks.Http;

/// <summary>One round: the planner alone, then the same problems as a batch, on the same processors.</summary>
/// <param name="PlannerPerSecond">Plans a second, as many threads as processors.</param>
/// <param name="BatchPerSecond">Answers a second.</param>
/// <param name="PlanProcessorMs">Processor time of a plan, which other work on the machine changes less.</param>
/// <param name="AnswerProcessorMs">Processor time that the service takes for an answer.</param>
internal sealed record BatchRound(double PlannerPerSecond, double BatchPerSecond, double PlanProcessorMs, double AnswerProcessorMs);

/// <summary>What was measured of batches.</summary>
/// <param name="Rounds">Planner and batch in turn.</param>
/// <param name="MemoryLines">Lines of the batch that memory was measured over.</param>
/// <param name="ResidentBefore">Resident memory before it, in bytes.</param>
/// <param name="ResidentAfter">The most during it.</param>
internal sealed record BatchResults(ImmutableArray<BatchRound> Rounds, int MemoryLines, long ResidentBefore, long ResidentAfter);

/// <summary>A batch against a stored catalogue beside the planner without any service around it.</summary>
internal static class BatchRuns
{
    public const int CatalogueItems = 300;

    private const double WorkLimit = 10;
    private const int Rounds = 5;

    /// <summary>Before the service is compiled as it stays.</summary>
    private const int RoundsToWarmUp = 4;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    public static async Task<BatchResults> RunAsync(Options options)
    {
        using var shops = new StoredShops();
        var bodies = DifferentRequests.For(StoredShops.NameOf(CatalogueItems));
        var problems = DifferentRequests.Problems([.. StoredShops.ItemsOf(CatalogueItems)]);
        var lines = options.Quick ? 3_000 : 20_000;
        using var service = await Server.ServiceAsync(shops.Folder, cacheMegabytes: 0);
        for (var round = 1; round <= RoundsToWarmUp; round++)
        {
            Progress.Tell($"batch, warming up {round} of {RoundsToWarmUp}");
            await RoundAsync(service, bodies, problems, lines);
        }

        List<BatchRound> rounds = [];
        for (var round = 1; round <= Rounds; round++)
        {
            Progress.Tell($"batch, round {round} of {Rounds}");
            rounds.Add(await RoundAsync(service, bodies, problems, lines));
        }

        var memoryLines = options.Quick ? 20_000 : 100_000;
        var (before, after) = await MemoryAsync(service, bodies, memoryLines);
        return new BatchResults([.. rounds], memoryLines, before, after);
    }

    private static async Task<BatchRound> RoundAsync(Server service, string[] bodies, PurchaseProblem[] problems, int lines)
    {
        var ownBefore = Environment.CpuUsage.TotalTime;
        var planner = Time(() => PlanAll(problems, lines));
        var own = Environment.CpuUsage.TotalTime - ownBefore;
        var itsBefore = service.ProcessorTime;
        var batch = await TimeAsync(() => SendAsync(service, bodies, lines));
        var its = service.ProcessorTime - itsBefore;
        return new BatchRound(lines / planner, lines / batch, own.TotalMilliseconds / lines, its.TotalMilliseconds / lines);
    }

    private static void PlanAll(PurchaseProblem[] problems, int count) => Parallel.For(
        0,
        count,
        new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
        number => Planner.Solve(problems[number % problems.Length], new WorkBudget(WorkLimit)));

    private static async Task SendAsync(Server service, string[] bodies, int lines)
    {
        var answered = await BatchClient.SendAsync(new Uri(service.Address, "/v1/recommendations/batch"), bodies, lines);
        if (answered != lines)
        {
            throw new InvalidOperationException($"Of {lines} lines only {answered} were answered with a recommendation.");
        }
    }

    private static async Task<(long Before, long Most)> MemoryAsync(Server service, string[] bodies, int lines)
    {
        Progress.Tell("batch, memory");
        var before = service.ResidentBytes;
        var most = before;
        var sending = SendAsync(service, bodies, lines);
        while (await Task.WhenAny(sending, Task.Delay(LookEvery)) != sending)
        {
            most = Math.Max(most, service.ResidentBytes);
        }

        await sending;
        return (before, most);
    }

    private static double Time(Action work)
    {
        var started = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(started).TotalSeconds;
    }

    private static async Task<double> TimeAsync(Func<Task> work)
    {
        var started = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(started).TotalSeconds;
    }
}
