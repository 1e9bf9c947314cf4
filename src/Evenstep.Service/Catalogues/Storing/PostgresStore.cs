using System.Data.Common;
using System.Net.Sockets;
using DbUp;
using Npgsql;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>
/// Keeps catalogues in a PostgreSQL database that several instances share. Each tells the others of its changes; in case the
/// news is lost on the way, all of them look for a new revision often enough.
/// </summary>
internal sealed class PostgresStore : CatalogueStore
{
    private const string Channel = "evenstep_catalogues";

    /// <summary>A number that no other program is likely to lock by.</summary>
    private const long MigrationLock = 5_236_141_077_019;

    /// <summary>Another's change must be seen within a second, even if the news of it is lost.</summary>
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(0.5);

    private readonly NpgsqlDataSource source;
    private NpgsqlConnection? listening;

    /// <param name="connectionString">Of the database, which must exist; its tables are made where they are missing.</param>
    public PostgresStore(string connectionString)
    {
        source = NpgsqlDataSource.Create(WithPatience(connectionString));
        var parts = new NpgsqlConnectionStringBuilder(connectionString);
        Where = $"PostgreSQL database {parts.Database} on {parts.Host}";
    }

    public override string Where { get; }

    public override async Task WaitForChangeAsync(CancellationToken cancellationToken)
    {
        try
        {
            listening ??= await ListenAsync(cancellationToken);
            await listening.WaitAsync(Interval, cancellationToken);
        }
        catch (Exception failure)
        {
            StopListening();
            if (Meaning(failure) is { } meaning)
            {
                throw meaning;
            }

            throw;
        }
    }

    protected override void Close()
    {
        StopListening();
        source.Dispose();
    }

    /// <summary>Instances that start together wait for each other here.</summary>
    protected override void Migrate()
    {
        using var connection = source.OpenConnection();
        Execute(connection, $"SELECT pg_advisory_lock({MigrationLock})");
        try
        {
            Scripts.Run(DeployChanges.To.PostgresqlDatabase(source.ConnectionString), "Postgres");
        }
        finally
        {
            Execute(connection, $"SELECT pg_advisory_unlock({MigrationLock})");
        }
    }

    protected override async ValueTask<DbConnection> OpenAsync(CancellationToken cancellationToken) => await source.OpenConnectionAsync(cancellationToken);

    protected override ValueTask<DbTransaction> BeginAsync(DbConnection connection, CancellationToken cancellationToken) =>
        connection.BeginTransactionAsync(cancellationToken);

    protected override async Task AnnounceAsync(DbConnection connection, DbTransaction transaction, CancellationToken cancellationToken)
    {
        await using var notify = Command(connection, $"NOTIFY {Channel}");
        notify.Transaction = transaction;
        await notify.ExecuteNonQueryAsync(cancellationToken);
    }

    protected override Exception? Meaning(Exception failure)
    {
        if (failure is PostgresException { SqlState: PostgresErrorCodes.DiskFull })
        {
            return new StorageFullException("The disk of the database is full.", failure);
        }

        if (failure is PostgresException { SqlState: PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted })
        {
            return new StorageBrokenException("The database of stored catalogues is damaged.", failure);
        }

        if (!IsPassing(failure))
        {
            return null;
        }

        // What was open when the server went is of no use when it is back.
        source.Clear();
        return new StorageAwayException("The database cannot be used now.", failure);
    }

    /// <summary>Whether a failure may be over later, without a change to this program.</summary>
    private static bool IsPassing(Exception failure) => failure switch
    {
        PostgresException
        {
            SqlState: PostgresErrorCodes.ReadOnlySqlTransaction or PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InvalidCatalogName
        } => true,
        PostgresException rejected => rejected.SqlState[..2] is "08" or "28" or "40" or "53" or "55" or "57" or "58",
        NpgsqlException or SocketException or TimeoutException or IOException => true,
        _ => false,
    };

    /// <summary>A server that answers nothing must not hold a request for long; whoever configures other patience has their reasons.</summary>
    private static string WithPatience(string connectionString)
    {
        const int Seconds = 5;
        var given = new NpgsqlConnectionStringBuilder(connectionString);
        var patient = new NpgsqlConnectionStringBuilder { Timeout = Seconds, CommandTimeout = Seconds, ApplicationName = "Evenstep" };
        foreach (var key in given.Keys.OfType<string>())
        {
            patient[key] = given[key];
        }

        // The scripts that make the tables get their password from here.
        patient.PersistSecurityInfo = true;
        return patient.ConnectionString;
    }

    private async Task<NpgsqlConnection> ListenAsync(CancellationToken cancellationToken)
    {
        var connection = await source.OpenConnectionAsync(cancellationToken);
        try
        {
            await using var listen = Command(connection, $"LISTEN {Channel}");
            await listen.ExecuteNonQueryAsync(cancellationToken);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    private void StopListening()
    {
        listening?.Dispose();
        listening = null;
    }

    private static void Execute(NpgsqlConnection connection, string sql)
    {
        using var command = Command(connection, sql);
        command.ExecuteNonQuery();
    }
}
