using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;

namespace Evenstep.Service.Http.Bodies;

/// <summary>Parses JSON as RFC 8259 writes it: no comments, no trailing commas, no great depth.</summary>
internal static class StrictJson
{
    private const int MostDepth = 64;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = MostDepth };

    /// <summary>Whether bytes are JSON. A byte order mark is passed over.</summary>
    /// <param name="bytes">The text.</param>
    /// <param name="what">What to call it.</param>
    /// <param name="firstLine">The number of its first line.</param>
    /// <param name="document">The document of the bytes, which must stay as they are while it is in use.</param>
    /// <param name="fault">What is wrong with them, in English.</param>
    public static bool TryParse(
        ReadOnlyMemory<byte> bytes, string what, long firstLine, [NotNullWhen(true)] out JsonDocument? document, [NotNullWhen(false)] out string? fault)
    {
        (document, fault) = (null, null);
        var json = WithoutMark(bytes);
        try
        {
            document = JsonDocument.Parse(json, Options);
            return true;
        }
        catch (JsonException exception)
        {
            fault = FaultOf(exception, json.Span, what, firstLine);
            return false;
        }
    }

    /// <summary>A value that must stand alone in a line.</summary>
    /// <exception cref="JsonException">It does not.</exception>
    public static JsonElement ParseLine(ReadOnlySpan<byte> line) => JsonElement.Parse(line, Options);

    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) => bytes.Span.StartsWith("\uFEFF"u8) ? bytes["\uFEFF"u8.Length..] : bytes;

    private static string FaultOf(JsonException exception, ReadOnlySpan<byte> json, string what, long firstLine)
    {
        if (json.Trim(" \t\r\n"u8).IsEmpty)
        {
            return $"The {what} is empty; send a JSON object.";
        }

        var place = string.Create(
            CultureInfo.InvariantCulture, $"At line {exception.LineNumber + firstLine}, byte {exception.BytePositionInLine + 1}");
        return IsTooDeep(json)
            ? $"{place}, the {what} is nested more than {MostDepth} levels deep. No request needs more than a few."
            : $"{place}, the {what} is not JSON: {NotJson.ReasonOf(exception, json)}";
    }

    private static bool IsTooDeep(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = MostDepth + 1 });
        try
        {
            while (reader.Read())
            {
                if (reader.CurrentDepth >= MostDepth && reader.TokenType is JsonTokenType.StartArray or JsonTokenType.StartObject)
                {
                    return true;
                }
            }
        }
        catch (JsonException)
        {
            // Broken in another way, before it got too deep.
        }

        return false;
    }
}
