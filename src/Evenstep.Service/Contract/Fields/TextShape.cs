using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>A text of limited length that a pattern allows.</summary>
/// <param name="most">The most characters (Unicode code points).</param>
/// <param name="pattern">A regular expression that means the same in .NET and in JSON Schema, from ^ to $.</param>
/// <param name="patternInWords">What the pattern asks for, as it reads after a comma.</param>
/// <param name="least">The fewest characters.</param>
internal sealed class TextShape(int most, string pattern, ErrorMessage patternInWords, int least = 1) : Shape<string?>
{
    /// <summary>No control characters and no line or paragraph separators.</summary>
    public const string OneLine = @"^[^\u0000-\u001F\u007F-\u009F\u2028\u2029]+$";

    /// <summary>Anything but NUL, which neither CSV nor every store can hold.</summary>
    public const string AnyText = @"^[^\u0000]*$";

    // .NET lets $ match before a final line feed; JSON Schema does not.
    private readonly Regex regex = new(pattern.TrimEnd('$') + @"\z", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    public override ErrorMessage Allowed { get; } = ErrorMessage.Of("error/allowed/text", ("least", least), ("most", most), ("pattern", patternInWords));

    public override string? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.String)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        var text = ErrorText.TextOf(value);
        if (FaultOf(text) is not { } code)
        {
            return text;
        }

        faults.Add(pointer, code, () => Refused(value));
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema
    {
        Type = JsonSchemaType.String,
        MinLength = least > 0 ? least : null,
        MaxLength = most,
        Pattern = pattern,
    };

    /// <summary>What is wrong with a text; null for nothing.</summary>
    public FaultCode? FaultOf(string? text) =>
        text is null ? FaultCode.InvalidText
        : LengthOf(text) > most ? FaultCode.TooLong
        : text.Length < least ? FaultCode.TooShort
        : !regex.IsMatch(text) ? FaultCode.InvalidText
        : null;

    private static int LengthOf(string text) => text.Length - text.Count(char.IsLowSurrogate);
}

/// <summary>A text, or null to take it away, where an object of texts changes.</summary>
internal sealed class ChangedTextShape(Shape<string?> text) : Shape<string?>
{
    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/or-null", ("allowed", text.Allowed));

    public override string? Read(JsonElement value, RequestPointer pointer, Faults faults) =>
        value.ValueKind == JsonValueKind.Null ? null : text.Read(value, pointer, faults);

    public override IOpenApiSchema Describe(OpenApiDocument document)
    {
        var schema = (OpenApiSchema)text.Describe(document);
        schema.Type |= JsonSchemaType.Null;
        return schema;
    }
}
