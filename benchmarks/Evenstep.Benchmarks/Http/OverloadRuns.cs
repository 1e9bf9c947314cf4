using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Evenstep.Benchmarks.Http;

/// <summary>What the service can do where no more is sent than it answers.</summary>
/// <param name="PerSecond">Answers a second.</param>
/// <param name="Worked">The processor time that the service took for them.</param>
/// <param name="Seconds">Over so long.</param>
internal sealed record Peak(double PerSecond, TimeSpan Worked, double Seconds)
{
    public double PerProcessorSecond => PerSecond * Seconds / Worked.TotalSeconds;
}

/// <summary>What came of so many times what the service can do.</summary>
/// <param name="Peak">What it can do.</param>
/// <param name="Times">How many times.</param>
/// <param name="Small">The requests.</param>
/// <param name="Health">Whether it lives, asked meanwhile.</param>
/// <param name="Worked">The processor time that the service took.</param>
internal sealed record OfferedRound(Peak Peak, double Times, OpenResult Small, OpenResult Health, TimeSpan Worked);

/// <summary>Small requests beside something else.</summary>
internal sealed record BesideRound(string Beside, OpenResult Small, int OthersAnswered);

/// <summary>What was measured of overload.</summary>
/// <param name="Rounds">Multiples of it offered.</param>
/// <param name="Besides">Small requests alone and beside others.</param>
/// <param name="FreedMs">From when a caller of something heavy leaves until its solve has ended, sorted.</param>
internal sealed record OverloadResults(ImmutableArray<OfferedRound> Rounds, ImmutableArray<BesideRound> Besides, ImmutableArray<double> FreedMs);

/// <summary>The service on one core, the load on another.</summary>
internal static class OverloadRuns
{
    public const int SmallPerSecond = 20;
    public const int Heavies = 20;
    public const int KeyPerMinute = 600;
    public const int TimesItsRate = 50;

    /// <summary>A rate may be used up all at once, which takes so long.</summary>
    private static readonly TimeSpan UsesUpIn = TimeSpan.FromSeconds(4);

    private const int Connections = 400;
    private const int ClosedConnections = 32;
    private const int HealthPerSecond = 20;
    private const int LeavesTimes = 20;

    private const int Rounds = 3;
    private const int WarmUps = 4;

    private static readonly double[] Times = [1, 3, 10];

    public static async Task<OverloadResults> RunAsync(Options options)
    {
        if (OperatingSystem.IsLinux())
        {
            using var self = Process.GetCurrentProcess();
            self.ProcessorAffinity = 1;
        }

        using var shops = new StoredShops();
        using var service = await Server.OnOneCoreAsync(shops.Folder);
        var target = new Uri(service.Address, HttpRuns.Path);
        byte[][] small = [.. DifferentRequests.For(StoredShops.NameOf(BatchRuns.CatalogueItems)).Select(body => PlainConnection.Request(target, "POST", body))];
        List<OfferedRound> rounds = [];
        await ClosedAsync(target, small, options.WarmUp * WarmUps);
        for (var round = 0; round < Rounds; round++)
        {
            // Anew in each round: other work on the machine changes it.
            var before = service.ProcessorTime;
            var peak = new Peak(await ClosedAsync(target, small, options.Load), service.ProcessorTime - before, options.Load.TotalSeconds);
            foreach (var times in Times)
            {
                Progress.Tell(string.Create(CultureInfo.InvariantCulture, $"overload, {times} times {peak.PerSecond:F0} a second"));
                rounds.Add(await OfferAsync(service, target, small, peak, times, options));
            }
        }

        List<BesideRound> besides = [new("nothing", await SmallAsync(target, small, options), 0)];
        foreach (var (name, path, body) in HeavyRequests())
        {
            besides.Add(await BesideHeavyAsync(service, name, path, body, small, options));
        }

        var freed = await LeaveAsync(service);
        besides.AddRange(await BesideKeyAsync(shops.Folder, options));
        return new OverloadResults([.. rounds], [.. besides], freed);
    }

    /// <summary>The heaviest that a caller may ask for over 300 items.</summary>
    private static IEnumerable<(string Name, string Path, Func<int, string> Body)> HeavyRequests()
    {
        var shop = StoredShops.NameOf(BatchRuns.CatalogueItems);
        string Body(int number, string more) => string.Create(CultureInfo.InvariantCulture, $$"""
            { "telescopes": [ { "apertureMm": {{150 + number}}, "focalLengthMm": 1200, "focuserBarrel": "2in" } ], "catalogue": { "id": "{{shop}}" },
              "limits": { "budget": 5000, "maxPurchases": 8, "maxBarlows": 4 }{{more}} }
            """);
        yield return ("spending curves", "/v1/spending-curves", number => Body(number, ""));
        yield return ("certificates", HttpRuns.Path, number => Body(number, """, "explain": { "certify": true }"""));
    }

    /// <summary>Answers a second, each connection sending its next request when it has its answer.</summary>
    private static async Task<double> ClosedAsync(Uri target, byte[][] small, TimeSpan time)
    {
        using var end = new CancellationTokenSource(time);
        // In one order for all: of equal requests at the same time only one is solved.
        var next = 0;
        var counts = await Task.WhenAll(Enumerable.Range(0, ClosedConnections).Select(
            _ => Task.Run(() => LoopAsync(target, _ => small[Interlocked.Increment(ref next) % small.Length], end.Token))));
        return counts.Sum() / time.TotalSeconds;
    }

    private static async Task<int> LoopAsync(Uri target, Func<int, byte[]> request, CancellationToken cancellationToken)
    {
        using var connection = new PlainConnection(target);
        var answered = 0;
        try
        {
            for (var i = 0; !cancellationToken.IsCancellationRequested; i++)
            {
                answered += await connection.SendAsync(request(i), cancellationToken) == 200 ? 1 : 0;
            }
        }
        catch (OperationCanceledException)
        {
            // The time is over.
        }

        return answered;
    }

    private static async Task<OfferedRound> OfferAsync(Server service, Uri target, byte[][] small, Peak peak, double times, Options options)
    {
        var live = new Uri(service.Address, "/health/live");
        var health = Task.Run(() => OpenLoad.RunAsync(live, [PlainConnection.Request(live, "GET")], HealthPerSecond, options.Load, 4));
        var before = service.ProcessorTime;
        var load = await OpenLoad.RunAsync(target, small, peak.PerSecond * times, options.Load, Connections);
        return new OfferedRound(peak, times, load, await health, service.ProcessorTime - before);
    }

    private static Task<OpenResult> SmallAsync(Uri target, byte[][] small, Options options) =>
        OpenLoad.RunAsync(target, small, SmallPerSecond, options.Load * 2, 40);

    private static async Task<BesideRound> BesideHeavyAsync(Server service, string name, string path, Func<int, string> body, byte[][] small, Options options)
    {
        Progress.Tell($"overload, beside {name}");
        var heavyTarget = new Uri(service.Address, path);
        using var end = new CancellationTokenSource();
        var number = 0;
        byte[] Next(int ofConnection) => PlainConnection.Request(heavyTarget, "POST", body(Interlocked.Increment(ref number)));
        var heavies = Enumerable.Range(0, Heavies).Select(_ => Task.Run(() => LoopAsync(heavyTarget, Next, end.Token))).ToList();
        await Task.Delay(TimeSpan.FromSeconds(1));
        var result = await SmallAsync(new Uri(service.Address, HttpRuns.Path), small, options);
        await end.CancelAsync();
        return new BesideRound($"{Heavies} {name}", result, (await Task.WhenAll(heavies)).Sum());
    }

    private static async Task<ImmutableArray<double>> LeaveAsync(Server service)
    {
        Progress.Tell("overload, callers who leave");
        List<double> freed = [];
        foreach (var (_, path, body) in HeavyRequests())
        {
            var target = new Uri(service.Address, path);
            for (var i = 0; i < LeavesTimes / 2; i++)
            {
                await service.WhenSolvesRestAsync();
                using var gone = new CancellationTokenSource();
                using var connection = new PlainConnection(target);
                var asking = connection.SendAsync(PlainConnection.Request(target, "POST", body(500 + i)), gone.Token);
                await Task.Delay(TimeSpan.FromMilliseconds(50 + (100 * i)));
                if (asking.IsCompleted)
                {
                    continue;
                }

                var left = Stopwatch.GetTimestamp();
                connection.Dispose();
                await gone.CancelAsync();
                freed.Add(Math.Max(0, Stopwatch.GetElapsedTime(left, await service.WhenSolvesRestAsync()).TotalMilliseconds));
                await ((Task)asking).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }

        return [.. freed.Order()];
    }

    /// <summary>A service with two keys: one that is used at many times its rate, and one that has none.</summary>
    private static async Task<ImmutableArray<BesideRound>> BesideKeyAsync(string folder, Options options)
    {
        Progress.Tell("overload, beside a key that is used too often");
        var (limited, free) = ("evenstep_limited", "evenstep_free");
        string[] settings =
        [
            "--Evenstep:Keys:limited:Sha256", HashOf(limited), "--Evenstep:Keys:limited:Owner", "limited", "--Evenstep:Keys:limited:Rate", $"{KeyPerMinute}",
            "--Evenstep:Keys:free:Sha256", HashOf(free), "--Evenstep:Keys:free:Owner", "free",
        ];
        using var service = await Server.OnOneCoreAsync(folder, settings);
        var target = new Uri(service.Address, HttpRuns.Path);
        var bodies = DifferentRequests.For(StoredShops.NameOf(BatchRuns.CatalogueItems));
        byte[][] small = [.. bodies.Select(body => PlainConnection.Request(target, "POST", body, free))];
        byte[][] flood = [.. bodies.Select(body => PlainConnection.Request(target, "POST", body, limited))];
        await ClosedAsync(target, small, options.WarmUp);
        var alone = await SmallAsync(target, small, options);
        var flooding = Task.Run(() => OpenLoad.RunAsync(target, flood, KeyPerMinute / 60.0 * TimesItsRate, UsesUpIn + (options.Load * 2), 100));
        await Task.Delay(UsesUpIn);
        var beside = await SmallAsync(target, small, options);
        return [new("nothing, with keys", alone, 0), new($"a key at {TimesItsRate} times its rate", beside, (await flooding).Answered.Length)];
    }

    private static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
}
