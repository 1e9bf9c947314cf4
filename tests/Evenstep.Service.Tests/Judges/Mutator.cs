using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Trials.Fuzz;

namespace Evenstep.Service.Tests.Judges;

/// <summary>Makes a few small changes to a valid body, of which about half leave it valid.</summary>
internal sealed class Mutator(IReadOnlyList<string> bodies, int seed)
{
    private const int MostChanges = 3;

    private static readonly string[] OddValues =
    [
        "null", "true", "false", "0", "-1", "1", "1.5", "3.0", "2.50", "1e3", "1e9", "-0.0", "\"\"", "\"x\"", "\"1.25in\"", "\"eyepiece\"", "\"allow\"",
        "\"planets\"", "\"e-12\"", "\"demo\"", "\"a\\nb\"", "[]", "{}", "[1]", "[null]", "[2, 2]", "[2, 3]", "[\"moon\"]", "[\"moon\", \"moon\"]",
        "{ \"id\": \"demo\" }",
        "{ \"id\": \"e-12\" }", "{ \"lowest\": 50 }", "{ \"leastPower\": 80 }", "{ \"kind\": \"barlow\", \"factors\": [2], \"barrel\": \"2in\" }",
    ];

    private readonly Random random = new(seed);
    private readonly JsonNode[] pool = [.. bodies.SelectMany(body => Descendants(JsonNode.Parse(body)!))];

    public string Next(string body)
    {
        var root = JsonNode.Parse(body)!;
        for (var changes = random.Next(1, MostChanges + 1); changes > 0; changes--)
        {
            Change(Pick([.. Descendants(root).Where(node => node != root)]));
        }

        return root.ToJsonString();
    }

    private void Change(JsonNode node)
    {
        switch (random.Next(10))
        {
            case 0:
                JsonEdits.Remove(node);
                break;
            case 1:
                JsonEdits.Replace(node, JsonNode.Parse(Pick(OddValues)));
                break;
            case 2:
                Rename(node);
                break;
            case 3:
                AddSibling(node);
                break;
            default:
                JsonEdits.Replace(node, Nudged(node));
                break;
        }
    }

    /// <summary>Something that may well be as good: a nearby value, or what stands under the same name elsewhere.</summary>
    private JsonNode? Nudged(JsonNode node)
    {
        var namesakes = node.Parent is JsonObject
            ? pool.Where(other => other.Parent is JsonObject && other.GetPropertyName() == node.GetPropertyName()).ToArray()
            : [];
        return node.GetValueKind() switch
        {
            _ when namesakes.Length > 0 && random.Next(2) == 0 => Pick(namesakes).DeepClone(),
            JsonValueKind.Number => Pick<double>([0.5, 0.9, 1.0, 1.1, 3]) * double.Parse(node.ToJsonString(), CultureInfo.InvariantCulture),
            JsonValueKind.String => Pick<Func<string, string>>(
                [text => text + "s", text => text.ToUpperInvariant(), text => text.Trim(), text => text[..(text.Length / 2)]])(node.GetValue<string>()),
            JsonValueKind.True or JsonValueKind.False => !node.GetValue<bool>(),
            _ => null,
        };
    }

    private void Rename(JsonNode node)
    {
        if (node.Parent is JsonObject fields)
        {
            var name = node.GetPropertyName();
            fields.Remove(name);
            fields[random.Next(2) == 0 ? name[..^1] : Pick(pool.Where(other => other.Parent is JsonObject).ToArray()).GetPropertyName()] = node;
        }
    }

    /// <summary>A field of some other object, or an element once more.</summary>
    private void AddSibling(JsonNode node)
    {
        if (node.Parent is JsonObject fields)
        {
            var other = Pick(pool.Where(one => one.Parent is JsonObject).ToArray());
            fields[other.GetPropertyName()] = other.DeepClone();
        }
        else
        {
            node.Parent!.AsArray().Add(node.DeepClone());
        }
    }

    private static IEnumerable<JsonNode> Descendants(JsonNode node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(Descendants).Prepend(node),
        JsonArray list => list.OfType<JsonNode>().SelectMany(Descendants).Prepend(node),
        _ => [node],
    };

    private T Pick<T>(IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];
}
