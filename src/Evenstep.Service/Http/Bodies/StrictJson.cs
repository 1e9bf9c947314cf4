using System.Globalization;
using System.Text.Json;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Bodies;

/// <summary>Parses JSON as RFC 8259 writes it: no comments, no trailing commas, no great depth.</summary>
internal static class StrictJson
{
    private const int MostDepth = 64;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = MostDepth };

    /// <summary>The document of the bytes, which must stay as they are while it is in use. A byte order mark is passed over.</summary>
    /// <param name="bytes">The text.</param>
    /// <param name="what">What to call it.</param>
    /// <param name="firstLine">The number of its first line.</param>
    public static OpenedBody Parse(ReadOnlyMemory<byte> bytes, string what = "body", long firstLine = 1)
    {
        var json = WithoutMark(bytes);
        try
        {
            return new OpenedBody(JsonDocument.Parse(json, Options));
        }
        catch (JsonException exception)
        {
            return new OpenedBody(new ProblemResult(ProblemKind.InvalidJson, DetailOf(exception, json.Span, what, firstLine)));
        }
    }

    /// <summary>A value that must stand alone in a line.</summary>
    /// <exception cref="JsonException">It does not.</exception>
    public static JsonElement ParseLine(ReadOnlySpan<byte> line) => JsonElement.Parse(line, Options);

    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) => bytes.Span.StartsWith("\uFEFF"u8) ? bytes["\uFEFF"u8.Length..] : bytes;

    private static string DetailOf(JsonException exception, ReadOnlySpan<byte> json, string what, long firstLine)
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
