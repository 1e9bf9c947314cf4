using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>The items that are no candidates: counted by reason, or listed. One of the two is null.</summary>
[JsonConverter(typeof(ExcludedAnswerConverter))]
[OneOfTypes(typeof(IReadOnlyDictionary<string, int>), typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed record ExcludedAnswer(IReadOnlyDictionary<string, int>? Counts, IReadOnlyList<ExclusionAnswer>? Listed);

/// <summary>Writes whichever of the two there is.</summary>
internal sealed class ExcludedAnswerConverter : JsonConverter<ExcludedAnswer>
{
    public override ExcludedAnswer Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are only written.");

    public override void Write(Utf8JsonWriter writer, ExcludedAnswer value, JsonSerializerOptions options)
    {
        if (value.Counts is { } counts)
        {
            JsonSerializer.Serialize(writer, counts, options.GetTypeInfo(typeof(IReadOnlyDictionary<string, int>)));
        }
        else
        {
            JsonSerializer.Serialize(writer, value.Listed!, options.GetTypeInfo(typeof(IReadOnlyList<ExclusionAnswer>)));
        }
    }
}

/// <summary>An item that is no candidate.</summary>
internal sealed record ExclusionAnswer
{
    /// <summary>Its id in the catalogue.</summary>
    public required string ItemId { get; init; }

    /// <summary>The first reason that applies.</summary>
    public required Excluded Reason { get; init; }

    /// <summary>The reason in words, in the language of the answer.</summary>
    public required Sentence Detail { get; init; }

    /// <summary>What the words are about, by name.</summary>
    public required SaidValues Values { get; init; }
}
