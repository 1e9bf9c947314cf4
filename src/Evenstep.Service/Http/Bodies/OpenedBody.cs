using System.Text.Json;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Bodies;

/// <summary>A body that was taken, or the answer that refuses it.</summary>
internal sealed class OpenedBody : IDisposable
{
    private readonly JsonDocument? document;

    public OpenedBody(JsonDocument document) => this.document = document;

    public OpenedBody(ProblemResult refusal) => Refusal = refusal;

    /// <summary>Null for a body that came through.</summary>
    public ProblemResult? Refusal { get; }

    public JsonElement Json => document!.RootElement;

    public void Dispose() => document?.Dispose();
}
