using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Microsoft.Data.Sqlite;

namespace Evenstep.Service.Tests.Catalogues.Storing;

public sealed class SqliteStoreTests : IDisposable
{
    private readonly DataFolder data = new();

    private string Path => System.IO.Path.Combine(data.Path, "made", "at first start", "evenstep.db");

    public static TheoryData<string> Behaviour => StoreBehaviour.Names;

    [Theory]
    [MemberData(nameof(Behaviour))]
    public async Task It_does_what_every_store_does(string name)
    {
        using var store = await PreparedAsync();

        await StoreBehaviour.CheckAsync(name, store);
    }

    [Fact]
    public async Task What_was_stored_is_there_after_a_new_start()
    {
        using (var store = await PreparedAsync())
        {
            await store.ReplaceAsync(Wares.Key, null, Wares.Catalogue(), CancellationToken.None);
        }

        using var again = await PreparedAsync();
        Assert.Equal(Wares.Catalogue().Version, (await again.FindAsync(Wares.Key, null, CancellationToken.None))!.Version);
    }

    [Fact]
    public async Task Every_commit_is_flushed_to_a_log()
    {
        using var store = await PreparedAsync();
        using var connection = new SqliteConnection($"Data Source={Path}");
        connection.Open();

        Assert.Equal("wal", Read(connection, "PRAGMA journal_mode"));
    }

    [Fact]
    public async Task A_file_that_may_grow_no_further_is_full_and_keeps_what_it_has()
    {
        using var store = await PreparedAsync(mostMegabytes: 1);
        await store.ReplaceAsync(Wares.Key, null, Wares.Catalogue(), CancellationToken.None);

        await Assert.ThrowsAsync<StorageFullException>(() => store.ReplaceAsync(Wares.Key, Wares.Catalogue().Version, Large(), CancellationToken.None));

        Assert.Equal(Wares.Catalogue().Version, (await store.FindAsync(Wares.Key, null, CancellationToken.None))!.Version);
        Assert.NotNull(await store.ReplaceAsync(Wares.Key, Wares.Catalogue().Version, Wares.Catalogue(1), CancellationToken.None));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_a_storage_that_is_away()
    {
        await File.WriteAllTextAsync(System.IO.Path.Combine(data.Path, "made"), "a file where the folder should be");
        using var store = new SqliteStore(Path, null);

        await Assert.ThrowsAsync<StorageAwayException>(() => store.PrepareAsync(CancellationToken.None));
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_a_storage_that_is_broken()
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        await File.WriteAllTextAsync(Path, new string('x', 5000));
        using var store = new SqliteStore(Path, null);

        await Assert.ThrowsAsync<StorageBrokenException>(() => store.PrepareAsync(CancellationToken.None));
    }

    public void Dispose() => data.Dispose();

    private async Task<SqliteStore> PreparedAsync(int? mostMegabytes = null)
    {
        var store = new SqliteStore(Path, mostMegabytes);
        await store.PrepareAsync(CancellationToken.None);
        return store;
    }

    /// <summary>More than a megabyte.</summary>
    private static Catalogue Large() => Wares.Read(Wares.Large(items: 500, attributes: 20));

    private static object? Read(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
