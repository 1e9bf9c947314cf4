using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>
/// What a JSON value may be. One object says how the value is read and how the OpenAPI document describes it, so that the
/// two cannot disagree.
/// </summary>
internal abstract class Shape
{
    /// <summary>What is allowed, as it reads after "must be".</summary>
    public abstract ErrorMessage Allowed { get; }

    /// <summary>The value, or null with every fault in it reported.</summary>
    public abstract object? ReadAny(JsonElement value, RequestPointer pointer, Faults faults);

    /// <summary>The schema; objects put themselves among the document's components and return a reference.</summary>
    public abstract IOpenApiSchema Describe(OpenApiDocument document);

    /// <summary>A field of this shape.</summary>
    public abstract Field ToField(string name, string meaning);

    /// <summary>A list of values of this shape.</summary>
    public abstract Shape InList(int least, int most, bool differ);

    /// <summary>True, false or a list of values of this shape.</summary>
    public abstract Shape InFlagOrList(int most);

    protected void ReportWrongType(JsonElement value, RequestPointer pointer, Faults faults) =>
        faults.Add(pointer, FaultCode.WrongType, () => Refused(value, HintOn(value)));

    /// <summary>Says what was given, and what is allowed.</summary>
    /// <param name="value">What was given.</param>
    /// <param name="hint">What else to say, with a space before it; null for nothing.</param>
    protected ErrorMessage Refused(JsonElement value, ErrorMessage? hint = null) => Refused(value, Allowed, hint);

    /// <summary>Says what was given, and what is allowed in its place.</summary>
    protected static ErrorMessage Refused(JsonElement value, ErrorMessage allowed, ErrorMessage? hint) =>
        ErrorMessage.Of("error/refused", ("given", ErrorText.MessageOf(value)), ("allowed", allowed), ("hint", hint ?? ErrorMessage.Nothing));

    /// <summary>What else helps whoever gave a value of the wrong type; with a space before it, or nothing.</summary>
    protected virtual ErrorMessage HintOn(JsonElement value) => ErrorMessage.Nothing;
}

/// <summary>A shape whose value, once read, is of one type; the type is nullable, for a faulty value is null.</summary>
internal abstract class Shape<T> : Shape
{
    public abstract T? Read(JsonElement value, RequestPointer pointer, Faults faults);

    public sealed override object? ReadAny(JsonElement value, RequestPointer pointer, Faults faults) => Read(value, pointer, faults);

    public sealed override Field ToField(string name, string meaning) => new Field<T>(name, this, meaning);

    public sealed override Shape InList(int least, int most, bool differ) => new ListShape<T>(this, least, most, differ);

    public sealed override Shape InFlagOrList(int most) => new FlagOrListShape<T>(this, most);
}
