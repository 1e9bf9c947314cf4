using System.Text.Json;

namespace Evenstep.Service.Tests.Answers;

/// <summary>
/// The fields that the contract names, in a file shaped like an answer: instead of a value stands its type, with a question
/// mark if it may be null; <c>@name</c> stands for the shape in another file. An answer may have more fields.
/// </summary>
internal static class AnswerShape
{
    public static IEnumerable<string> Differences(string shape, JsonElement answer) => Differences(Read(shape), answer, "");

    private static JsonElement Read(string name) => JsonSerializer.Deserialize<JsonElement>(
        File.ReadAllText(Path.Combine(Repository.Root, "tests", "Evenstep.Service.Tests", "Answers", $"{name}-shape.json")));

    private static IEnumerable<string> Differences(JsonElement shape, JsonElement actual, string at) => shape.ValueKind switch
    {
        JsonValueKind.Object => Fields(shape, actual, at),
        JsonValueKind.Array => Elements(shape[0], actual, at),
        _ => Value(shape.GetString()!, actual, at),
    };

    private static IEnumerable<string> Fields(JsonElement shape, JsonElement actual, string at)
    {
        if (actual.ValueKind != JsonValueKind.Object)
        {
            return [$"{at} is {actual.ValueKind}, no object"];
        }

        return shape.EnumerateObject().SelectMany(field => Field(field, actual, at));
    }

    private static IEnumerable<string> Field(JsonProperty shape, JsonElement actual, string at)
    {
        var name = shape.Name.TrimEnd('?');
        if (!actual.TryGetProperty(name, out var value))
        {
            return [$"{at}/{name} is missing"];
        }

        var isAllowedNull = value.ValueKind == JsonValueKind.Null && shape.Name.EndsWith('?');
        return isAllowedNull ? [] : Differences(shape.Value, value, $"{at}/{name}");
    }

    private static IEnumerable<string> Elements(JsonElement shape, JsonElement actual, string at) => actual.ValueKind == JsonValueKind.Array
        ? actual.EnumerateArray().SelectMany((element, i) => Differences(shape, element, $"{at}/{i}"))
        : [$"{at} is {actual.ValueKind}, no list"];

    private static IEnumerable<string> Value(string type, JsonElement actual, string at)
    {
        if (type.StartsWith('@'))
        {
            return Differences(Read(type[1..]), actual, at);
        }

        var isRight = type.TrimEnd('?') switch
        {
            "any" => true,
            "string" => actual.ValueKind == JsonValueKind.String,
            "number" => actual.ValueKind == JsonValueKind.Number,
            "boolean" => actual.ValueKind is JsonValueKind.True or JsonValueKind.False,
            "object" => actual.ValueKind == JsonValueKind.Object,
            _ => throw new InvalidOperationException($"No type is called {type}."),
        };
        return isRight || (type.EndsWith('?') && actual.ValueKind == JsonValueKind.Null) ? [] : [$"{at} is {actual.ValueKind}, no {type}"];
    }
}
