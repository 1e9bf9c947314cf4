using System.Globalization;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answering.Solving;
using Evenstep.Service.Tests.Features.Batches;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Evenstep.Service.Tests.Http.Authentication;

/// <summary>Keys come and go while the service runs.</summary>
public sealed class KeyWatchTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly DataFolder data = new();
    private readonly RecordingLogger<KeyWatch> log = new();

    private string KeyPath => Path.Combine(data.Path, "keys.json");

    public void Dispose() => data.Dispose();

    [Fact]
    public async Task A_key_that_is_made_or_revoked_counts_without_a_restart()
    {
        await using var service = new Service(data);
        Assert.Equal(200, await StatusAsync(service, null));

        var (first, second) =
            (KeyCommandTests.Make(data, "--owner", "shop"), KeyCommandTests.Make(data, "--owner", "club", "--origins", "https://club.example"));
        await Eventually.TrueAsync(async () => await StatusAsync(service, first) == 200 && await StatusAsync(service, null) == 401);
        Assert.Equal("https://club.example", Assert.Single(service.Services.GetRequiredService<KeyRing>().Now.Origins));
        Assert.Equal(403, await StatusAsync(service, second));

        KeyCommandTests.Do(data, "revoke", NameOf(service, first));
        await Eventually.TrueAsync(async () => await StatusAsync(service, first) == 401);
        Assert.Equal(403, await StatusAsync(service, second));
    }

    [Fact]
    public async Task A_service_whose_last_key_is_revoked_does_not_become_open()
    {
        var key = KeyCommandTests.Make(data, "--owner", "shop");
        await using (var service = new Service(data))
        {
            KeyCommandTests.Do(data, "revoke", NameOf(service, key));
            await Eventually.TrueAsync(async () => await StatusAsync(service, key) == 401);
            Assert.Equal(401, await StatusAsync(service, null));

            File.Delete(KeyPath);
            await Task.Delay(TimeSpan.FromSeconds(1.2));
            Assert.Equal(401, await StatusAsync(service, null));
        }

        await File.WriteAllTextAsync(KeyPath, "{}");
        await using var restarted = new Service(data);
        Assert.Equal(401, await StatusAsync(restarted, null));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"Evenstep\": { \"Keys\": ")]
    [InlineData("[]")]
    [InlineData("{ \"Evenstep\": { \"Keys\": { \"other\": { \"Sha256\": \"12\", \"Owner\": \"shop\" } } } }")]
    public async Task A_faulty_file_changes_nothing_and_the_log_says_so_once(string content)
    {
        var key = KeyCommandTests.Make(data, "--owner", "shop");
        using var ring = await WatchAsync(async ring =>
        {
            await File.WriteAllTextAsync(KeyPath, content);
            await Eventually.TrueAsync(
                () => log.Entries.Any(entry => entry.Level == LogLevel.Error && entry.Message.Contains(KeyPath, StringComparison.Ordinal)));
            Assert.NotNull(ring.Find(key));
            await Task.Delay(TimeSpan.FromSeconds(1.2));
            Assert.Single(log.Entries);

            await File.WriteAllTextAsync(KeyPath, "{ \"Evenstep\": { \"Keys\": {} } }");
            await Eventually.TrueAsync(() => ring.Find(key) is null);
        });
    }

    [Fact]
    public async Task What_is_used_up_of_a_rate_stays_so_as_long_as_the_rate_is_the_same()
    {
        var (kept, changed) = (KeyCommandTests.Make(data, "--owner", "shop", "--rate", "7"), KeyCommandTests.Make(data, "--owner", "club", "--rate", "5"));
        using var ring = await WatchAsync(async ring =>
        {
            Assert.Null(ring.Find(kept)!.Rate!.Use());
            Assert.Null(ring.Find(changed)!.Rate!.Use());

            await File.WriteAllTextAsync(
                KeyPath,
                (await File.ReadAllTextAsync(KeyPath)).Replace("\"5\"", "\"6\"", StringComparison.Ordinal)
                    .Replace("\"shop\"", "\"other\"", StringComparison.Ordinal));
            await Eventually.TrueAsync(() => ring.Find(changed)!.Rate!.PerMinute == 6);

            Assert.Equal(("other", 6), (ring.Find(kept)!.Owner.Name, ring.Find(kept)!.Rate!.Left));
            Assert.Equal(6, ring.Find(changed)!.Rate!.Left);
        });
    }

    [Fact]
    public async Task The_log_names_what_came_and_what_went_and_no_key()
    {
        var key = KeyCommandTests.Make(data, "--owner", "shop");
        using var ring = await WatchAsync(async ring =>
        {
            var name = ring.Find(key)!.Name;
            KeyCommandTests.Do(data, "revoke", name);
            await Eventually.TrueAsync(() => log.Entries.Count == 2);

            Assert.EndsWith($"New: none. Gone: {name}.", log.Entries.First().Message, StringComparison.Ordinal);
            Assert.Equal([LogLevel.Information, LogLevel.Warning], log.Entries.Select(entry => entry.Level));
            Assert.DoesNotContain(key, string.Concat(log.Entries), StringComparison.Ordinal);
        });
    }

    [Fact]
    public async Task A_batch_whose_key_is_revoked_gets_no_further_answers()
    {
        var key = KeyCommandTests.Make(data, "--owner", "shop");
        await using var service = new Service(data);
        using var client = await DuplexClient.PostAsync(service.Listen(), Batch.Path, Batch.MediaType, $"Authorization: Bearer {key}");
        await client.SendAsync(Batch.Line("first") + "\n");
        Assert.Contains("\"recommendation\"", await client.LineAsync().WaitAsync(Patience), StringComparison.Ordinal);

        KeyCommandTests.Do(data, "revoke", NameOf(service, key));
        await Eventually.TrueAsync(() => service.Services.GetRequiredService<KeyRing>().Find(key) is null);
        await client.SendAsync(Batch.Line("second") + "\n");

        var refused = await client.LineAsync().WaitAsync(Patience);
        Assert.StartsWith("{\"id\":\"second\",\"problem\":{\"type\":\"/problems/unauthorized\"", refused, StringComparison.Ordinal);
        Assert.Contains("revoked", refused, StringComparison.Ordinal);
    }

    /// <summary>Lets a watch follow the file meanwhile.</summary>
    private async Task<KeyRing> WatchAsync(Func<KeyRing, Task> meanwhile)
    {
        var source = new KeySource(KeyPath, new ConfigurationBuilder().Build());
        var content = source.Content();
        var ring = new KeyRing(source.Read(content));
        using var watch = new KeyWatch(source, content, ring, log);
        await watch.StartAsync(CancellationToken.None);
        await meanwhile(ring);
        await watch.StopAsync(CancellationToken.None);
        return ring;
    }

    private static string NameOf(Service service, string key) => service.Services.GetRequiredService<KeyRing>().Find(key)!.Name;

    private static async Task<int> StatusAsync(Service service, string? key) => (await service.SendAsync(
        HttpMethod.Get, "/v1/targets", headers: key is null ? [] : [("Authorization", string.Create(CultureInfo.InvariantCulture, $"Bearer {key}"))])).Status;
}
