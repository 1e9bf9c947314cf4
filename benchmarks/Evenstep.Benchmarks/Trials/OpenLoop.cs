using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>One answer of an open loop.</summary>
/// <param name="Status">The HTTP status; 0 for no whole answer.</param>
/// <param name="Milliseconds">Since the request was due, not since it was sent, so that a queue before the sending counts too.</param>
internal readonly record struct LoopAnswer(int Status, double Milliseconds);

/// <summary>What came of an open loop.</summary>
/// <param name="Answers">Of all requests.</param>
/// <param name="Seconds">From the first request due to the last one due.</param>
/// <param name="LatestMilliseconds">How far the generator itself fell behind its schedule at most: with much of it, the figures are the generator's.</param>
internal sealed record LoopResults(IReadOnlyList<LoopAnswer> Answers, double Seconds, double LatestMilliseconds)
{
    /// <summary>Successes a second.</summary>
    public double Goodput => Answers.Count(answer => answer.Status == 200) / Seconds;

    /// <summary>A percentile of the milliseconds of the answers with a status; NaN without any.</summary>
    public double Percentile(double share, Func<int, bool> status)
    {
        double[] sorted = [.. Answers.Where(answer => status(answer.Status)).Select(answer => answer.Milliseconds).Order()];
        return sorted.Length == 0 ? double.NaN : Numbers.Percentile(sorted, share);
    }

    public string Statuses =>
        string.Join(", ", Answers.GroupBy(answer => answer.Status).OrderBy(group => group.Key).Select(group => $"{group.Key}: {group.Count()}"));
}

/// <summary>
/// Sends requests when they are due, whether or not earlier ones have been answered, for a bounded time and with a bounded
/// number in flight: what would go beyond that is counted as not answered.
/// </summary>
internal sealed class OpenLoop(Uri address, Func<int, HttpRequestMessage> request)
{
    private const int MostInFlight = 4000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    private int inFlight;

    public async Task<LoopResults> RunAsync(double perSecond, TimeSpan time)
    {
        using var client = new HttpClient(new SocketsHttpHandler { UseProxy = false }) { BaseAddress = address, Timeout = Patience };
        var answers = new ConcurrentQueue<LoopAnswer>();
        List<Task> tasks = [];
        var (started, latest) = (Stopwatch.GetTimestamp(), 0.0);
        var count = (int)(perSecond * time.TotalSeconds);
        for (var number = 0; number < count; number++)
        {
            var due = TimeSpan.FromSeconds(number / perSecond);
            var early = due - Stopwatch.GetElapsedTime(started);
            if (early > TimeSpan.FromMilliseconds(1))
            {
                await Task.Delay(early);
            }

            latest = Math.Max(latest, (Stopwatch.GetElapsedTime(started) - due).TotalMilliseconds);
            if (inFlight >= MostInFlight)
            {
                answers.Enqueue(new LoopAnswer(0, Patience.TotalMilliseconds));
                continue;
            }

            Interlocked.Increment(ref inFlight);
            tasks.Add(SendAsync(client, number, started, due, answers));
        }

        var seconds = Math.Max(time.TotalSeconds, Stopwatch.GetElapsedTime(started).TotalSeconds);
        await Task.WhenAll(tasks);
        return new LoopResults([.. answers], seconds, latest);
    }

    /// <summary>A small request, different from all others of its run.</summary>
    public static HttpRequestMessage Small(int number, int from = 100_000)
    {
        var message = new HttpRequestMessage(HttpMethod.Post, "/v1/recommendations");
        message.Content = new StringContent(IssueTable.Small((from + number) % 1_000_000), Encoding.UTF8, "application/json");
        return message;
    }

    private async Task SendAsync(HttpClient client, int number, long started, TimeSpan due, ConcurrentQueue<LoopAnswer> answers)
    {
        // Not on the thread that keeps the schedule.
        await Task.Yield();
        var status = 0;
        try
        {
            using var message = request(number);
            using var response = await client.SendAsync(message);
            await response.Content.CopyToAsync(Stream.Null);
            status = (int)response.StatusCode;
        }
        catch (Exception failure) when (failure is OperationCanceledException or HttpRequestException or IOException)
        {
            status = 0;
        }

        answers.Enqueue(new LoopAnswer(status, (Stopwatch.GetElapsedTime(started) - due).TotalMilliseconds));
        Interlocked.Decrement(ref inFlight);
    }
}
