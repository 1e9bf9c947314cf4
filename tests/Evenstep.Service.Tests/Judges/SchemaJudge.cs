using System.Diagnostics;
using System.Text.Json;

namespace Evenstep.Service.Tests.Judges;

/// <summary>What the committed document says of some JSON.</summary>
internal sealed record Judgement(bool Valid, string Errors);

/// <summary>
/// A JSON Schema validator that shares no code with the service, over the committed document: one process, asked a line
/// at a time. It starts with the first question, so that it need not be there where every question is skipped.
/// </summary>
public sealed class SchemaJudge : IDisposable
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    private readonly Lazy<Process> judge = new(() => Node.Start("judge.mjs", Repository.DocumentPath));

    internal Judgement OfRequest(string path, string json, string method = "post") => Ask(method, path, null, json);

    internal Judgement OfAnswer(string path, int status, string json, string method = "post") =>
        Ask(method, path, FormattableString.Invariant($"{status}"), json);

    public void Dispose()
    {
        if (judge.IsValueCreated)
        {
            judge.Value.StandardInput.Close();
            judge.Value.WaitForExit();
            judge.Value.Dispose();
        }
    }

    private Judgement Ask(string method, string path, string? status, string json)
    {
        judge.Value.StandardInput.WriteLine(JsonSerializer.Serialize(new { method, path, status, json }));
        var answer = judge.Value.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The judge ended before it answered; see what it wrote.");
        return JsonSerializer.Deserialize<Judgement>(answer, Options)!;
    }
}
