using System.Diagnostics;
using System.Globalization;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>Random valid requests over every bound of the contract, one after another against one service.</summary>
internal static class RandomRequests
{
    private const int UsualCount = 3000;
    private const double MostSeconds = 6;
    private const double MostMegabytes = 6000;
    private const int ShownSlowest = 15;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private sealed record Run(DrawnRequest Request, double Seconds, string Outcome, double PeakMegabytes);

    public static async Task<string> RunAsync(TrialOptions options)
    {
        var service = await StartAsync(options);
        try
        {
            List<Run> runs = [];
            var (before, peak, restarts) = (service.ResidentMegabytes, 0.0, 0);
            for (var number = 0; number < (options.Count ?? UsualCount); number++)
            {
                runs.Add(await SendAsync(service, RequestDraw.Draw(options.Seed + number)));
                peak = Math.Max(peak, runs[^1].PeakMegabytes);
                if (number % 100 == 99)
                {
                    Progress.Tell($"{number + 1} requests, slowest {runs.Max(run => run.Seconds):F2} s, at most {peak:F0} MB");
                }

                if (IsOver(runs[^1], service))
                {
                    Progress.Tell(
                        $"seed {runs[^1].Request.Seed}: {runs[^1].Outcome}, {runs[^1].Seconds:F1} s, {runs[^1].PeakMegabytes:F0} MB; " +
                        $"{runs[^1].Request.Path}, {runs[^1].Request.Summary}");
                    restarts++;
                    service.Dispose();
                    service = await StartAsync(options);
                }
            }

            return Report(runs, before, peak, restarts);
        }
        finally
        {
            service.Dispose();
        }
    }

    /// <summary>Whether the service must not be asked any more: it is gone, or still at work on what nobody waits for.</summary>
    private static bool IsOver(Run run, TrialService service) => service.HasExited || run.Outcome is "no answer" or "broken off";

    private static async Task<TrialService> StartAsync(TrialOptions options)
    {
        var service = await TrialService.StartAsync(IssueTable.Start([.. options.Settings]));
        await MixedLoad.PrepareAsync(service);
        return service;
    }

    private static async Task<Run> SendAsync(TrialService service, DrawnRequest request)
    {
        await using var watch = new MemoryWatch(service, MostMegabytes, TimeSpan.FromMilliseconds(20));
        var started = Stopwatch.GetTimestamp();
        var outcome = await OutcomeAsync(service, request);
        return new Run(request, Stopwatch.GetElapsedTime(started).TotalSeconds, outcome, Math.Max(watch.Peak, service.PeakMegabytes));
    }

    private static async Task<string> OutcomeAsync(TrialService service, DrawnRequest request)
    {
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            using var message = new HttpRequestMessage(HttpMethod.Post, new Uri(request.Path, UriKind.Relative));
            message.Content = new StringContent(request.Body, System.Text.Encoding.UTF8, "application/json");
            message.Headers.Add("Accept", $"{request.Accept}, application/problem+json");
            using var response = await service.Client.SendAsync(message, patience.Token);
            var text = await response.Content.ReadAsStringAsync(patience.Token);
            if ((int)response.StatusCode == 400)
            {
                Progress.Tell($"seed {request.Seed}, {request.Path}: {text[..Math.Min(400, text.Length)]}");
            }

            return string.Create(CultureInfo.InvariantCulture, $"{(int)response.StatusCode}");
        }
        catch (OperationCanceledException)
        {
            return "no answer";
        }
        catch (HttpRequestException)
        {
            return "broken off";
        }
    }

    private static string Report(List<Run> runs, double before, double peak, int restarts)
    {
        double[] seconds = [.. runs.Select(run => run.Seconds).Order()];
        var outcomes = string.Join(
            ", ",
            runs.GroupBy(run => run.Outcome).OrderBy(group => group.Key)
                .Select(group => string.Create(CultureInfo.InvariantCulture, $"{group.Key}: {group.Count()}")));
        var summary = new Table(1, "what", "measured", "goal");
        summary.Add("slowest, s", Numbers.Show(seconds[^1]), "6");
        summary.Add("p99, s", Numbers.Show(Numbers.Percentile(seconds, 0.99)), "");
        summary.Add("p50, s", Numbers.Show(Numbers.Percentile(seconds, 0.5)), "");
        summary.Add("over 6 s", Numbers.Show(runs.Count(run => run.Seconds > MostSeconds)), "0");
        summary.Add("resident before, MB", Numbers.Show(before), "");
        summary.Add("most resident (VmHWM), MB", Numbers.Show(peak), "");
        summary.Add("more resident, MB", Numbers.Show(peak - before), "512");
        summary.Add("statuses", outcomes, "200 alone");
        summary.Add("service started anew", Numbers.Show(restarts), "0");
        var slowest = new Table(1, "seed", "request", "seconds", "outcome");
        foreach (var run in runs.OrderByDescending(run => run.Seconds).Take(ShownSlowest))
        {
            slowest.Add(Numbers.Show(run.Request.Seed), $"{run.Request.Path}: {run.Request.Summary}", Numbers.Show(run.Seconds), run.Outcome);
        }

        return $"## Random valid requests over every bound\n\n{runs.Count} requests, one after another, given up after 30 s, killed at 6 GB.\n\n" +
            $"{summary}\nThe slowest, each repeated by `--seed SEED --count 1`:\n\n{slowest}";
    }
}
