using System.Diagnostics;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>
/// More and more is offered to a service that has one core for itself (core 1), by a generator on another (core 0):
/// how much is answered, how fast the rest is refused, and whether the process still answers that it lives.
/// </summary>
internal static class OverloadTrial
{
    private const int GeneratorCore = 0;
    private const int ServiceCore = 1;
    private const double HealthPerSecond = 20;
    private const double CapacityStart = 100;

    private static readonly double[] Multiples = [0.5, 1, 2, 3, 5, 10];

    public static async Task<string> RunAsync(TrialOptions options)
    {
        Pin();
        var time = TimeSpan.FromMinutes(options.Minutes ?? 0.5);
        using var service = await TrialService.StartAsync(OneCore([("Evenstep:CacheMegabytes", "0"), .. options.Settings]));
        var capacity = await CapacityAsync(service, time / 3);
        Progress.Tell($"capacity {capacity:F0} a second");
        List<(double Multiple, LoopResults Small, LoopResults Health)> runs = [];
        foreach (var multiple in Multiples)
        {
            var health = new OpenLoop(service.Address, _ => new HttpRequestMessage(HttpMethod.Get, "/health/live")).RunAsync(HealthPerSecond, time);
            var small = new OpenLoop(service.Address, number => OpenLoop.Small(number, (int)(multiple * 77_000))).RunAsync(multiple * capacity, time);
            runs.Add((multiple, await small, await health));
            Progress.Tell($"{multiple} times: {runs[^1].Small.Goodput:F0} a second, {runs[^1].Small.Statuses}");
            await Task.Delay(TimeSpan.FromSeconds(3));
        }

        return Report(capacity, runs, time, service.PeakMegabytes, service.HasExited);
    }

    /// <summary>The service on one core, told that it has one.</summary>
    public static TrialStart OneCore(params (string Key, string Value)[] settings) =>
        IssueTable.Start(settings) with { Core = ServiceCore, Environment = [("DOTNET_PROCESSOR_COUNT", "1")] };

    /// <summary>Keeps the generator on its own core.</summary>
    public static void Pin()
    {
        if (OperatingSystem.IsLinux() && Environment.ProcessorCount > ServiceCore)
        {
            Process.GetCurrentProcess().ProcessorAffinity = 1 << GeneratorCore;
        }
    }

    /// <summary>Offers more until it no longer brings a tenth more answers.</summary>
    private static async Task<double> CapacityAsync(TrialService service, TimeSpan time)
    {
        // Warm, so that what is compiled while it runs is compiled.
        await new OpenLoop(service.Address, number => OpenLoop.Small(number)).RunAsync(CapacityStart, time);
        var best = 0.0;
        for (var offered = CapacityStart; ; offered *= 1.4)
        {
            var goodput =
                (await new OpenLoop(service.Address, number => OpenLoop.Small(number, (int)(offered * 1000) % 900_000)).RunAsync(offered, time)).Goodput;
            Progress.Tell($"{offered:F0} a second offered, {goodput:F0} answered");
            if (goodput < 1.1 * best || goodput < 0.8 * offered)
            {
                return Math.Max(best, goodput);
            }

            best = goodput;
        }
    }

    private static string Report(
        double capacity, List<(double Multiple, LoopResults Small, LoopResults Health)> runs, TimeSpan time, double peakMegabytes, bool hasExited)
    {
        var peak = runs.Max(run => run.Small.Goodput);
        var table = new Table(
            1, "offered", "a second", "answered a second", "of the peak", "answers p99 ms", "refusals p50 ms", "refusals p99 ms", "/health/live p99 ms",
            "generator late ms", "statuses (0: none)");
        foreach (var (multiple, small, health) in runs)
        {
            static bool IsRefusal(int status) => status is 429 or 503;
            table.Add(
                $"{multiple} × capacity",
                Numbers.Show(multiple * capacity),
                Numbers.Show(small.Goodput),
                Numbers.Show(small.Goodput / peak),
                Shown(small.Percentile(0.99, status => status == 200)),
                Shown(small.Percentile(0.5, IsRefusal)),
                Shown(small.Percentile(0.99, IsRefusal)),
                Shown(health.Percentile(0.99, status => status == 200)),
                Numbers.Show(small.LatestMilliseconds),
                small.Statuses);
        }

        return $"## Overload\n\nSmall requests, no two alike, no cache; open loop, {time.TotalSeconds:F0} s each; generator on core 0, " +
            "service with one processor on core 1. Goals: 90 % of the peak at 3 and 10 times capacity, refusals' p99 20 ms, " +
            "`/health/live` p99 50 ms. " +
            $"Most resident: {peakMegabytes:F0} MB{(hasExited ? "; the process ended" : "")}.\n\n{table}";
    }

    private static string Shown(double milliseconds) => double.IsNaN(milliseconds) ? "none" : Numbers.Show(milliseconds);
}
