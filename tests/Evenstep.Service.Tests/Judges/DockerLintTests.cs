namespace Evenstep.Service.Tests.Judges;

/// <summary>Linters of container files find nothing to say of those under docker/.</summary>
public sealed class DockerLintTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "docker");

    [JudgeFact("dclint", "dockerfile-utils")]
    public async Task The_Dockerfile_is_lint_free() => Assert.Equal((0, ""), await LintAsync(DockerfileLinter, Path.Combine(Folder, "Dockerfile")));

    /// <summary>By the schema of compose files, and by rules of order and safety.</summary>
    [JudgeFact("dclint", "dockerfile-utils")]
    public async Task The_compose_files_are_lint_free() => Assert.Equal((0, ""), await LintAsync(ComposeLinter, "--max-warnings", "0", Folder));

    [JudgeFact("dclint", "dockerfile-utils")]
    public async Task The_linters_see_what_is_wrong()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "Dockerfile"), "FROM scratch\nEXPOSE many\nRUNN x\n");
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "compose.yaml"), "services:\n  a:\n    image: b:1\n    restarts: always\n");

            Assert.Contains("RUNN", (await LintAsync(DockerfileLinter, Path.Combine(folder.FullName, "Dockerfile"))).Said, StringComparison.Ordinal);
            Assert.NotEqual(0, (await LintAsync(ComposeLinter, folder.FullName)).ExitCode);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string DockerfileLinter => Path.Combine("node_modules", "dockerfile-utils", "bin", "dockerfile-utils");

    private static string ComposeLinter => Path.Combine("node_modules", "dclint", "bin", "dclint.cjs");

    private static async Task<(int ExitCode, string Said)> LintAsync(string linter, params string[] arguments)
    {
        using var process = Node.Start([linter, .. linter == DockerfileLinter ? ["lint"] : Array.Empty<string>(), .. arguments]);
        process.StandardInput.Close();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, said.Trim());
    }
}
