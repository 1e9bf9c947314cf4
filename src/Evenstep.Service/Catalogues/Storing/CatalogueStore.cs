using System.Data.Common;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>
/// Keeps catalogues for good, in a database that SQL reaches. The one way to change anything is to replace the version one
/// knows by another, so that nobody overwrites what they have not seen; a change is stored when the call returns.
/// </summary>
/// <remarks>Every member throws <see cref="StorageAwayException"/>, <see cref="StorageFullException"/> or <see cref="StorageBrokenException"/> where it
/// applies.</remarks>
internal abstract class CatalogueStore : IDisposable
{
    /// <summary>Where it is, for whoever runs the service; no password is in it.</summary>
    public abstract string Where { get; }

    /// <summary>Makes or updates the tables.</summary>
    public Task PrepareAsync(CancellationToken cancellationToken) => GuardAsync(() => Task.Run(Migrate, cancellationToken));

    /// <summary>The number of the latest change.</summary>
    public Task<long> RevisionAsync(CancellationToken cancellationToken) => GuardAsync(async () =>
    {
        await using var connection = await OpenAsync(cancellationToken);
        await using var command = Command(connection, "SELECT revision FROM shelf");
        return (long)(await command.ExecuteScalarAsync(cancellationToken))!;
    });

    /// <summary>What is stored, without the contents, at one moment.</summary>
    public Task<StoredVersions> ListAsync(CancellationToken cancellationToken) => GuardAsync(async () =>
    {
        // One statement, for it sees one moment.
        const string All = "SELECT s.revision, c.owner, c.id, c.version, c.revision FROM shelf s LEFT JOIN catalogues c ON 1 = 1";

        await using var connection = await OpenAsync(cancellationToken);
        await using var command = Command(connection, All);
        await using var rows = await command.ExecuteReaderAsync(cancellationToken);
        List<StoredVersion> versions = [];
        var revision = 0L;
        while (await rows.ReadAsync(cancellationToken))
        {
            revision = rows.GetInt64(0);
            if (!await rows.IsDBNullAsync(1, cancellationToken))
            {
                versions.Add(new StoredVersion(new CatalogueKey(new Owner(rows.GetString(1)), rows.GetString(2)), rows.GetString(3), rows.GetInt64(4)));
            }
        }

        return new StoredVersions(revision, versions);
    });

    /// <summary>A catalogue; null if there is none. Of the version that is known already the content is not read again.</summary>
    public Task<StoredCatalogue?> FindAsync(CatalogueKey key, string? known, CancellationToken cancellationToken) => GuardAsync(async () =>
    {
        const string One = "SELECT version, revision, CASE WHEN version = @known THEN NULL ELSE content END FROM catalogues WHERE owner = @owner AND id = @id";

        await using var connection = await OpenAsync(cancellationToken);
        await using var command = Command(connection, One, ("known", known ?? ""), ("owner", key.Owner.Name), ("id", key.Id));
        await using var rows = await command.ExecuteReaderAsync(cancellationToken);
        return await rows.ReadAsync(cancellationToken)
            ? new StoredCatalogue(
                rows.GetString(0), rows.GetInt64(1),
                await rows.IsDBNullAsync(2, cancellationToken) ? (ReadOnlyMemory<byte>?)null : await rows.GetFieldValueAsync<byte[]>(2, cancellationToken))
            : null;
    });

    /// <summary>Replaces one version by another, in one transaction.</summary>
    /// <param name="key">Which catalogue.</param>
    /// <param name="known">The version to be replaced; null if there must be none.</param>
    /// <param name="next">What takes its place; null to delete it.</param>
    /// <param name="cancellationToken">Before the change is stored, it may still be called off.</param>
    /// <returns>The revision of the change; null, and nothing is changed, where another version is stored.</returns>
    public virtual Task<long?> ReplaceAsync(CatalogueKey key, string? known, Catalogue? next, CancellationToken cancellationToken) => GuardAsync(async () =>
    {
        await using var connection = await OpenAsync(cancellationToken);
        await using var transaction = await BeginAsync(connection, cancellationToken);
        await using var count = Command(connection, "UPDATE shelf SET revision = revision + 1 RETURNING revision");
        count.Transaction = transaction;
        var revision = (long)(await count.ExecuteScalarAsync(cancellationToken))!;
        await using var replace = Replacement(connection, key, known, next, revision);
        replace.Transaction = transaction;
        if (await replace.ExecuteNonQueryAsync(cancellationToken) != 1)
        {
            return (long?)null;
        }

        await AnnounceAsync(connection, transaction, cancellationToken);
        await transaction.CommitAsync(CancellationToken.None);
        return revision;
    });

    /// <summary>Returns when something may have changed, at the latest after a while.</summary>
    public abstract Task WaitForChangeAsync(CancellationToken cancellationToken);

    public void Dispose()
    {
        Close();
        GC.SuppressFinalize(this);
    }

    protected abstract void Close();

    /// <summary>What <see cref="PrepareAsync"/> does.</summary>
    protected abstract void Migrate();

    protected abstract ValueTask<DbConnection> OpenAsync(CancellationToken cancellationToken);

    /// <summary>Begins a transaction in which nothing that is read can be changed by another.</summary>
    protected abstract ValueTask<DbTransaction> BeginAsync(DbConnection connection, CancellationToken cancellationToken);

    /// <summary>Tells other instances, once the transaction is through.</summary>
    protected virtual Task AnnounceAsync(DbConnection connection, DbTransaction transaction, CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>What a failure means for whoever called; null where it is a mistake of ours.</summary>
    protected abstract Exception? Meaning(Exception failure);

    protected static DbCommand Command(DbConnection connection, string sql, params ReadOnlySpan<(string Name, object Value)> parameters)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in parameters)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value;
            command.Parameters.Add(parameter);
        }

        return command;
    }

    private async Task<T> GuardAsync<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (Meaning(failure) is { } meaning)
        {
            throw meaning;
        }
    }

    private Task<bool> GuardAsync(Func<Task> work) => GuardAsync(async () =>
    {
        await work();
        return true;
    });

    private static DbCommand Replacement(DbConnection connection, CatalogueKey key, string? known, Catalogue? next, long revision)
    {
        (string, object) owner = ("owner", key.Owner.Name), id = ("id", key.Id), knownVersion = ("known", known ?? "");
        if (next is null)
        {
            return Command(connection, "DELETE FROM catalogues WHERE owner = @owner AND id = @id AND version = @known", owner, id, knownVersion);
        }

        (string, object) version = ("version", next.Version!), content = ("content", next.Content.ToArray()), inRevision = ("revision", revision);
        return known is null
            ? Command(
                connection,
                "INSERT INTO catalogues (owner, id, version, revision, content) VALUES (@owner, @id, @version, @revision, @content) ON CONFLICT DO NOTHING",
                owner, id, version, inRevision, content)
            : Command(
                connection,
                "UPDATE catalogues SET version = @version, revision = @revision, content = @content WHERE owner = @owner AND id = @id AND version = @known",
                owner, id, version, inRevision, content, knownVersion);
    }
}
