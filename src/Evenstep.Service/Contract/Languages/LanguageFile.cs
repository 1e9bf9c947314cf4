using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// What is said in one language, as translators wrote it: groups of texts by key. README.md beside the files says how they
/// are written.
/// </summary>
/// <param name="Tag">The language, as in `Content-Language`.</param>
/// <param name="Root">The whole of it.</param>
internal sealed record LanguageFile(string Tag, JsonElement Root)
{
    /// <summary>A key that is for translators.</summary>
    public const string About = "_about";

    private const string Extension = ".json";

    private static readonly string Prefix = $"{typeof(LanguageFile).Namespace}.";

    public string Name => Tag + Extension;

    /// <summary>All that are in the program, by their tags.</summary>
    /// <exception cref="LanguageFileException">One is no JSON, or has a key twice.</exception>
    public static IEnumerable<LanguageFile> ReadAll() => Assembly.GetExecutingAssembly().GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal) && name.EndsWith(Extension, StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(name =>
        {
            using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
            using var reader = new StreamReader(stream);
            return Parse(name[Prefix.Length..^Extension.Length], reader.ReadToEnd());
        });

    /// <exception cref="LanguageFileException">It is no JSON, or has a key twice.</exception>
    public static LanguageFile Parse(string tag, string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            return new LanguageFile(tag, document.RootElement.Clone());
        }
        catch (JsonException exception)
        {
            throw new LanguageFileException([$"{tag}{Extension}: {exception.Message}"]);
        }
    }

    /// <summary>The texts of a group by their keys, the names of groups within it before them with a slash between.</summary>
    public IEnumerable<KeyValuePair<string, string>> TextsOf(string group) => TextsIn(Root.GetProperty(group), "");

    /// <summary>A group as it stands, without what is for translators.</summary>
    public string Serialize(string group)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            WriteSilently(writer, Root.GetProperty(group));
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static IEnumerable<KeyValuePair<string, string>> TextsIn(JsonElement group, string before) => group.EnumerateObject()
        .Where(one => one.Name != About)
        .SelectMany(one => one.Value.ValueKind is JsonValueKind.Object
            ? TextsIn(one.Value, $"{before}{one.Name}/")
            : [KeyValuePair.Create(before + one.Name, one.Value.GetString()!)]);

    private static void WriteSilently(Utf8JsonWriter writer, JsonElement element)
    {
        if (element.ValueKind is not JsonValueKind.Object)
        {
            element.WriteTo(writer);
            return;
        }

        writer.WriteStartObject();
        foreach (var one in element.EnumerateObject().Where(one => one.Name != About))
        {
            writer.WritePropertyName(one.Name);
            WriteSilently(writer, one.Value);
        }

        writer.WriteEndObject();
    }
}

/// <summary>What is in a language file cannot be spoken.</summary>
/// <param name="faults">Each with the file and the key.</param>
internal sealed class LanguageFileException(IEnumerable<string> faults)
    : Exception(string.Join(Environment.NewLine, ["What is said in words cannot be used:", .. faults]));
