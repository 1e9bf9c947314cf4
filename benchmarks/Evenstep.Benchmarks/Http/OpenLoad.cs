using System.Collections.Concurrent;
using System.Diagnostics;
using System.Threading.Channels;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Http;

/// <summary>What came of requests that were sent whether or not earlier ones were answered.</summary>
/// <param name="Offered">Requests that were due.</param>
/// <param name="Seconds">Over so long.</param>
/// <param name="Milliseconds">From when each was due to the end of its answer, by status, sorted; 0 for no answer.</param>
internal sealed record OpenResult(int Offered, double Seconds, IReadOnlyDictionary<int, double[]> Milliseconds)
{
    private const int Ok = 200;

    /// <summary>Answers a second.</summary>
    public double Goodput => Answered.Length / Seconds;

    /// <summary>The time to an answer, in milliseconds.</summary>
    public double[] Answered => Milliseconds.GetValueOrDefault(Ok, []);

    /// <summary>The time to a refusal (429 or 503), in milliseconds.</summary>
    public double[] Refused => [.. Milliseconds.Where(one => one.Key is 429 or 503).SelectMany(one => one.Value).Order()];

    /// <summary>Neither answered nor refused.</summary>
    public int Others => Milliseconds.Where(one => one.Key is not (Ok or 429 or 503)).Sum(one => one.Value.Length);

    public static double P(double[] sorted, double share) => sorted.Length == 0 ? 0 : Numbers.Percentile(sorted, share);
}

/// <summary>Sends requests at a steady rate, whatever comes of them. Where all connections are taken the next ones wait, and
/// their time counts from when they were due.</summary>
internal static class OpenLoad
{
    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(1);

    /// <summary>After the last request was due, so long is waited for answers.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(2);

    public static async Task<OpenResult> RunAsync(Uri target, IReadOnlyList<byte[]> requests, double perSecond, TimeSpan time, int connections)
    {
        var due = Channel.CreateUnbounded<(int Number, long Due)>();
        var taken = new ConcurrentQueue<(int Status, double Milliseconds)>();
        using var end = new CancellationTokenSource();
        var sending = Enumerable.Range(0, connections).Select(_ => Task.Run(() => SendAllAsync(target, requests, due.Reader, taken, end.Token))).ToList();
        var offered = await OfferAsync(due.Writer, perSecond, time);
        end.CancelAfter(Grace);
        await Task.WhenAll(sending);
        return new OpenResult(offered, time.TotalSeconds, taken.GroupBy(one => one.Status).ToDictionary(
            group => group.Key, group => group.Select(one => one.Milliseconds).Order().ToArray()));
    }

    private static async Task<int> OfferAsync(ChannelWriter<(int Number, long Due)> due, double perSecond, TimeSpan time)
    {
        var started = Stopwatch.GetTimestamp();
        using var timer = new PeriodicTimer(Tick);
        var offered = 0;
        while (Stopwatch.GetElapsedTime(started) < time)
        {
            await timer.WaitForNextTickAsync();
            var until = Math.Min(time.TotalSeconds, Stopwatch.GetElapsedTime(started).TotalSeconds) * perSecond;
            for (; offered < until; offered++)
            {
                due.TryWrite((offered, started + (long)(offered / perSecond * Stopwatch.Frequency)));
            }
        }

        due.Complete();
        return offered;
    }

    private static async Task SendAllAsync(
        Uri target,
        IReadOnlyList<byte[]> requests,
        ChannelReader<(int Number, long Due)> due,
        ConcurrentQueue<(int Status, double Milliseconds)> taken,
        CancellationToken cancellationToken)
    {
        using var connection = new PlainConnection(target);
        try
        {
            await foreach (var (number, at) in due.ReadAllAsync(cancellationToken))
            {
                var status = await connection.SendAsync(requests[number % requests.Count], cancellationToken);
                taken.Enqueue((status, Stopwatch.GetElapsedTime(at).TotalMilliseconds));
            }
        }
        catch (OperationCanceledException)
        {
            // What is not answered by now is not counted as answered.
        }
    }
}
