using System.Buffers;
using System.ComponentModel;
using System.Text.Json.Serialization.Metadata;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Negotiation;
using Microsoft.Extensions.Caching.Hybrid;

namespace Evenstep.Service.Answering.Caching;

/// <summary>An answer as it goes out, and what the log and the metrics say of it.</summary>
[ImmutableObject(true)]
internal sealed record FinishedAnswer
{
    public required ReadOnlySequence<byte> Body { get; init; }

    /// <summary>The form and the language it is in.</summary>
    public required Representation Representation { get; init; }

    public required Outcome Outcome { get; init; }

    /// <summary>How long the solve that made it took.</summary>
    public required TimeSpan Took { get; init; }

    /// <summary>Only a proved answer is kept.</summary>
    public bool IsProved => Outcome != Outcome.BestFound;

    /// <summary>Writes an answer that rests on a plan as JSON.</summary>
    public static FinishedAnswer Of<T>(T answer, JsonTypeInfo<T> shape, Language language, Outcome outcome, TimeSpan took) => new()
    {
        Body = AnswerBytes.Of(answer, shape),
        Representation = new Representation(AnswerFormat.Json, language),
        Outcome = outcome,
        Took = took,
    };

    /// <summary>Draws an answer that rests on a plan.</summary>
    public static FinishedAnswer Of(LadderScene scene, Language language, Outcome outcome, TimeSpan took) => new()
    {
        Body = new ReadOnlySequence<byte>(LadderPicture.Draw(scene, language)),
        Representation = new Representation(AnswerFormat.Picture, language),
        Outcome = outcome,
        Took = took,
    };
}

/// <summary>Tells the cache how large an answer is, by a byte for each kibibyte: the answer itself is kept as it is, never leaves
/// this process, and needs no copy.</summary>
internal sealed class SizeOfAnswer : IHybridCacheSerializer<FinishedAnswer>
{
    public const int BytesCountedAsOne = 1024;

    /// <summary>What an entry takes beside its answer is less than that.</summary>
    public void Serialize(FinishedAnswer value, IBufferWriter<byte> target) =>
        target.Write(new byte[1 + ((value.Body.Length + BytesCountedAsOne - 1) / BytesCountedAsOne)]);

    public FinishedAnswer Deserialize(ReadOnlySequence<byte> source) => throw new NotSupportedException("Answers are kept in this process only.");
}
