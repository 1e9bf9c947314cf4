using System.Text.Json;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Bodies;

/// <summary>A body that was taken, or the answer that refuses it.</summary>
internal sealed class OpenedBody : IDisposable
{
    private readonly JsonDocument? document;

    private OpenedBody(JsonDocument document) => this.document = document;

    public OpenedBody(ProblemResult refusal) => Refusal = refusal;

    /// <summary>Null for a body that came through.</summary>
    public ProblemResult? Refusal { get; }

    /// <summary>Parses a body.</summary>
    /// <param name="bytes">Its bytes, which must stay as they are while it is in use.</param>
    /// <param name="what">What to call it.</param>
    /// <param name="firstLine">The number of its first line.</param>
    public static OpenedBody Parse(ReadOnlyMemory<byte> bytes, string what = "body", long firstLine = 1) =>
        StrictJson.TryParse(bytes, what, firstLine, out var document, out var fault)
            ? new OpenedBody(document)
            : new OpenedBody(new ProblemResult(ProblemKind.InvalidJson, fault));

    public JsonElement Json => document!.RootElement;

    public void Dispose() => document?.Dispose();
}
