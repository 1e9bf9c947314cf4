using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>A PostgreSQL server of the tests' own, in a folder that goes with it.</summary>
public sealed class Postgres : IDisposable
{
    private const string Superuser = "evenstep";

    private static readonly string? Programs = ProgramFolder();

    private readonly string folder = Directory.CreateTempSubdirectory("evenstep-postgres-").FullName;
    private readonly int port = FreePort.Find();
    private readonly Lazy<bool> started;

    public Postgres() => started = new(Create);

    /// <summary>Why there can be no server; null if there can.</summary>
    public static string? Missing { get; } = Programs is null ? "PostgreSQL is not installed; run tests/postgres/prepare.sh." : null;

    /// <summary>A new database.</summary>
    public string NewDatabase()
    {
        _ = started.Value;
        var name = $"d{Guid.NewGuid():n}";
        using var connection = new NpgsqlConnection(ConnectionTo("postgres") + ";Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"CREATE DATABASE {name}";
        command.ExecuteNonQuery();
        return ConnectionTo(name);
    }

    public void Start() => Run("pg_ctl", "start", "--wait", "--pgdata", Data, "--log", Path.Combine(folder, "log"), "--options", string.Create(
        CultureInfo.InvariantCulture, $"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c fsync=off"));

    /// <summary>Has the server and all that it does for others stand still: connections stay, and nothing is answered.</summary>
    public void Freeze() => Signal("STOP");

    public void Thaw() => Signal("CONT");

    private void Signal(string signal)
    {
        var server = File.ReadLines(Path.Combine(Data, "postmaster.pid")).First();
        RunAsMyself("sh", "-c", $"kill -{signal} {server} $(ps -o pid= --ppid {server})");
    }

    /// <summary>Throws everybody out, as when the server is restarted.</summary>
    public void Stop() => Run("pg_ctl", "stop", "--wait", "--pgdata", Data, "--mode", "fast");

    public void Dispose()
    {
        if (started.IsValueCreated)
        {
            Stop();
        }

        Directory.Delete(folder, recursive: true);
    }

    private string Data => Path.Combine(folder, "data");

    private bool Create()
    {
        if (Environment.IsPrivilegedProcess)
        {
            // The server refuses to run as root.
            RunAsMyself("chown", "postgres", folder);
        }

        Run("initdb", "--pgdata", Data, "--auth", "trust", "--username", Superuser, "--encoding", "UTF8", "--no-sync");
        Start();
        return true;
    }

    private string ConnectionTo(string database) => string.Create(
        CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Username={Superuser};Database={database}");

    private void Run(string program, params string[] arguments)
    {
        string[] command = [Path.Combine(Programs!, program), .. arguments];
        RunAsMyself(Environment.IsPrivilegedProcess ? ["runuser", "-u", "postgres", "--", .. command] : command);
    }

    private void RunAsMyself(params string[] command)
    {
        // The server that pg_ctl leaves running would hold redirected pipes open.
        var quiet = string.Join(' ', command.Select(part => $"'{part.Replace("'", "'\\''", StringComparison.Ordinal)}'"));
        using var process = Process.Start(new ProcessStartInfo("sh", ["-c", $"{quiet} >'{folder}.out' 2>&1"]) { WorkingDirectory = folder })!;
        process.WaitForExit();
        var said = File.ReadAllText($"{folder}.out");
        File.Delete($"{folder}.out");
        Assert.True(process.ExitCode == 0, $"{quiet}: {said}");
    }

    /// <summary>Debian keeps the programs of each version in a folder of its own, off the path.</summary>
    private static string? ProgramFolder()
    {
        const string Versions = "/usr/lib/postgresql";
        var ofVersions = Directory.Exists(Versions)
            ? Directory.EnumerateDirectories(Versions).Order(StringComparer.Ordinal).Reverse().Select(version => Path.Combine(version, "bin"))
            : [];
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Concat(ofVersions)
            .FirstOrDefault(place => File.Exists(Path.Combine(place, "initdb")) && File.Exists(Path.Combine(place, "pg_ctl")));
    }
}

/// <summary>The tests that share one server, and so take turns.</summary>
[CollectionDefinition(nameof(Postgres))]
public sealed class OnePostgres : ICollectionFixture<Postgres>;

/// <summary>A fact that needs PostgreSQL: skipped without it on a developer's machine, failing without it where CI is set.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute() => Skip = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")) ? Postgres.Missing : null;
}

/// <summary>The same for a theory.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PostgresTheoryAttribute : TheoryAttribute
{
    public PostgresTheoryAttribute() => Skip = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")) ? Postgres.Missing : null;
}
