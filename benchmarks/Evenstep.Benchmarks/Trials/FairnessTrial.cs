using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>Small requests alone, beside the twenty heaviest of each kind, and beside a key that sends at fifty times its rate.</summary>
internal static class FairnessTrial
{
    private const int Heavy = 20;
    private const double SmallPerSecond = 20;
    private const int BusyRatePerMinute = 600;
    private const int TimesItsRate = 50;

    private static readonly (string Name, string Path, string Body)[] Heaviest =
    [
        ("spending curves of 300 items, 8 purchases, 4 Barlows", "/v1/spending-curves", Body(300, certify: false)),
        ("recommendations of 1000 items, 8 purchases, 4 Barlows, `enoughStep` 1", "/v1/recommendations", Body(1000, certify: false)),
        ("recommendations of 3000 items with certificates", "/v1/recommendations", IssueTable.Body(new CatalogueMix(3000), certify: true)),
    ];

    public static async Task<string> RunAsync(TrialOptions options)
    {
        var time = TimeSpan.FromMinutes(options.Minutes ?? 0.5);
        var table = new Table(1, "beside", "small p50 ms", "p99 ms", "over alone", "refused or unanswered", "statuses", "MB at most");
        var alone = await BesideAsync(null, time, options, double.NaN, table);
        foreach (var heavy in Heaviest)
        {
            await BesideAsync(heavy, time, options, alone, table);
        }

        await BesideBusyKeyAsync(time, options, table);
        return $"## Fairness\n\nSmall requests, {SmallPerSecond} a second, open loop, {time.TotalSeconds:F0} s; {Heavy} heavy ones always in flight " +
            "from another connection, each asked anew when answered or refused. Killed at 6 GB. " +
            $"Goals: at most 3 times as long as alone, none refused.\n\n{table}";
    }

    private static string Body(int items, bool certify) => IssueTable.Body(
        new CatalogueMix(items), new JsonObject { ["maxPurchases"] = 8, ["maxBarlows"] = 4, ["allowedOverlaps"] = 20 }, new JsonObject { ["enoughStep"] = 1 },
        certify: certify);

    private static async Task<double> BesideAsync(
        (string Name, string Path, string Body)? heavy, TimeSpan time, TrialOptions options, double alone, Table table)
    {
        Progress.Tell(heavy?.Name ?? "alone");
        using var service = await TrialService.StartAsync(IssueTable.Start([("Evenstep:CacheMegabytes", "0"), .. options.Settings]));
        await new OpenLoop(service.Address, number => OpenLoop.Small(number, 1000)).RunAsync(100, TimeSpan.FromSeconds(5));
        await using var watch = new MemoryWatch(service, 6000, TimeSpan.FromMilliseconds(100));
        using var ends = new CancellationTokenSource();
        Task[] others = heavy is { } one
            ? [.. Enumerable.Range(0, Heavy).Select(caller => KeepAskingAsync(service, one.Path, one.Body, caller, ends.Token))]
            : [];
        await Task.Delay(TimeSpan.FromSeconds(1));
        var small = await new OpenLoop(service.Address, number => OpenLoop.Small(number)).RunAsync(SmallPerSecond, time);
        await ends.CancelAsync();
        await Task.WhenAll(others);
        return Add(table, heavy is null ? "nothing" : $"{Heavy} {heavy.Value.Name}", small, alone, watch.Peak);
    }

    /// <summary>Both keys ask for small things; only the one keeps to its rate.</summary>
    private static async Task BesideBusyKeyAsync(TimeSpan time, TrialOptions options, Table table)
    {
        Progress.Tell("a busy key");
        using var service = await TrialService.StartAsync(
            IssueTable.Start([("Evenstep:CacheMegabytes", "0"), .. Key("calm", null), .. Key("busy", BusyRatePerMinute), .. options.Settings]));
        await using var watch = new MemoryWatch(service, 6000, TimeSpan.FromMilliseconds(100));
        var alone = await new OpenLoop(service.Address, number => Keyed(OpenLoop.Small(number, 1000), "calm")).RunAsync(SmallPerSecond, time);
        var aloneP99 = Add(table, "nothing, with keys", alone, double.NaN, watch.Peak);
        var busy =
            new OpenLoop(service.Address, number => Keyed(OpenLoop.Small(number, 500_000), "busy")).RunAsync(BusyRatePerMinute / 60.0 * TimesItsRate, time);
        var calm = await new OpenLoop(service.Address, number => Keyed(OpenLoop.Small(number), "calm")).RunAsync(SmallPerSecond, time);
        var refused = await busy;
        Add(table, $"a key at {TimesItsRate} times its rate of {BusyRatePerMinute} a minute ({refused.Statuses})", calm, aloneP99, watch.Peak);
    }

    private static double Add(Table table, string beside, LoopResults small, double alone, double megabytes)
    {
        var p99 = small.Percentile(0.99, _ => true);
        table.Add(
            beside,
            Numbers.Show(small.Percentile(0.5, _ => true)),
            Numbers.Show(p99),
            double.IsNaN(alone) ? "" : Numbers.Show(p99 / alone),
            Numbers.Show(small.Answers.Count(answer => answer.Status != 200)),
            small.Statuses,
            Numbers.Show(megabytes));
        return p99;
    }

    /// <summary>No two alike, for of equal requests only one would be solved.</summary>
    private static async Task KeepAskingAsync(TrialService service, string path, string body, int caller, CancellationToken ends)
    {
        for (var budget = IssueTable.UsualBudget + caller; !ends.IsCancellationRequested && !service.HasExited; budget += Heavy)
        {
            try
            {
                using var response = await service.PostAsync(path, IssueTable.WithBudget(body, budget), ends);
                if (response.Headers.RetryAfter?.Delta is { } pause)
                {
                    await Task.Delay(pause, ends);
                }
            }
            catch (Exception failure) when (failure is OperationCanceledException or HttpRequestException)
            {
                // Asked anew, or ended by the loop.
            }
        }
    }

    private static string TextOf(string name) => $"evenstep_trial-{name}";

    private static HttpRequestMessage Keyed(HttpRequestMessage message, string name)
    {
        message.Headers.Add("Authorization", $"Bearer {TextOf(name)}");
        return message;
    }

    private static IEnumerable<(string Key, string Value)> Key(string name, int? rate) =>
    [
        ($"Evenstep:Keys:{name}:Sha256", Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(TextOf(name))))),
        ($"Evenstep:Keys:{name}:Owner", name),
        ($"Evenstep:Keys:{name}:Scopes", "read,write"),
        .. rate is { } perMinute ? [($"Evenstep:Keys:{name}:Rate", perMinute.ToString(CultureInfo.InvariantCulture))] : Array.Empty<(string, string)>(),
    ];
}
