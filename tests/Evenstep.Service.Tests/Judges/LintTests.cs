using System.Text.Json;

namespace Evenstep.Service.Tests.Judges;

/// <summary>A linter of OpenAPI documents, with its recommended rules, finds no error in the committed one.</summary>
public sealed class LintTests
{
    [JudgeFact]
    public async Task The_document_is_lint_free()
    {
        using var linter = Node.Start(
            Path.Combine("node_modules", "@redocly", "cli", "bin", "cli.js"), "lint", Repository.DocumentPath, "--config", "redocly.yaml", "--format", "json");
        linter.StandardInput.Close();
        var report = await linter.StandardOutput.ReadToEndAsync();
        await linter.WaitForExitAsync();

        var errors = JsonSerializer.Deserialize<JsonElement>(report).GetProperty("problems").EnumerateArray()
            .Where(problem => problem.GetProperty("severity").GetString() == "error");
        Assert.Empty(errors.Select(error => error.GetProperty("message").GetString()));
        Assert.Equal(0, linter.ExitCode);
    }
}
