using System.Text.Json;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Helps whoever wrote a number as people do rather than as JSON and CSV do.</summary>
internal static partial class NumberAsText
{
    /// <summary>A sentence with a space before it, or nothing where nothing better is known.</summary>
    public static ErrorMessage HintOn(JsonElement value)
    {
        var text = value.ValueKind == JsonValueKind.String ? ErrorText.TextOf(value) ?? "" : "";
        return DecimalComma().IsMatch(text) ? ErrorMessage.Of("error/hint/decimal-point", ("number", text.Replace(',', '.')))
            : TextAsJson.IsNumber(text) ? ErrorMessage.Of("error/hint/no-quotation-marks")
            : Number().Match(text) is { Success: true } number
                ? ErrorMessage.Of("error/hint/number", ("number", $"{number.Groups["sign"]}{number.Groups["digits"]}"))
            : text.Any(char.IsAsciiDigit) ? ErrorMessage.Of("error/hint/number-alone")
            : ErrorMessage.Nothing;
    }

    [GeneratedRegex("^-?[0-9]{1,9},[0-9]{1,9}$")]
    private static partial Regex DecimalComma();

    /// <summary>With what JSON has no room for: space around it, a plus sign, zeros before it.</summary>
    [GeneratedRegex(@"^\s{0,9}(\+|(?<sign>-))?0{0,9}(?<digits>[0-9]{1,9}(\.[0-9]{1,9})?)\s{0,9}$", RegexOptions.ExplicitCapture)]
    private static partial Regex Number();
}
