using System.Net;
using System.Net.Sockets;
using Evenstep.Benchmarks.Trials;
using Evenstep.Service.Tests.Catalogues;
using Microsoft.Data.Sqlite;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>The storage of a running service is locked, gone, broken or does not answer.</summary>
public sealed class StorageFailureTests : IDisposable
{
    private const string Stored = "/v1/catalogues/shop";

    private readonly DataFolder data = new();

    private string Database => Path.Combine(data.Path, "evenstep.db");

    [Fact]
    public async Task A_database_that_another_has_locked_stores_nothing_and_is_read_from_memory()
    {
        using var service = await StartAsync();
        using (var other = new SqliteConnection($"Data Source={Database};Pooling=false"))
        {
            other.Open();
            using var locking = other.BeginTransaction(deferred: false);

            var refused = await service.AskAsync(HttpMethod.Put, Stored, Wares.Json(50));

            Assert.Equal((503, "/problems/storage-away"), (refused.Status, TypeOf(refused)));
            Assert.NotNull(refused.RetryAfter);
            await ReadsAsync(service);
        }

        Assert.Equal(200, (await service.AskAsync(HttpMethod.Put, Stored, Wares.Json(50))).Status);
    }

    [Fact]
    public async Task Of_a_database_that_is_gone_nothing_acknowledged_is_lost()
    {
        Answer stored;
        using (var service = await StartAsync())
        {
            foreach (var file in Directory.GetFiles(data.Path, "evenstep.db*"))
            {
                File.Delete(file);
            }

            stored = await service.AskAsync(HttpMethod.Put, Stored, Wares.Json(60));
            await ReadsAsync(service);
        }

        using var again = await TrialService.StartAsync(Trial.Start() with { DataFolder = data.Path });
        var found = await again.AskAsync(HttpMethod.Get, Stored);
        Assert.True(
            stored.Status is 500 or 503 || (stored.Status is 200 or 201 && found.ETag == stored.ETag),
            $"{stored.Status} was answered, and {found.Status} after a new start");
    }

    [Fact]
    public async Task A_database_that_is_broken_is_told_as_such_in_words_of_ours()
    {
        using var service = await StartAsync();
        foreach (var file in Directory.GetFiles(data.Path, "evenstep.db*"))
        {
            await using var broken = new FileStream(file, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            await broken.WriteAsync(Enumerable.Repeat((byte)'x', (int)Math.Max(4096, broken.Length)).ToArray());
        }

        var refused = await service.AskAsync(HttpMethod.Put, Stored, Wares.Json(70));

        Assert.True(refused.Status is 500 or 503 or 507, $"{refused.Status}");
        Assert.DoesNotContain("sqlite", refused.Body, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("malformed", refused.Body, StringComparison.OrdinalIgnoreCase);
        Assert.Null(refused.RetryAfter);
        await ReadsAsync(service);
    }

    /// <summary>A server that takes connections and never says a word.</summary>
    [Fact]
    public async Task A_database_that_hangs_keeps_nobody_from_the_demo_catalogue()
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start();
        var port = ((IPEndPoint)silent.LocalEndpoint).Port;
        var start = Trial.Start(("ConnectionStrings:Evenstep", $"Host=127.0.0.1;Port={port};Database=x;Username=x;Password=x"));
        using var service = await TrialService.StartAsync(start with { DataFolder = data.Path, ReadyPath = "/health/live" });

        Assert.Equal(200, (await service.RecommendAsync()).Status);
        Assert.Equal(503, (await service.AskAsync(HttpMethod.Get, Stored)).Status);
        Assert.Equal(503, (await service.AskAsync(HttpMethod.Put, Stored, Wares.Json())).Status);
        Assert.Equal(503, (await service.AskAsync(HttpMethod.Get, "/health/ready")).Status);
    }

    public void Dispose() => data.Dispose();

    private async Task<TrialService> StartAsync()
    {
        var service = await TrialService.StartAsync(Trial.Start() with { DataFolder = data.Path });
        Assert.Equal(201, (await service.AskAsync(HttpMethod.Put, Stored, Wares.Json())).Status);
        return service;
    }

    private static async Task ReadsAsync(TrialService service)
    {
        Assert.Equal(200, (await service.AskAsync(HttpMethod.Get, Stored)).Status);
        Assert.Equal(200, (await service.RecommendAsync()).Status);
        Assert.Equal(
            200, (await service.AskAsync(HttpMethod.Post, Trial.Recommend, Trial.Small(200).Replace("demo", "shop", StringComparison.Ordinal))).Status);
        Assert.Equal(200, (await service.AskAsync(HttpMethod.Get, "/health/live")).Status);
    }

    private static string? TypeOf(Answer answer) => answer.Problem.Type;
}
