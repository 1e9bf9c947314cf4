using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;

namespace Evenstep.Service.Reading;

/// <summary>A text of limited length; with a pattern, if it must have one.</summary>
/// <param name="most">The most characters (Unicode code points).</param>
/// <param name="pattern">A regular expression that means the same in .NET and in JSON Schema, or null.</param>
/// <param name="patternInWords">What the pattern asks for, as it reads after a comma.</param>
internal sealed class TextShape(int most, string? pattern = null, string? patternInWords = null) : Shape<string?>
{
    /// <summary>No control characters and no line or paragraph separators.</summary>
    public const string OneLine = @"^[^\u0000-\u001F\u007F-\u009F\u2028\u2029]+$";

    private readonly Regex? regex = pattern is null ? null : new Regex(pattern, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    public override string Allowed { get; } = string.Create(
        CultureInfo.InvariantCulture, $"a text of {(pattern is null ? 0 : 1)} to {most} characters{(patternInWords is null ? "" : ", ")}{patternInWords}");

    public override string? Read(JsonElement value, Place place, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.String)
        {
            ReportWrongType(value, place, faults);
            return null;
        }

        var text = Given.TextOf(value);
        if (FaultOf(text) is not { } code)
        {
            return text;
        }

        faults.Add(place, code, () => $"{Given.Of(value)} was given; it must be {Allowed}.");
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => new OpenApiSchema
    {
        Type = JsonSchemaType.String,
        MinLength = pattern is null ? null : 1,
        MaxLength = most,
        Pattern = pattern,
    };

    /// <summary>What is wrong with a text; null for nothing.</summary>
    public FaultCode? FaultOf(string? text) =>
        text is null ? FaultCode.InvalidText
        : LengthOf(text) > most ? FaultCode.TooLong
        : regex is null ? null
        : text.Length == 0 ? FaultCode.TooShort
        // .NET lets $ match before a final line feed; JSON Schema does not.
        : text[^1] == '\n' || !regex.IsMatch(text) ? FaultCode.InvalidText
        : null;

    private static int LengthOf(string text) => text.Length - text.Count(char.IsLowSurrogate);
}
