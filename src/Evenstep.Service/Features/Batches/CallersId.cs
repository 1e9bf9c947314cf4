using System.Text.Json;

namespace Evenstep.Service.Features.Batches;

/// <summary>A request as it would be sent alone, and the id under which the caller wants its answer.</summary>
internal sealed record Labelled(string Id, ReadOnlyMemory<byte> Request);

/// <summary>Cuts the caller's id out of a line, so that what is left is a request like any other, and its answer may be known.</summary>
internal static class CallersId
{
    /// <summary>The parts of a line; null unless it begins as JSON that has an id.</summary>
    public static Labelled? Cut(ReadOnlyMemory<byte> line)
    {
        try
        {
            var reader = new Utf8JsonReader(line.Span);
            return reader.Read() && reader.TokenType == JsonTokenType.StartObject ? CutFrom(line, ref reader) : null;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static Labelled? CutFrom(ReadOnlyMemory<byte> line, ref Utf8JsonReader reader)
    {
        var endBefore = (int)reader.BytesConsumed;
        for (var isFirst = true; reader.Read() && reader.TokenType == JsonTokenType.PropertyName; isFirst = false)
        {
            var start = (int)reader.TokenStartIndex;
            var isId = reader.ValueTextEquals("id"u8);
            reader.Read();
            if (isId)
            {
                var end = (int)reader.BytesConsumed;
                return BatchLineRequest.IdOf(ref reader) is not { } id ? null
                    : isFirst ? new Labelled(id, Without(line, start, EndOfComma(line.Span, end)))
                    : new Labelled(id, Without(line, endBefore, end));
            }

            reader.Skip();
            endBefore = (int)reader.BytesConsumed;
        }

        return null;
    }

    /// <summary>Where the next property begins, if there is one.</summary>
    private static int EndOfComma(ReadOnlySpan<byte> line, int end)
    {
        var rest = line[end..].TrimStart(" \t\r\n"u8);
        return rest.StartsWith(","u8) ? line.Length - rest[1..].TrimStart(" \t\r\n"u8).Length : end;
    }

    private static byte[] Without(ReadOnlyMemory<byte> line, int start, int end) => [.. line.Span[..start], .. line.Span[end..]];
}
