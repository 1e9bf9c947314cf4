using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>
/// Writes catalogues and items in their canonical form: the fields in the order of their records, absent ones left out,
/// attributes by name, nothing between the tokens. Equal content is equal bytes, whatever form it came in.
/// </summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(CatalogueRequest))]
[JsonSerializable(typeof(ItemRequest))]
internal sealed partial class CatalogueContent : JsonSerializerContext
{
    private const int VersionBytes = 16;

    private static readonly CatalogueContent Canonical = new(new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters =
        {
            new WordConverter<ItemKind>(), new WordConverter<Barrel>(), new WordConverter<EyepiecePurpose>(), new MoneyConverter(),
            new AttributesConverter(), new PackedConverter(),
        },
    });

    /// <summary>A catalogue to be stored. It must be free of faults.</summary>
    public static byte[] Write(CatalogueRequest catalogue) =>
        JsonSerializer.SerializeToUtf8Bytes(catalogue with { Telescopes = catalogue.Telescopes ?? [] }, Canonical.CatalogueRequest);

    /// <summary>One item.</summary>
    public static JsonElement Write(ItemRequest item) => JsonSerializer.SerializeToElement(item, Canonical.ItemRequest);

    /// <summary>A short hash of the content.</summary>
    public static string VersionOf(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content).AsSpan(0, VersionBytes));

    /// <summary>What is packed with a telescope: an id alone is written as a text.</summary>
    private sealed class PackedConverter : WritingConverter<IReadOnlyList<ItemRequest?>>
    {
        public override void Write(Utf8JsonWriter writer, IReadOnlyList<ItemRequest?> value, JsonSerializerOptions options)
        {
            writer.WriteStartArray();
            foreach (var item in value)
            {
                if (item is { IsNamed: true })
                {
                    writer.WriteStringValue(item.Id);
                }
                else
                {
                    JsonSerializer.Serialize(writer, item, Canonical.ItemRequest!);
                }
            }

            writer.WriteEndArray();
        }
    }

    private sealed class AttributesConverter : WritingConverter<IReadOnlyDictionary<string, string>>
    {
        public override void Write(Utf8JsonWriter writer, IReadOnlyDictionary<string, string> value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            foreach (var (name, text) in value.OrderBy(pair => pair.Key, StringComparer.Ordinal))
            {
                writer.WriteString(name, text);
            }

            writer.WriteEndObject();
        }
    }

    private sealed class MoneyConverter : WritingConverter<decimal>
    {
        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) => writer.WriteNumberValue(Rounded.Money(value));
    }

    /// <summary>Content is read by the tables of fields, never by these.</summary>
    private abstract class WritingConverter<T> : JsonConverter<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Catalogues are read by the tables of their fields.");
    }
}
