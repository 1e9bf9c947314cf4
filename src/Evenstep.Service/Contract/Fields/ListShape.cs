using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>A list; a faulty element keeps its place as null.</summary>
internal sealed class ListShape<T>(Shape<T> element, int least, int most, bool differ = false) : Shape<IReadOnlyList<T?>>
{
    public override ErrorMessage Allowed { get; } =
        ErrorMessage.Of(differ ? "error/allowed/list/different" : "error/allowed/list", ("least", least), ("most", most));

    public override IReadOnlyList<T?>? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Array)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        ReportLength(value.GetArrayLength(), pointer, faults);
        List<T?> elements = [.. value.EnumerateArray().Take(most).Select((one, i) => element.Read(one, pointer.At(i), faults))];
        if (differ)
        {
            ReportRepetitions(elements, pointer, faults);
        }

        return elements;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema
    {
        Type = JsonSchemaType.Array,
        Items = element.Describe(document),
        MinItems = least > 0 ? least : null,
        MaxItems = most,
        UniqueItems = differ ? true : null,
    };

    private void ReportLength(int length, RequestPointer pointer, Faults faults)
    {
        if (length < least || length > most)
        {
            var code = length < least ? FaultCode.TooFew : FaultCode.TooMany;
            faults.Add(pointer, code, () => ErrorMessage.Of("error/elements", ("count", length), ("allowed", Allowed)));
        }
    }

    private static void ReportRepetitions(List<T?> elements, RequestPointer pointer, Faults faults)
    {
        for (var i = 1; i < elements.Count; i++)
        {
            if (elements[i] is { } one && elements.IndexOf(one) is var first && first < i)
            {
                faults.Add(pointer.At(i), FaultCode.Duplicate, () => ErrorMessage.Of("error/repeats", ("one", (object)one), ("first", pointer.At(first))));
            }
        }
    }
}

/// <summary>An object of the caller's own: names with texts, kept and given back.</summary>
internal sealed class TextMapShape(int most, TextShape name, Shape<string?> text) : Shape<IReadOnlyDictionary<string, string>>
{
    public override ErrorMessage Allowed { get; } = ErrorMessage.Of("error/allowed/texts", ("most", most));

    /// <summary>The same where it changes: null takes a text away.</summary>
    public TextMapShape InChange() => new(most, name, new ChangedTextShape(text));

    public override IReadOnlyDictionary<string, string>? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        if (value.GetPropertyCount() is var count && count > most)
        {
            faults.Add(pointer, FaultCode.TooMany, () => ErrorMessage.Of("error/texts", ("count", count), ("allowed", Allowed)));
        }

        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var property in value.EnumerateObject().Take(most))
        {
            ReadOne(property, texts, pointer, faults);
        }

        return texts;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema
    {
        Type = JsonSchemaType.Object,
        MaxProperties = most,
        PropertyNames = name.Describe(document),
        AdditionalProperties = text.Describe(document),
    };

    private void ReadOne(JsonProperty property, Dictionary<string, string> texts, RequestPointer pointer, Faults faults)
    {
        var key = ErrorText.NameOf(property);
        if (name.FaultOf(key) is { } code)
        {
            faults.Add(pointer, code, () => key is null
                ? ErrorMessage.Of("error/name/invalid-text", ("allowed", name.Allowed))
                : ErrorMessage.Of("error/name", ("name", ErrorText.Quoted(key)), ("allowed", name.Allowed)));
        }
        else if (text.Read(property.Value, pointer.At(key!), faults) is { } read && !texts.TryAdd(key!, read))
        {
            faults.Add(pointer.At(key!), FaultCode.Duplicate, () => ErrorMessage.Of("error/name-twice"));
        }
    }
}
