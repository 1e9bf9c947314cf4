using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials;

/// <summary>What came of a mixed load.</summary>
/// <param name="Statuses">How many answers had which status; 0 for no whole answer.</param>
/// <param name="SlowestSeconds">The longest time to an answer.</param>
/// <param name="Failures">What was neither a success nor a declared refusal of a busy service (429, 503); the first few.</param>
internal sealed record MixedLoadResults(IReadOnlyDictionary<int, int> Statuses, double SlowestSeconds, IReadOnlyList<string> Failures);

/// <summary>
/// What a busy shop's service is asked: mostly small requests and product pages, some over larger stored catalogues, now and
/// then a curve, a path, a batch, a price feed, and anything that the contract allows. Each caller waits for its answer.
/// </summary>
internal sealed class MixedLoad(TrialService service)
{
    private const int MostFailures = 20;

    private readonly ConcurrentDictionary<int, int> statuses = new();
    private readonly ConcurrentQueue<string> failures = new();
    private readonly Lock comparing = new();
    private double slowest;

    private sealed record Question(HttpMethod Method, string Path, string? Body, string Type);

    /// <summary>Stores the catalogues that the load asks about.</summary>
    public static async Task PrepareAsync(TrialService service)
    {
        foreach (var (path, body) in RequestDraw.StoredSizes.Select(RequestDraw.Stored))
        {
            using var stored = await service.SendAsync(HttpMethod.Put, path, body, "application/json", CancellationToken.None);
            stored.EnsureSuccessStatusCode();
        }
    }

    public async Task<MixedLoadResults> RunAsync(int callers, TimeSpan time, int seed)
    {
        using var ends = new CancellationTokenSource(time);
        await Task.WhenAll(Enumerable.Range(0, callers).Select(caller => Task.Run(() => KeepAskingAsync(new Dice(seed, caller), ends.Token))));
        return new MixedLoadResults(statuses, slowest, [.. failures]);
    }

    private async Task KeepAskingAsync(Dice dice, CancellationToken ends)
    {
        while (!ends.IsCancellationRequested && !service.HasExited)
        {
            var question = Draw(dice);
            var started = Stopwatch.GetTimestamp();
            var (status, said) = await AskAsync(question, ends);
            if (status == 0 && ends.IsCancellationRequested)
            {
                return;
            }

            statuses.AddOrUpdate(status, 1, (_, count) => count + 1);
            lock (comparing)
            {
                slowest = Math.Max(slowest, Stopwatch.GetElapsedTime(started).TotalSeconds);
            }

            if (status is not (200 or 201 or 304 or 429 or 503) && failures.Count < MostFailures)
            {
                failures.Enqueue($"{status}: {question.Method} {question.Path} {said[..Math.Min(300, said.Length)]}");
            }
        }
    }

    private async Task<(int Status, string Said)> AskAsync(Question question, CancellationToken ends)
    {
        try
        {
            using var response = await service.SendAsync(question.Method, question.Path, question.Body, question.Type, ends);
            return ((int)response.StatusCode, await response.Content.ReadAsStringAsync(ends));
        }
        catch (Exception failure) when (failure is OperationCanceledException or HttpRequestException)
        {
            return (0, failure.Message);
        }
    }

    private static Question Draw(Dice dice) => dice.Int(0, 99) switch
    {
        < 50 => Post("/v1/recommendations", Body(dice, "demo")),
        < 65 => new Question(HttpMethod.Get, $"/v1/catalogues/demo/telescopes/jetty-112/recommendation?budget={dice.Int(30, 900)}", null, ""),
        < 80 => Post("/v1/recommendations", Body(dice, dice.Pick("trial-300", "trial-300", "trial-1000", "trial-3000"))),
        < 85 => Post("/v1/spending-curves", Body(dice, dice.Pick("demo", "trial-300"))),
        < 88 => Post("/v1/buying-paths", Body(dice, "demo")),
        < 92 => new Question(HttpMethod.Post, "/v1/recommendations/batch", Batch(dice), "application/x-ndjson"),
        < 98 => new Question(HttpMethod.Patch, "/v1/catalogues/trial-3000/items", Prices(dice), "application/x-ndjson"),
        _ => RequestDraw.Draw(dice.Int(1, 100_000)) is var drawn ? Post(drawn.Path, drawn.Body) : throw new UnreachableException(),
    };

    private static Question Post(string path, string body) => new(HttpMethod.Post, path, body, "application/json");

    private static string Body(Dice dice, string catalogue)
    {
        var apertureMm = dice.Int(80, 300);
        return string.Create(CultureInfo.InvariantCulture, $$"""
            {"telescopes":[{"apertureMm":{{apertureMm}},"focalLengthMm":{{apertureMm * dice.Int(5, 8)}},"focuserBarrel":"2in"}],
             "catalogue":{"id":"{{catalogue}}"},"limits":{"budget":{{dice.Int(50, 900)}},"maxPurchases":{{dice.Int(2, 5)}} } }
            """).Trim();
    }

    private static string Batch(Dice dice) =>
        string.Join('\n', Enumerable.Range(1, 20).Select(number => $"{{\"id\":\"{number}\",{Body(dice, "trial-300")[1..]}"));

    private static string Prices(Dice dice)
    {
        var lines = new StringBuilder();
        foreach (var number in Enumerable.Range(0, 200))
        {
            lines.Append(CultureInfo.InvariantCulture, $"{{\"id\":\"item-{(number * 14) + dice.Int(0, 13)}\",\"price\":{dice.Int(1500, 40_000) / 100m}}}\n");
        }

        return lines.ToString();
    }
}
