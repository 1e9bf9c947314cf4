using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Bodies;

/// <summary>The bytes of a body that claims to be JSON, or the answer that turns it away.</summary>
/// <param name="Bytes">As received, not parsed yet.</param>
/// <param name="Form">The form that the answer is to take.</param>
/// <param name="Refusal">Null for a body that came through.</param>
internal sealed record ReceivedBody(ReadOnlyMemory<byte> Bytes, AnswerFormat Form, ProblemResult? Refusal)
{
    /// <summary>The body parsed as JSON; refused if this is.</summary>
    public OpenedBody Open() => Refusal is { } refusal ? new OpenedBody(refusal) : OpenedBody.Parse(Bytes);

    public static ReceivedBody Refused(ProblemResult refusal) => new(default, AnswerFormat.Json, refusal);
}
