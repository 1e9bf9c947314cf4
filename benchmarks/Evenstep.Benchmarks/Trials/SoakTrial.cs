using System.Globalization;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>Mixed load at default settings for a long time, with a look at resident memory every few seconds.</summary>
internal static class SoakTrial
{
    private const double UsualMinutes = 60;
    private const double MostMegabytes = 4000;
    private const int Callers = 8;
    private const int ShownSamples = 24;

    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan Settled = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan Averaged = TimeSpan.FromSeconds(60);

    public static async Task<string> RunAsync(TrialOptions options)
    {
        var minutes = options.Minutes ?? UsualMinutes;
        using var service = await TrialService.StartAsync(IssueTable.Start([.. options.Settings]));
        await MixedLoad.PrepareAsync(service);
        await using var watch = new MemoryWatch(service, MostMegabytes, LookEvery);
        var results = await new MixedLoad(service).RunAsync(Callers, TimeSpan.FromMinutes(minutes), options.Seed);
        return Report(watch, results, minutes, options);
    }

    private static string Report(MemoryWatch watch, MixedLoadResults results, double minutes, TrialOptions options)
    {
        var samples = watch.Samples.Where(sample => sample.Megabytes > 0).ToArray();
        var (settled, end) = (MeanAround(samples, Settled), MeanAround(samples, samples[^1].At));
        var table = new Table(1, "what", "measured", "goal");
        table.Add("answers", Numbers.Show(results.Statuses.Values.Sum()), "");
        table.Add("resident at the start, MB", Numbers.Show(watch.Before), "");
        table.Add("after 10 minutes, MB (mean of the minute)", samples[^1].At < Settled ? "not reached" : Numbers.Show(settled), "");
        table.Add("at the end, MB (mean of the minute)", Numbers.Show(end), "within 10 %");
        table.Add("most, MB", Numbers.Show(watch.Peak), "400");
        table.Add("killed at 4 GB", watch.HasKilled ? $"after {samples[^1].At.TotalMinutes:F1} minutes" : "no", "no");
        table.Add("slowest answer, s", Numbers.Show(results.SlowestSeconds), "");
        table.Add(
            "statuses (0: no whole answer)", string.Join(", ", results.Statuses.OrderBy(one => one.Key).Select(one => $"{one.Key}: {one.Value}")), "200, 503");
        var course = new Table(0, "minute", "MB");
        foreach (var (at, megabytes) in samples.Where((_, i) => i % Math.Max(1, samples.Length / ShownSamples) == 0))
        {
            course.Add(at.TotalMinutes.ToString("F1", CultureInfo.InvariantCulture), Numbers.Show(megabytes));
        }

        var settings = options.Settings.Count == 0 ? "default settings" : string.Join(", ", options.Settings.Select(one => $"{one.Key}={one.Value}"));
        var failed = results.Failures.Count == 0
            ? ""
            : $"\nNeither answered nor refused as busy:\n\n{string.Concat(results.Failures.Select(one => $"- {one}\n"))}";
        return $"## Soak\n\n{Callers} callers, mixed load, {minutes} minutes, {settings}; killed at 4 GB.\n\n{table}\n{course}{failed}";
    }

    private static double MeanAround((TimeSpan At, double Megabytes)[] samples, TimeSpan at) =>
        samples.Where(sample => sample.At <= at && sample.At > at - Averaged).Select(sample => sample.Megabytes).DefaultIfEmpty(0).Average();
}
