using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues;

/// <summary>Applies a JSON Merge Patch (RFC 7396): a field given is replaced, null takes it away, an object goes on inside.</summary>
internal static class MergePatch
{
    /// <summary>What becomes of a value; the value itself is used up. The patch must have passed <see cref="Check"/>.</summary>
    public static JsonNode? Apply(JsonNode? target, JsonElement patch)
    {
        if (patch.ValueKind != JsonValueKind.Object)
        {
            return JsonNode.Parse(patch.GetRawText());
        }

        var result = target as JsonObject ?? [];
        foreach (var property in patch.EnumerateObject())
        {
            var old = result[property.Name];
            result.Remove(property.Name);
            if (property.Value.ValueKind != JsonValueKind.Null)
            {
                result.Add(property.Name, Apply(old, property.Value));
            }
        }

        return result;
    }

    /// <summary>Whether every name is given once, for which one counts would be a guess, and every text is one at all; reports what is not.</summary>
    public static bool Check(JsonElement patch, RequestPointer pointer, Faults faults) => patch.ValueKind switch
    {
        JsonValueKind.Object => CheckFields(patch, pointer, faults),
        JsonValueKind.Array => patch.EnumerateArray().Index().Aggregate(true, (isRight, one) => Check(one.Item, pointer.At(one.Index), faults) && isRight),
        JsonValueKind.String => IsText(patch, pointer, faults),
        _ => true,
    };

    private static bool CheckFields(JsonElement patch, RequestPointer pointer, Faults faults)
    {
        var (isRight, seen) = (true, new HashSet<string>(StringComparer.Ordinal));
        foreach (var property in patch.EnumerateObject())
        {
            var name = ErrorText.NameOf(property);
            isRight &= IsNew(name, seen, pointer, faults) && Check(property.Value, pointer.At(name!), faults);
        }

        return isRight;
    }

    private static bool IsText(JsonElement text, RequestPointer pointer, Faults faults)
    {
        if (ErrorText.TextOf(text) is not null)
        {
            return true;
        }

        faults.Add(pointer, FaultCode.InvalidText, () => $"{ErrorText.Of(text)} was given; write whole letters.");
        return false;
    }

    private static bool IsNew(string? name, HashSet<string> seen, RequestPointer pointer, Faults faults)
    {
        if (name is null)
        {
            faults.Add(pointer, FaultCode.InvalidText, () => "The name of a field here is not valid Unicode.");
            return false;
        }

        if (!seen.Add(name))
        {
            faults.Add(pointer.At(name), FaultCode.Duplicate, () => $"{ErrorText.Quoted(name)} is given more than once; leave all but one out.");
            return false;
        }

        return true;
    }
}
