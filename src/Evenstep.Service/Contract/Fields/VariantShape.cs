using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>One of the objects that a value may be.</summary>
internal interface IVariant
{
    /// <summary>What to call the object beside the others, such as "a zoom".</summary>
    string Form { get; }

    IEnumerable<string> FieldNames { get; }
}

/// <summary>An object that a reference may stand for: told apart by whether the field that only the one has is given, and not null.</summary>
/// <param name="name">The schema's name in the OpenAPI document.</param>
/// <param name="reference">The object that only names something.</param>
/// <param name="referenceField">The field that only the reference has.</param>
/// <param name="inFull">The object given in full.</param>
internal sealed class ReferenceOrFullShape<T>(string name, ObjectShape<T> reference, string referenceField, ObjectShape<T> inFull) : Shape<T>
    where T : class, new()
{
    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/either", ("first", reference.Allowed), ("second", inFull.Allowed));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        return ErrorText.Find(value, referenceField) is { ValueKind: not JsonValueKind.Null }
            ? reference.Read(value, pointer, faults, [inFull])
            : inFull.Read(value, pointer, faults, [reference]);
    }

    public override IOpenApiSchema Describe(OpenApiDocument document)
    {
        var (first, second) = (reference.Describe(document), inFull.Describe(document));
        document.Components!.Schemas!.TryAdd(name, new OpenApiSchema { OneOf = [first, second] });
        return new OpenApiSchemaReference(name, document);
    }
}

/// <summary>An object that a text alone may stand for.</summary>
/// <param name="text">The text that only names something.</param>
/// <param name="named">What the text means.</param>
/// <param name="inFull">The object given in full.</param>
internal sealed class TextOrFullShape<T>(TextShape text, Func<string, T> named, Shape<T> inFull) : Shape<T>
    where T : class, new()
{
    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/either", ("first", text.Allowed), ("second", inFull.Allowed));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults) => value.ValueKind switch
    {
        JsonValueKind.String => text.Read(value, pointer, faults) is { } name ? named(name) : null,
        JsonValueKind.Object => inFull.Read(value, pointer, faults),
        _ => Refuse(value, pointer, faults),
    };

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema { OneOf = [text.Describe(document), inFull.Describe(document)] };

    private T? Refuse(JsonElement value, RequestPointer pointer, Faults faults)
    {
        ReportWrongType(value, pointer, faults);
        return null;
    }
}

/// <summary>An object that is one of several kinds, as its field `kind` says.</summary>
/// <param name="name">The schema's name in the OpenAPI document.</param>
/// <param name="kinds">The kinds, each under its word.</param>
/// <param name="anyKind">What can be said of an object whose kind is not known. Where none is given, the object may also be meant for a reference: then
/// nothing.</param>
/// <param name="reference">An object that only names something, and so needs no kind; null if that will not do.</param>
internal sealed class KindShape<T>(string name, (string Kind, ObjectShape<T> Shape)[] kinds, ObjectShape<T> anyKind, ObjectShape<T>? reference = null)
    : Shape<T>
    where T : class, new()
{
    public const string Discriminator = "kind";

    private readonly Dictionary<string, ObjectShape<T>> byKind = kinds.ToDictionary(one => one.Kind, one => one.Shape, StringComparer.Ordinal);

    /// <summary>The kinds, by their words.</summary>
    public IReadOnlyDictionary<string, ObjectShape<T>> Kinds => byKind;

    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/kind", ("field", Discriminator), ("kinds", OneOfTheKinds));

    private ErrorMessage OneOfTheKinds =>
        ErrorMessage.Of(reference is null ? "error/allowed/one-of" : "error/allowed/one-of/or-reference", ("words", ErrorText.List(byKind.Keys)));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        if (reference is not null && IsReference(value))
        {
            return reference.Read(value, pointer, faults);
        }

        return ShapeOf(value, pointer, faults) is { } shape
            ? shape.Read(value, pointer, faults, [.. byKind.Values.Where(other => other != shape)])
            : reference is null || KindOf(value) is not null ? anyKind.Read(value, pointer, faults) : null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document)
    {
        var mapping = byKind.ToDictionary(pair => pair.Key, pair => (OpenApiSchemaReference)pair.Value.Describe(document));
        IOpenApiSchema ofKinds = new OpenApiSchema
        {
            OneOf = [.. mapping.Values],
            Discriminator = new OpenApiDiscriminator { PropertyName = Discriminator, Mapping = mapping },
        };
        document.Components!.Schemas!.TryAdd(name, ofKinds);
        var byName = new OpenApiSchemaReference(name, document);
        return reference is null ? byName : new OpenApiSchema { OneOf = [reference.Describe(document), byName] };
    }

    private static bool IsReference(JsonElement value) => ErrorText.Find(value, "id") is not null
        && value.EnumerateObject().All(property => ErrorText.NameOf(property) == "id" || IsAbsentKind(property));

    private static bool IsAbsentKind(JsonProperty property) =>
        ErrorText.NameOf(property) == Discriminator && property.Value.ValueKind == JsonValueKind.Null;

    private static JsonElement? KindOf(JsonElement value) =>
        ErrorText.Find(value, Discriminator) is { ValueKind: not JsonValueKind.Null } given ? given : null;

    private ObjectShape<T>? ShapeOf(JsonElement value, RequestPointer pointer, Faults faults)
    {
        var at = pointer.At(Discriminator);
        if (KindOf(value) is not { } given)
        {
            faults.Add(at, FaultCode.Missing, () => ErrorMessage.Of("error/missing", ("field", Discriminator), ("allowed", OneOfTheKinds)));
            return null;
        }

        var word = given.ValueKind == JsonValueKind.String ? ErrorText.TextOf(given) : null;
        if (word is not null && byKind.TryGetValue(word, out var shape))
        {
            return shape;
        }

        var code = given.ValueKind == JsonValueKind.String ? FaultCode.NotOneOf : FaultCode.WrongType;
        faults.Add(at, code, () => Refused(given, OneOfTheKinds, NearestName.HintOn(word, byKind.Keys)));
        return null;
    }
}
