using System.Diagnostics;
using Evenstep.Service.Tests.Catalogues.Storing;

namespace Evenstep.Service.Tests.Docker;

/// <summary>Three instances on one PostgreSQL behind nginx, as <c>docker/compose.scale.yaml</c> arranges them, do a shop's work while instances go
/// away.</summary>
public sealed class RunHereTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(8);

    [ArrangementFact]
    public async Task The_arrangement_does_its_work_while_instances_go_away()
    {
        using var script = Process.Start(new ProcessStartInfo("bash", [ArrangementFactAttribute.Script, AppContext.BaseDirectory])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        using var late = new CancellationTokenSource(Patience);
        var said = await Task.WhenAll(script.StandardOutput.ReadToEndAsync(late.Token), script.StandardError.ReadToEndAsync(late.Token));
        await script.WaitForExitAsync(late.Token);

        Assert.True(script.ExitCode == 0, string.Concat(said));
        Assert.EndsWith("All as it should be.", said[0].Trim(), StringComparison.Ordinal);
    }
}

/// <summary>A fact that needs nginx and PostgreSQL: skipped without them on a developer's machine; where CI is set the script installs them.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ArrangementFactAttribute : FactAttribute
{
    private static readonly string[] NginxPlaces = ["/usr/sbin/nginx", "/usr/bin/nginx", "/usr/local/sbin/nginx"];

    public ArrangementFactAttribute() => Skip = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")) ? Missing : null;

    public static string Script { get; } = Path.Combine(Repository.Root, "docker", "run-here.sh");

    private static string? Missing =>
        !OperatingSystem.IsLinux() ? $"{Script} is for Linux."
        : !NginxPlaces.Any(File.Exists) ? "nginx is not installed; run tests/nginx/prepare.sh."
        : Postgres.Missing;
}
