using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>What came of a run.</summary>
/// <param name="Sent">Requests.</param>
/// <param name="Statuses">How many answers had which status.</param>
/// <param name="Slowest">The longest time to an answer, in seconds, and the seed of its request.</param>
/// <param name="Findings">What is wrong, each with its request and seed.</param>
internal sealed record FuzzResults(int Sent, IReadOnlyDictionary<int, int> Statuses, (double Seconds, int Seed) Slowest, IReadOnlyList<string> Findings);

/// <summary>Sends drawn requests to a service, several at a time, and judges every answer.</summary>
internal sealed class FuzzRun(ApiDocument document, FuzzJudge judge, TrialService service)
{
    private const int AtOnce = 4;
    private const int MostFindings = 200;

    private readonly ConcurrentDictionary<int, int> statuses = new();
    private readonly ConcurrentQueue<string> findings = new();
    private readonly Lock comparing = new();
    private (double Seconds, int Seed) slowest;

    /// <summary>Sends so many requests.</summary>
    /// <param name="firstSeed">Of the first; each further one has the next.</param>
    /// <param name="count">How many.</param>
    /// <param name="patience">An answer that takes longer is a finding.</param>
    /// <param name="sent">Told now and then how many have been sent.</param>
    public async Task<FuzzResults> RunAsync(int firstSeed, int count, TimeSpan patience, Action<int> sent)
    {
        var known = await PrepareAsync();
        var next = -1;
        await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(_ => Task.Run(async () =>
        {
            while (Interlocked.Increment(ref next) is var number && number < count && findings.Count < MostFindings && !service.HasExited)
            {
                await OneAsync(new FuzzDraw(document, known, firstSeed + number).Next(), patience);
                if (number % 1000 == 999)
                {
                    sent(number + 1);
                }
            }
        })));
        if (service.HasExited)
        {
            findings.Enqueue($"the process has ended: {service.Said}");
        }

        return new FuzzResults(statuses.Values.Sum(), statuses, slowest, [.. findings]);
    }

    private async Task<KnownIds> PrepareAsync()
    {
        var small = document.Operations.First(one => one is { Method: "put", Path: "/v1/catalogues/{id}" })
            .Node["requestBody"]!["content"]!["application/json"]!["examples"]!.AsObject().First().Value!["value"]!;
        foreach (var id in (string[])["fuzz-a", "fuzz-b"])
        {
            using var stored =
                await service.SendAsync(HttpMethod.Put, $"/v1/catalogues/{id}", small.ToJsonString(), "application/json", CancellationToken.None);
            stored.EnsureSuccessStatusCode();
        }

        var demo = await service.Client.GetStringAsync(new Uri("/v1/catalogues/demo", UriKind.Relative));
        return KnownIds.Of(JsonSerializer.Deserialize<JsonElement>(demo), JsonSerializer.SerializeToElement(small), "demo", "demo", "fuzz-a", "fuzz-b");
    }

    private async Task OneAsync(FuzzRequest request, TimeSpan patience)
    {
        var started = Stopwatch.GetTimestamp();
        try
        {
            using var ends = new CancellationTokenSource(patience);
            var answer = await AnswerAsync(request, ends.Token);
            var took = Stopwatch.GetElapsedTime(started).TotalSeconds;
            statuses.AddOrUpdate(answer.Status, 1, (_, count) => count + 1);
            lock (comparing)
            {
                slowest = took > slowest.Seconds ? (took, request.Seed) : slowest;
            }

            foreach (var finding in judge.Findings(request, answer))
            {
                findings.Enqueue($"{finding}\n  {request}");
            }
        }
        catch (OperationCanceledException)
        {
            statuses.AddOrUpdate(0, 1, (_, count) => count + 1);
            findings.Enqueue($"hang: no answer in {patience.TotalSeconds} s\n  {request}");
        }
        catch (HttpRequestException failure)
        {
            statuses.AddOrUpdate(0, 1, (_, count) => count + 1);
            findings.Enqueue($"broken off: {failure.Message}\n  {request}");
        }
    }

    private async Task<FuzzAnswer> AnswerAsync(FuzzRequest request, CancellationToken cancellationToken)
    {
        // As it is, without anything being put right on the way.
        var target = new Uri(service.Address, "/").AbsoluteUri.TrimEnd('/') + request.Target;
        using var message = new HttpRequestMessage(
            new HttpMethod(request.Operation.Method.ToUpperInvariant()),
            new Uri(target, new UriCreationOptions { DangerousDisablePathAndQueryCanonicalization = true }));
        foreach (var (name, value) in request.Headers)
        {
            message.Headers.TryAddWithoutValidation(name, value);
        }

        if (request.Body is not null)
        {
            message.Content = new ByteArrayContent(request.Body);
            message.Content.Headers.TryAddWithoutValidation("Content-Type", request.BodyType);
        }

        using var response = await service.Client.SendAsync(message, cancellationToken);
        var body = await response.Content.ReadAsStringAsync(cancellationToken);
        return new FuzzAnswer(
            (int)response.StatusCode,
            response.Content.Headers.ContentType?.MediaType ?? "",
            [.. response.Headers.Select(header => header.Key), .. response.Content.Headers.Select(header => header.Key)],
            body);
    }
}
