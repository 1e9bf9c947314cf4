using System.Text.Json.Nodes;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>Changes a node of JSON where it stands, in an object or in a list.</summary>
internal static class JsonEdits
{
    public static void Remove(JsonNode node)
    {
        if (node.Parent is JsonObject fields)
        {
            fields.Remove(node.GetPropertyName());
        }
        else
        {
            node.Parent!.AsArray().Remove(node);
        }
    }

    public static void Replace(JsonNode node, JsonNode? by)
    {
        if (node.Parent is JsonObject fields)
        {
            fields[node.GetPropertyName()] = by;
        }
        else
        {
            node.Parent!.AsArray()[node.GetElementIndex()] = by;
        }
    }
}
