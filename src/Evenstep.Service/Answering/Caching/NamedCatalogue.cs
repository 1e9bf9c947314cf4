using System.Text.Json;

namespace Evenstep.Service.Answering.Caching;

/// <summary>Finds the stored catalogue that a body names without understanding the rest of it.</summary>
internal static class NamedCatalogue
{
    /// <summary>The id in `catalogue`; null where there is none, or the body is not such JSON (it will be refused, and no answer kept).</summary>
    public static string? Of(ReadOnlySpan<byte> body)
    {
        try
        {
            var reader = new Utf8JsonReader(body.StartsWith("\uFEFF"u8) ? body["\uFEFF"u8.Length..] : body);
            return Enter(ref reader, "catalogue"u8) && Enter(ref reader, "id"u8) && reader.TokenType == JsonTokenType.String ? reader.GetString() : null;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Goes to the value of a property of the object that begins here or with the next token.</summary>
    private static bool Enter(ref Utf8JsonReader reader, ReadOnlySpan<byte> name)
    {
        if (reader.TokenType == JsonTokenType.None)
        {
            reader.Read();
        }

        if (reader.TokenType != JsonTokenType.StartObject)
        {
            return false;
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var found = reader.ValueTextEquals(name);
            reader.Read();
            if (found)
            {
                return true;
            }

            reader.Skip();
        }

        return false;
    }
}
