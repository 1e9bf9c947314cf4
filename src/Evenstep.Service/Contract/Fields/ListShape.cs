using System.Globalization;
using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>A list; a faulty element keeps its place as null.</summary>
internal sealed class ListShape<T>(Shape<T> element, int least, int most, bool differ = false) : Shape<IReadOnlyList<T?>>
{
    public override string Allowed { get; } = string.Create(
        CultureInfo.InvariantCulture, $"a list of {least} to {most}{(differ ? " different elements" : " elements")}");

    public override IReadOnlyList<T?>? Read(JsonElement value, Place place, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Array)
        {
            ReportWrongType(value, place, faults);
            return null;
        }

        ReportLength(value.GetArrayLength(), place, faults);
        List<T?> elements = [.. value.EnumerateArray().Take(most).Select((one, i) => element.Read(one, place.At(i), faults))];
        if (differ)
        {
            ReportRepetitions(elements, place, faults);
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

    private void ReportLength(int length, Place place, Faults faults)
    {
        if (length < least || length > most)
        {
            var code = length < least ? FaultCode.TooFew : FaultCode.TooMany;
            faults.Add(place, code, () => string.Create(CultureInfo.InvariantCulture, $"{length} elements were given; it must be {Allowed}."));
        }
    }

    private static void ReportRepetitions(List<T?> elements, Place place, Faults faults)
    {
        for (var i = 1; i < elements.Count; i++)
        {
            if (elements[i] is { } one && elements.IndexOf(one) is var first && first < i)
            {
                faults.Add(place.At(i), FaultCode.Duplicate, () => $"{one} repeats {place.At(first)}; leave one of them out.");
            }
        }
    }
}

/// <summary>An object of the caller's own: names with texts, kept and given back.</summary>
internal sealed class TextMapShape(int most, TextShape name, Shape<string?> text) : Shape<IReadOnlyDictionary<string, string>>
{
    public override string Allowed { get; } = string.Create(CultureInfo.InvariantCulture, $"an object of at most {most} texts");

    public override IReadOnlyDictionary<string, string>? Read(JsonElement value, Place place, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            ReportWrongType(value, place, faults);
            return null;
        }

        if (value.GetPropertyCount() is var count && count > most)
        {
            faults.Add(place, FaultCode.TooMany, () => string.Create(CultureInfo.InvariantCulture, $"{count} texts were given; it must be {Allowed}."));
        }

        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var property in value.EnumerateObject().Take(most))
        {
            ReadOne(property, texts, place, faults);
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

    private void ReadOne(JsonProperty property, Dictionary<string, string> texts, Place place, Faults faults)
    {
        var key = Given.NameOf(property);
        if (name.FaultOf(key) is { } code)
        {
            faults.Add(place, code, () => $"The name {(key is null ? "that is not valid Unicode" : Given.Quoted(key))} must be {name.Allowed}.");
        }
        else if (text.Read(property.Value, place.At(key!), faults) is { } read && !texts.TryAdd(key!, read))
        {
            faults.Add(place.At(key!), FaultCode.Duplicate, () => "This name is given more than once; leave all but one out.");
        }
    }
}
