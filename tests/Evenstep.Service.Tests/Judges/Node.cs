using System.Diagnostics;

namespace Evenstep.Service.Tests.Judges;

/// <summary>Node and the packages that <c>tests/judges/prepare.sh</c> installs.</summary>
internal static class Node
{
    public static string Folder { get; } = Path.Combine(Repository.Root, "tests", "judges");

    /// <summary>Why the judges cannot be asked; null if they can.</summary>
    public static string? Missing { get; } = MissingFor("ajv", Path.Combine("@redocly", "cli"));

    /// <summary>Why judges of these packages cannot be asked; null if they can.</summary>
    public static string? MissingFor(params IEnumerable<string> packages) =>
        !IsOnPath() ? "node is not installed; run tests/judges/prepare.sh."
        : packages.FirstOrDefault(package => !Directory.Exists(Path.Combine(Folder, "node_modules", package))) is { } missing
            ? $"{missing} is not installed; run tests/judges/prepare.sh."
        : null;

    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("node", arguments)
        {
            WorkingDirectory = Folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        start.Environment["REDOCLY_SUPPRESS_UPDATE_NOTICE"] = "true";
        return Missing is null ? Process.Start(start)! : throw new InvalidOperationException(Missing);
    }

    private static bool IsOnPath() => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator)
        .Any(folder => File.Exists(Path.Combine(folder, OperatingSystem.IsWindows() ? "node.exe" : "node")));
}

/// <summary>A fact that needs node: skipped without it on a developer's machine, failing without it where CI is set.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class JudgeFactAttribute : FactAttribute
{
    public JudgeFactAttribute()
        : this([])
    {
    }

    /// <summary>With the packages that it needs, if they are others than those of most.</summary>
    public JudgeFactAttribute(params string[] packages)
    {
        Packages = packages;
        if (string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            Skip = packages.Length == 0 ? Node.Missing : Node.MissingFor(packages);
        }
    }

    public IReadOnlyList<string> Packages { get; }
}
