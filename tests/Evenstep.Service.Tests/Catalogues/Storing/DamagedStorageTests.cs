using Evenstep.Service.Answering.Health;
using Evenstep.Service.Tests.Answering.Metrics;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>The file of stored catalogues is damaged, gone or locked.</summary>
public sealed class DamagedStorageTests : IDisposable
{
    private const string Path = "/v1/catalogues/shop";
    private const string Other = "/v1/catalogues/other";

    private readonly DataFolder data = new();

    private string DatabaseFile => System.IO.Path.Combine(data.Path, "evenstep.db");

    [Fact]
    public async Task A_file_that_is_no_database_is_reported_at_start()
    {
        await File.WriteAllTextAsync(DatabaseFile, new string('x', 5000));
        await using var service = new Service(data) { Waits = false };
        await Eventually.TrueAsync(async () => (await service.GetAsync(Path)).Status == 500);

        AssertBroken(await service.GetAsync(Path), "is no database");
        AssertBroken(await service.SendAsync(HttpMethod.Put, Path, Wares.Json()), "is no database");
        await Eventually.TrueAsync(
            async () => await service.GetAsync("/health/ready") is { Status: 503 } ready && ready.Body.Contains("is no database", StringComparison.Ordinal));
        Assert.Equal(200, (await service.GetAsync("/v1/catalogues/demo")).Status);
    }

    [Fact]
    public async Task A_damaged_file_is_reported_at_start()
    {
        await StoreAsync(Wares.Large(items: 500, attributes: 5));
        Damage(from: 4096);
        await using var service = new Service(data) { Waits = false };

        await Eventually.TrueAsync(async () => (await service.GetAsync("/health/ready")).Body.Contains("must mend it", StringComparison.Ordinal));

        AssertBroken(await service.SendAsync(HttpMethod.Put, Other, Wares.Json()), "damaged");
    }

    [Fact]
    public async Task A_stored_catalogue_that_is_none_is_reported_without_naming_it_to_others()
    {
        await StoreAsync(Wares.Json());
        Execute("UPDATE catalogues SET content = CAST('{ \"items\": [' AS BLOB)");
        await using var service = new Service(data) { Waits = false };
        await Eventually.TrueAsync(async () => (await service.GetAsync(Other)).Status == 500);

        var answer = await service.GetAsync(Other);

        AssertBroken(answer, "A stored catalogue is damaged.");
        Assert.DoesNotContain("shop", answer.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_damaged_while_the_service_runs_is_reported()
    {
        await using var service = new Service(data);
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Large(items: 500, attributes: 5));
        Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        Damage(from: 0);
        SqliteConnection.ClearPool(Connection());

        AssertBroken(await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50)), "is no database");
        Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
    }

    [Fact]
    public async Task A_missing_file_is_reported_and_none_is_made_in_its_place()
    {
        await using var service = new Service(data);
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Json());
        Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        File.Move(DatabaseFile, $"{DatabaseFile}.away");

        AssertBroken(await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50)), "is gone");
        Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
        Assert.False(File.Exists(DatabaseFile));

        File.Move($"{DatabaseFile}.away", DatabaseFile);
        await Eventually.TrueAsync(async () => (await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50))).Status == 200);
        await Eventually.TrueAsync(() => service.Services.GetRequiredService<Readiness>().IsReady);
    }

    [Fact]
    public async Task A_file_that_another_program_keeps_locked_is_reported()
    {
        await using var service = new Service(data);
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Json());
        using var other = Connection();
        other.Open();
        using var locking = other.BeginTransaction(deferred: false);

        var refused = await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50));

        Assert.Equal((503, "/problems/storage-away"), (refused.Status, refused.Problem.Type));
        Assert.Contains("Another program keeps the file of stored catalogues locked.", refused.Body, StringComparison.Ordinal);
        Assert.DoesNotContain("SQL", refused.Body, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
    }

    public void Dispose() => data.Dispose();

    private static void AssertBroken(Answer answer, string what)
    {
        Assert.Equal((500, "/problems/storage-broken"), (answer.Status, answer.Problem.Type));
        var detail = answer.Problem.Detail;
        Assert.Contains(what, detail, StringComparison.Ordinal);
        Assert.Contains("Sending the request again does not help", detail, StringComparison.Ordinal);
        Assert.DoesNotContain("SQL", detail, StringComparison.OrdinalIgnoreCase);
        Assert.Null(answer.RetryAfter);
    }

    private async Task StoreAsync(string catalogue)
    {
        await using var service = new Service(data);
        Assert.Equal(201, (await service.SendAsync(HttpMethod.Put, Path, catalogue)).Status);
    }

    private void Damage(int from)
    {
        using var file = new FileStream(DatabaseFile, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        file.Position = from;
        file.Write([.. Enumerable.Repeat((byte)'x', (int)file.Length - from)]);
    }

    private SqliteConnection Connection() => new(new SqliteConnectionStringBuilder { DataSource = DatabaseFile, DefaultTimeout = 5 }.ConnectionString);

    private void Execute(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={DatabaseFile};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
