using System.Diagnostics;
using System.Text.Json;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>
/// A JSON Schema validator that shares no code with the service (ajv, see <c>tests/judges/judge.mjs</c>), over the committed
/// document: one process, asked a line at a time by one caller after another.
/// </summary>
internal sealed class Validator : IDisposable
{
    /// <summary>A reader of JSON may ignore it (RFC 8259, 8.1); the service does, the validator does not.</summary>
    private const char ByteOrderMark = '\uFEFF';

    private readonly Process process;
    private readonly Lock asking = new();

    public Validator(string judgesFolder, string documentPath) => process = Process.Start(new ProcessStartInfo("node", ["judge.mjs", documentPath])
    {
        WorkingDirectory = judgesFolder,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
    }) ?? throw new InvalidOperationException("node did not start.");

    /// <summary>What is wrong; empty for what is valid.</summary>
    public string Errors(SchemaQuestion question)
    {
        lock (asking)
        {
            process.StandardInput.WriteLine(JsonSerializer.Serialize(new { pointer = question.Pointer, json = question.Json.TrimStart(ByteOrderMark) }));
            var answer = process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The validator ended before it answered.");
            using var read = JsonDocument.Parse(answer);
            return read.RootElement.GetProperty("valid").GetBoolean() ? ""
                : read.RootElement.GetProperty("errors").GetString() is { Length: > 0 } errors ? errors
                : "invalid";
        }
    }

    public void Dispose()
    {
        process.StandardInput.Close();
        process.WaitForExit();
        process.Dispose();
    }
}
