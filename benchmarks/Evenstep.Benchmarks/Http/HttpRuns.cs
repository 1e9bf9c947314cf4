using System.Collections.Immutable;
using System.Text;

namespace Evenstep.Benchmarks.Http;

/// <summary>Results of one target: on one connection, where only latency matters, and on several, for throughput.</summary>
internal sealed record TargetResult(string Target, LoadResult Alone, LoadResult Together);

/// <summary>What was measured over HTTP.</summary>
internal sealed record HttpResults(ILoadTool Tool, int AnswerBytes, ImmutableArray<TargetResult> Service, TargetResult Floor);

/// <summary>Starts the service and the floor side by side and measures them in turn. All traffic stays on 127.0.0.1.</summary>
internal static class HttpRuns
{
    public const string Path = "/v1/recommendations";
    public const string ReadyPath = "/health/ready";
    public const int Connections = 8;

    private const string RepeatedExample = "recommendation-shortest";

    public static async Task<HttpResults> RunAsync(Options options)
    {
        var repeated = Repository.Example(RepeatedExample);
        var answerPath = System.IO.Path.GetTempFileName();
        using var shops = new StoredShops();
        try
        {
            using var service = await Server.ServiceAsync(shops.Folder, cacheMegabytes: 0);
            using var remembering = await Server.ServiceAsync(shops.Folder, cacheMegabytes: 64);
            var answer = await AnswerAsync(service, repeated);
            await File.WriteAllBytesAsync(answerPath, answer);
            using var floor = await Server.FloorAsync(answerPath);
            var tool = (ILoadTool?)WrkLoad.IfInstalled() ?? new ClientLoad();
            List<TargetResult> results = [];
            foreach (var catalogue in StoredShops.Sizes.Select(StoredShops.NameOf).Prepend("demo"))
            {
                results.Add(await MeasureAsync($"{catalogue}, different requests, no cache", service, DifferentRequests.For(catalogue), tool, options));
            }

            results.Add(await MeasureAsync("one request, repeated, from the cache", remembering, [repeated], tool, options));
            return new HttpResults(tool, answer.Length, [.. results], await MeasureAsync("floor", floor, [repeated], tool, options));
        }
        finally
        {
            File.Delete(answerPath);
        }
    }

    private static async Task<TargetResult> MeasureAsync(
        string name, Server server, IReadOnlyList<string> bodies, ILoadTool tool, Options options)
    {
        Progress.Tell($"{name}, {tool.Name}");
        var alone = new Load(new Uri(server.Address, Path), bodies, 1, options.Load);
        await tool.RunAsync(alone with { Time = options.WarmUp });
        return new TargetResult(name, await tool.RunAsync(alone), await tool.RunAsync(alone with { Connections = Connections }));
    }

    private static async Task<byte[]> AnswerAsync(Server service, string body)
    {
        using var client = new HttpClient();
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(new Uri(service.Address, Path), content);
        response.EnsureSuccessStatusCode();
        return await response.Content.ReadAsByteArrayAsync();
    }
}
