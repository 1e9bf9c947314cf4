using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>Spoils JSON: values, names and structure first, then now and then the text itself.</summary>
internal sealed class BodyMutator(Dice dice)
{
    private const int MostChanges = 3;
    private const int DeepNesting = 300;

    /// <summary>Stands for a code unit that no JSON writer lets through, and is put in afterwards.</summary>
    private const string Mark = "MARK-OF-A-HALF-PAIR";

    private static readonly string[] Values =
    [
        "null", "true", "false", "0", "-1", "-0.0", "1", "1.5", "3.0", "2.505", "1e3", "1e-300", "1e308", "9007199254740993", "123456789012345678901234567890",
        "0.1e1",
        "\"\"", "\" \"", "\"1\"", "\"1.25in\"", "\"eyepiece\"", "\"a\\u0000b\"", "\"a\\nb\"", "\"\\u202e\"", "\"\\ufeff\"", "\"\\ud83d\\udd2d\"", "[]", "{}",
        "[1]", "[null]", "[[]]", "[2, 2]",
        "{ \"id\": \"demo\" }", "{ \"id\": null }", "{ \"kind\": \"barlow\" }", "{ \"kind\": \"none\" }", "[ { } ]", "\"__proto__\"", "{ \"__proto__\": 1 }",
    ];

    private static readonly string[] Names = ["", "id", "kind", "kinds", "Budget", "budget ", "constructor", "a/b", "a~b", "ä", "name", "price"];

    /// <summary>A changed body as bytes; the node itself is changed too.</summary>
    public byte[] Mutate(JsonNode root)
    {
        for (var changes = dice.Int(1, MostChanges); changes > 0; changes--)
        {
            JsonNode[] nodes = [.. Descendants(root).Where(node => node != root)];
            if (nodes.Length > 0)
            {
                Change(dice.Pick(nodes));
            }
        }

        return Bytes(dice.Chance(0.15) ? Spoilt(root.ToJsonString()) : root.ToJsonString());
    }

    private void Change(JsonNode node)
    {
        switch (dice.Int(0, 9))
        {
            case 0:
                JsonEdits.Remove(node);
                break;
            case 1 or 2:
                JsonEdits.Replace(node, JsonNode.Parse(dice.Pick(Values)));
                break;
            case 3:
                Rename(node);
                break;
            case 4:
                JsonEdits.Replace(node, JsonNode.Parse(string.Concat(Enumerable.Repeat("[", 20)) + string.Concat(Enumerable.Repeat("]", 20))));
                break;
            case 5 when node is JsonArray list:
                Repeat(list);
                break;
            case 6 when node is JsonObject fields:
                fields[dice.Pick(Names)] = JsonNode.Parse(dice.Pick(Values));
                break;
            default:
                JsonEdits.Replace(node, Nudged(node));
                break;
        }
    }

    private JsonNode? Nudged(JsonNode node) => node.GetValueKind() switch
    {
        JsonValueKind.Number => Finite(dice.Pick(-1, 0.5, 0.99999, 1.00001, 1.1, 3, 1000) * double.Parse(node.ToJsonString(), CultureInfo.InvariantCulture)),
        JsonValueKind.String => dice.Pick<Func<string, string>>(
            text => text + "s", text => text.ToUpperInvariant(), text => text[..(text.Length / 2)], text => text + Mark, text => text + new string('ü', 5000),
            text => " " + text)(node.GetValue<string>()),
        JsonValueKind.True or JsonValueKind.False => !node.GetValue<bool>(),
        _ => null,
    };

    private static double Finite(double value) => double.IsFinite(value) ? value : 0;

    private void Rename(JsonNode node)
    {
        if (node.Parent is JsonObject fields)
        {
            var name = node.GetPropertyName();
            fields.Remove(name);
            fields[dice.Chance(0.5) && name.Length > 0 ? name[..^1] : dice.Pick(Names)] = node;
        }
    }

    private void Repeat(JsonArray list)
    {
        if (list.Count > 0)
        {
            var element = dice.Pick([.. list]);
            foreach (var _ in Enumerable.Range(0, dice.Pick(1, 3, 25, 130)))
            {
                list.Add(element?.DeepClone());
            }
        }
    }

    private string Spoilt(string text)
    {
        var at = dice.Int(0, text.Length);
        return dice.Int(0, 9) switch
        {
            0 => text[..at],
            1 => text + dice.Pick("}", " x", "\0", "{}", ","),
            2 => "\uFEFF" + text,
            3 => text.Replace("{", "{\"budget\":1,\"budget\":2,", StringComparison.Ordinal),
            4 when text.LastIndexOf('}') is var end and > 0 => text[..end] + ",\"id\":\"twice\",\"id\":\"twice\"}",
            5 => text.Replace(":1", ":1e400", StringComparison.Ordinal),
            6 => text.Replace(":2", $":{new string('9', 400)}", StringComparison.Ordinal),
            7 => string.Concat(Enumerable.Repeat("{\"a\":", DeepNesting)) + text + new string('}', DeepNesting),
            8 => text.Insert(at, dice.Pick("NaN", "//", "/**/", "\u0001", "'", "\uFFFF")),
            _ => text.Replace(",", ",,", StringComparison.Ordinal),
        };
    }

    /// <summary>With a half of a surrogate pair, written out, where it is marked; rarely a byte that is no UTF-8.</summary>
    private byte[] Bytes(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text.Replace(Mark, dice.Pick("\\ud800", "\\udc00x", "\\uD83D\\uD83D"), StringComparison.Ordinal));
        if (dice.Chance(0.01) && bytes.Length > 0)
        {
            bytes[dice.Int(0, bytes.Length - 1)] = dice.Pick<byte>(0xFF, 0xC0, 0x80);
        }

        return bytes;
    }

    private static IEnumerable<JsonNode> Descendants(JsonNode node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(Descendants).Prepend(node),
        JsonArray list => list.OfType<JsonNode>().SelectMany(Descendants).Prepend(node),
        _ => [node],
    };
}
