using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Contract.Fields;

/// <summary>
/// The JSON that a bare text stands for, where a field is not given in JSON. What is no number where a number belongs stays
/// a text, so that the field's own shape refuses it in its own words.
/// </summary>
internal static partial class TextAsJson
{
    public static JsonNode Of(Shape shape, string text) => shape switch
    {
        NumberShape or WholeShape or MoneyShape when IsNumber(text) => JsonNode.Parse(text)!,
        FlagShape when text is "true" or "false" => JsonValue.Create(text == "true"),
        _ => JsonValue.Create(text),
    };

    /// <summary>Whether the text is a number as JSON writes it.</summary>
    public static bool IsNumber(string text) => JsonNumber().IsMatch(text);

    [GeneratedRegex(@"^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?\z", RegexOptions.ExplicitCapture)]
    private static partial Regex JsonNumber();
}
