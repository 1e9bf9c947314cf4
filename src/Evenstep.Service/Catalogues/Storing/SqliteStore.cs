using System.Data.Common;
using System.Globalization;
using DbUp;
using Microsoft.Data.Sqlite;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>
/// Keeps catalogues in one file of this machine, through SQLite: with a write-ahead log that is flushed at every commit, so
/// that what is stored stays stored, whatever happens to the process or the power.
/// </summary>
/// <param name="path">Of the file; it and its folder are made where they are missing.</param>
/// <param name="mostMegabytes">How large the file may grow; null for as large as the disk allows.</param>
internal sealed class SqliteStore(string path, int? mostMegabytes) : CatalogueStore
{
    private const int BytesOfPage = 4096;
    private const int PagesOfMegabyte = 1024 * 1024 / BytesOfPage;

    /// <summary>How often to look whether another process has changed the file: not usual, but it happens while a service is replaced.</summary>
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(0.5);

    private readonly SqliteConnectionStringBuilder connectionString = new() { DataSource = path, DefaultTimeout = 5 };

    /// <summary>The file has one writer at a time; in this process they queue here, where waiting holds no thread.</summary>
    private readonly SemaphoreSlim writing = new(1);

    public override Task WaitForChangeAsync(CancellationToken gone) => Task.Delay(Interval, gone);

    public override async Task<long?> ReplaceAsync(CatalogueKey key, string? known, Catalogue? next, CancellationToken gone)
    {
        await writing.WaitAsync(gone);
        try
        {
            return await base.ReplaceAsync(key, known, next, gone);
        }
        finally
        {
            writing.Release();
        }
    }

    protected override void Migrate()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        using (var connection = Open())
        {
            Execute(connection, "PRAGMA journal_mode = WAL");
        }

        Scripts.Run(DeployChanges.To.SqliteDatabase(connectionString.ConnectionString), "Sqlite");
    }

    protected override void Close()
    {
        // Closes the file, and with it the log.
        using var connection = new SqliteConnection(connectionString.ConnectionString);
        SqliteConnection.ClearPool(connection);
        writing.Dispose();
    }

    protected override ValueTask<DbConnection> OpenAsync(CancellationToken gone) => ValueTask.FromResult<DbConnection>(Open());

    protected override ValueTask<DbTransaction> BeginAsync(DbConnection connection, CancellationToken gone) =>
        ValueTask.FromResult<DbTransaction>(((SqliteConnection)connection).BeginTransaction(deferred: false));

    protected override Exception? Meaning(Exception failure) => failure switch
    {
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_FULL } => new StorageFullException(failure.Message, failure),
        SqliteException { SqliteErrorCode: not (SQLitePCL.raw.SQLITE_ERROR or SQLitePCL.raw.SQLITE_CONSTRAINT or SQLitePCL.raw.SQLITE_MISUSE or SQLitePCL.raw.SQLITE_RANGE) }
            or IOException or UnauthorizedAccessException => new StorageAwayException(failure.Message, failure),
        _ => null,
    };

    private SqliteConnection Open()
    {
        var connection = new SqliteConnection(connectionString.ConnectionString);
        try
        {
            connection.Open();
            Execute(connection, "PRAGMA synchronous = FULL");
            if (mostMegabytes is { } most)
            {
                Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count = {(long)most * PagesOfMegabyte}"));
            }

            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private static void Execute(SqliteConnection connection, string pragma)
    {
        using var command = Command(connection, pragma);
        command.ExecuteNonQuery();
    }
}
