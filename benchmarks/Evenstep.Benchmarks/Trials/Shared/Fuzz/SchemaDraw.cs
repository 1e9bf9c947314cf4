using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>
/// Draws JSON that a schema of the document describes. Whether it is valid in the end is not decided here: the validator is
/// asked. Ids are taken from what is there, so that most of what is drawn gets beyond the readers.
/// </summary>
internal sealed class SchemaDraw(ApiDocument document, KnownIds known, Dice dice)
{
    private const int MostElements = 5;
    private const int DeepestOptional = 7;

    private static readonly string[] Texts =
        [
            "EUR", "a", "a-1", "shop", "25 mm", "Größe ½″", "\U0001F52D", "https://shop.example/a?b=c", "4006381333931", "<b>&amp;</b>", "=1+1", "x y", "2in",
            "%00", "../..", "' OR 1=1"
        ];

    public JsonNode? Draw(JsonObject schema, int depth = 0, string? field = null, string? parent = null)
    {
        var (resolved, name) = document.Resolve(schema);
        if (Known(field, name ?? parent) is { } id)
        {
            return id;
        }

        if ((resolved["oneOf"] ?? resolved["anyOf"]) is JsonArray choices)
        {
            return Draw(dice.Pick([.. choices.Select(choice => choice!.AsObject())]), depth, field, name ?? parent);
        }

        if (resolved["const"] is { } only)
        {
            return only.DeepClone();
        }

        if (resolved["enum"] is JsonArray words)
        {
            return dice.Pick([.. words])?.DeepClone();
        }

        return TypeOf(resolved) switch
        {
            "object" => Object(resolved, depth, name ?? parent),
            "array" => new JsonArray(
                [.. Enumerable.Range(0, Count(resolved)).Select(_ => Draw(resolved["items"]?.AsObject() ?? [], depth + 1, field, name ?? parent))]),
            "string" => Text(resolved),
            "number" => Number(resolved),
            "integer" => (long)Math.Round(Number(resolved)),
            "boolean" => dice.Chance(0.5),
            _ => null,
        };
    }

    private string TypeOf(JsonObject schema) => schema["type"] switch
    {
        JsonArray types => dice.Chance(0.15) ? "null" : dice.Pick([.. types.Select(type => type!.GetValue<string>()).Where(type => type != "null")]),
        { } type => type.GetValue<string>(),
        null => "object",
    };

    private JsonObject Object(JsonObject schema, int depth, string? name)
    {
        var drawn = new JsonObject();
        var required = (schema["required"]?.AsArray() ?? []).Select(one => one!.GetValue<string>()).ToHashSet();
        var share = depth > DeepestOptional ? 0 : dice.Pick(0.2, 0.5, 0.9);
        foreach (var (field, described) in schema["properties"]?.AsObject() ?? [])
        {
            if (required.Contains(field) || dice.Chance(share))
            {
                drawn[field] = Draw(described!.AsObject(), depth + 1, field, name);
            }
        }

        if (schema["additionalProperties"] is JsonObject others && schema["properties"] is null)
        {
            drawn[dice.Pick(Texts)] = Draw(others, depth + 1);
        }

        return drawn;
    }

    private int Count(JsonObject schema)
    {
        var least = schema["minItems"]?.GetValue<int>() ?? 0;
        var most = schema["maxItems"]?.GetValue<int>() ?? MostElements;
        return dice.Int(least, Math.Max(least, Math.Min(most, least + dice.Int(0, MostElements))));
    }

    private string Text(JsonObject schema)
    {
        var (least, most) = (schema["minLength"]?.GetValue<int>() ?? 0, schema["maxLength"]?.GetValue<int>() ?? int.MaxValue);
        var pattern = schema["pattern"]?.GetValue<string>();
        string[] fitting = [.. Texts.Where(text => text.Length >= least && text.Length <= most && (pattern is null || Regex.IsMatch(text, pattern)))];
        return fitting.Length == 0 ? "1"
            : dice.Chance(0.05) && pattern is null ? new string('x', Math.Min(most, 200))
            : dice.Pick(fitting) + (pattern is null && most > 20 ? dice.Int(0, 999).ToString(CultureInfo.InvariantCulture) : "");
    }

    private double Number(JsonObject schema)
    {
        var (least, most) = (schema["minimum"]?.GetValue<double>() ?? 0, schema["maximum"]?.GetValue<double>() ?? 1000);
        return dice.Int(0, 9) switch
        {
            0 => least,
            1 => most,
            < 6 when most > 100 => Math.Clamp(Math.Round(dice.Between(least, 100 + least), 2), least, most),
            _ => Math.Clamp(Math.Round(dice.Between(least, most), 2), least, most),
        };
    }

    private JsonValue? Known(string? field, string? schema) => (field, schema) switch
    {
        ("id", "CatalogueById") => JsonValue.Create(dice.Pick(known.Catalogues)),
        ("id", "TelescopeById") => JsonValue.Create(dice.Pick(known.Telescopes)),
        ("id", "OwnedItemById") => JsonValue.Create(dice.Pick(known.Items)),
        ("id", "ItemChanges") => JsonValue.Create(dice.Pick(known.ChangedItems)),
        ("id", not null) => JsonValue.Create(FormattableString.Invariant($"id-{dice.Int(0, 99_999)}")),
        ("mustInclude" or "exclude" or "shoppingList" or "included", _) when dice.Chance(0.5) => null,
        _ => null,
    };
}

/// <summary>What there is to name.</summary>
internal sealed record KnownIds(
    IReadOnlyList<string> Catalogues, IReadOnlyList<string> Items, IReadOnlyList<string> Telescopes, IReadOnlyList<string> ChangedItems)
{
    public static KnownIds Of(JsonElement demo, JsonElement changed, params IReadOnlyList<string> catalogues) => new(
        catalogues, IdsOf(demo, "items"), IdsOf(demo, "telescopes"), IdsOf(changed, "items"));

    private static string[] IdsOf(JsonElement catalogue, string list) =>
        [.. catalogue.GetProperty(list).EnumerateArray().Select(item => item.GetProperty("id").GetString()!)];
}
