using System.Data.Common;
using System.Globalization;
using DbUp;
using Evenstep.Service.Catalogues.Content;
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

    /// <summary>How long to wait while others write: a file that somebody keeps locked must not hold requests for longer.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly SqliteConnectionStringBuilder connectionString = new() { DataSource = path, DefaultTimeout = (int)Patience.TotalSeconds };

    /// <summary>The file has one writer at a time; in this process they queue here, where waiting holds no thread.</summary>
    private readonly SemaphoreSlim writing = new(1);

    /// <summary>Whether the file was there once: if it is gone then, none is made in its place.</summary>
    private volatile bool isPrepared;

    public override string Where => Path.GetFullPath(path);

    public override Task WaitForChangeAsync(CancellationToken cancellationToken) => Task.Delay(Interval, cancellationToken);

    public override async Task<long?> ReplaceAsync(CatalogueKey key, string? known, Catalogue? next, CancellationToken cancellationToken)
    {
        if (!await writing.WaitAsync(Patience, cancellationToken))
        {
            throw new StorageAwayException("Changes before this one are waiting for the file of stored catalogues.");
        }

        try
        {
            return await base.ReplaceAsync(key, known, next, cancellationToken);
        }
        finally
        {
            writing.Release();
        }
    }

    protected override void Migrate()
    {
        SeeThatFileIsThere();
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        using (var connection = Open())
        {
            Execute(connection, "PRAGMA journal_mode = WAL");
        }

        Scripts.Run(DeployChanges.To.SqliteDatabase(connectionString.ConnectionString), "Sqlite");
        isPrepared = true;
    }

    protected override void Close()
    {
        // Closes the file, and with it the log.
        using var connection = new SqliteConnection(connectionString.ConnectionString);
        SqliteConnection.ClearPool(connection);
        writing.Dispose();
    }

    protected override ValueTask<DbConnection> OpenAsync(CancellationToken cancellationToken) => ValueTask.FromResult<DbConnection>(Open());

    protected override ValueTask<DbTransaction> BeginAsync(DbConnection connection, CancellationToken cancellationToken) =>
        ValueTask.FromResult<DbTransaction>(((SqliteConnection)connection).BeginTransaction(deferred: false));

    /// <summary>What the database's own words would tell stands in the log; a caller gets ours.</summary>
    protected override Exception? Meaning(Exception failure)
    {
        var meaning = MeaningOf(failure);
        if (meaning is StorageBrokenException)
        {
            // Whatever takes the file's place must be opened anew.
            SqliteConnection.ClearPool(new SqliteConnection(connectionString.ConnectionString));
        }

        return meaning;
    }

    private static Exception? MeaningOf(Exception failure) => failure switch
    {
        StorageBrokenException broken => broken,
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_FULL } =>
            new StorageFullException("The disk, or the file of stored catalogues, is full.", failure),
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_CORRUPT } => new StorageBrokenException("The file of stored catalogues is damaged.", failure),
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_NOTADB } =>
            new StorageBrokenException("The file of stored catalogues is no database.", failure),
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED } =>
            new StorageAwayException("Another program keeps the file of stored catalogues locked.", failure),
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_PERM or SQLitePCL.raw.SQLITE_AUTH }
            or UnauthorizedAccessException =>
            new StorageAwayException("The service may not write to the file of stored catalogues.", failure),
        SqliteException
        {
            SqliteErrorCode: not (SQLitePCL.raw.SQLITE_ERROR or SQLitePCL.raw.SQLITE_CONSTRAINT or SQLitePCL.raw.SQLITE_MISUSE or SQLitePCL.raw.SQLITE_RANGE)
        } or IOException =>
            new StorageAwayException("The file of stored catalogues cannot be used now.", failure),
        _ => null,
    };

    /// <summary>A connection that is kept would go on with a file that has been deleted, and what it stores there would be lost.</summary>
    private void SeeThatFileIsThere()
    {
        if (isPrepared && !File.Exists(path))
        {
            throw new StorageBrokenException("The file of stored catalogues is gone.");
        }
    }

    private SqliteConnection Open()
    {
        SeeThatFileIsThere();
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
