using System.Diagnostics;
using System.Net;
using System.Text;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Http;

/// <summary>A loop around HttpClient for where wrk is missing. It costs more itself, so ratios come out closer to 1.</summary>
internal sealed class ClientLoad : ILoadTool
{
    private const int MostRequestsPerConnection = 200_000;

    public string Name => "a loop around HttpClient";

    public string Remark => " `wrk` was not on the PATH; it makes less of the load itself (on Debian: `apt-get install wrk`).";

    public async Task<LoadResult> RunAsync(Load load)
    {
        using var handler = new SocketsHttpHandler { MaxConnectionsPerServer = load.Connections, UseProxy = false };
        using var client = new HttpClient(handler);
        var started = Stopwatch.GetTimestamp();
        var loops = await Task.WhenAll(Enumerable.Range(0, load.Connections).Select(first => Task.Run(() => LoopAsync(client, load, first, started))));
        var took = Stopwatch.GetElapsedTime(started).TotalSeconds;
        double[] sorted = [.. loops.SelectMany(loop => loop.Milliseconds).Order()];
        return new LoadResult(
            sorted.Length,
            loops.Sum(loop => loop.Failures),
            Numbers.Percentile(sorted, 0.5),
            Numbers.Percentile(sorted, 0.99),
            sorted.Length / took);
    }

    private static async Task<(List<double> Milliseconds, int Failures)> LoopAsync(HttpClient client, Load load, int first, long started)
    {
        List<double> milliseconds = [];
        var failures = 0;
        while (Stopwatch.GetElapsedTime(started) < load.Time && milliseconds.Count < MostRequestsPerConnection)
        {
            var body = load.Bodies[(first + milliseconds.Count) % load.Bodies.Count];
            var sent = Stopwatch.GetTimestamp();
            failures += await PostAsync(client, load.Target, body) == HttpStatusCode.OK ? 0 : 1;
            milliseconds.Add(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
        }

        return (milliseconds, failures);
    }

    private static async Task<HttpStatusCode> PostAsync(HttpClient client, Uri target, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(target, content);
        await response.Content.CopyToAsync(Stream.Null);
        return response.StatusCode;
    }
}
