using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>One word of a list.</summary>
internal sealed class ChoiceShape<T> : Shape<T?>
    where T : struct, Enum
{
    public override ErrorMessage Allowed { get; } = ErrorMessage.Of("error/allowed/one-of", ("words", ErrorText.List(Words<T>.All)));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.String)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        var word = ErrorText.TextOf(value);
        if (word is not null && Words<T>.Meant(word) is { } meant)
        {
            return meant;
        }

        faults.Add(pointer, FaultCode.NotOneOf, () => Refused(value, NearestName.HintOn(word, Words<T>.All)));
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => Schemas.OneOfWords(Words<T>.All);
}

/// <summary>The word that tells one variant of an object from the others; it is what chose the variant, so it is right.</summary>
/// <param name="word">The value that it stands for; null for any.</param>
internal sealed class WordShape<T>(T? word) : Shape<T?>
    where T : struct, Enum
{
    private readonly string spelling = word is { } one ? Words<T>.Of(one) : "";

    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/word", ("word", spelling));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults) => word;

    public override IOpenApiSchema Describe(OpenApiDocument document) => Schemas.OneOfWords([spelling]);
}

internal sealed class FlagShape : Shape<bool?>
{
    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/flag");

    public override bool? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return value.GetBoolean();
        }

        ReportWrongType(value, pointer, faults);
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema { Type = JsonSchemaType.Boolean };
}

/// <summary>What tells another variant of an object from this one: here it may only be null, which is as good as absent.</summary>
internal sealed class AbsentShape : Shape<object?>
{
    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/null");

    public override object? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        ReportWrongType(value, pointer, faults);
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema { Type = JsonSchemaType.Null };
}
